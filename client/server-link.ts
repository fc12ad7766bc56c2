import * as vscode from 'vscode';
import { toBase64 } from '../server/drawing/base64.js';
import type {
  CardParams,
  CardResult,
  ComparedPlans,
  CompareParams,
  NeededFiles,
} from '../server/language/comparison-protocol.js';
import type { ExportParams, ExportResult } from '../server/language/export-protocol.js';
import type { HandChange } from '../server/language/hand/change.js';
import type {
  ChangedScene,
  InitializationOptions,
  PlanVersion,
  ReadBytesParams,
  ReadBytesResult,
  Refused,
  SceneParams,
  SceneResult,
  TriedChange,
  WholeScene,
  WrittenChange,
} from '../server/language/protocol.js';
import type { Conversation, ConversationParts, Requests } from './conversation.js';
import type { Look } from './preview/look.js';
import type { ServerState } from './preview/messages.js';
import { readBytesForPlan, readFileForPlan } from './read-file.js';
import { reachOfPlans, workspaceFiles } from './reach.js';
import { referenceLinks } from './reference-links.js';
import { Restarts } from './restarts.js';

export const languageId = 'mahl';

/** Loads the language client, and makes one for a server that has yet to be started. */
export type OpenConversation = (parts: ConversationParts) => Promise<Conversation>;

/**
 * The language server as the rest of the extension sees it: states, changed plans, scenes. The language client is
 * loaded when the server is first started, so that commands are there before.
 */
export class ServerLink implements vscode.Disposable {
  readonly #open: OpenConversation;
  readonly #extension: vscode.Uri;
  readonly #log: vscode.LogOutputChannel;
  readonly #restarts = new Restarts(Date.now);
  readonly #stateChanged = new vscode.EventEmitter<ServerState>();
  readonly #planChanged = new vscode.EventEmitter<PlanVersion>();
  readonly #planDiagnosed = new vscode.EventEmitter<PlanVersion>();
  readonly #versions = new Map<string, number>();
  #conversation: Promise<Conversation> | undefined;
  #state: ServerState = 'starting';
  #restarting: Promise<void> | undefined;

  readonly onStateChanged = this.#stateChanged.event;
  readonly onPlanChanged = this.#planChanged.event;
  /** After the diagnostics of that version have been sent. */
  readonly onPlanDiagnosed = this.#planDiagnosed.event;

  constructor(open: OpenConversation, extension: vscode.Uri, log: vscode.LogOutputChannel) {
    this.#open = open;
    this.#extension = extension;
    this.#log = log;
  }

  get state(): ServerState {
    return this.#state;
  }

  /** The version of a plan that its latest diagnostics are of, or `undefined` before the first. */
  versionOf(uri: vscode.Uri): number | undefined {
    return this.#versions.get(this.uriText(uri));
  }

  isAbout(changed: PlanVersion, uri: vscode.Uri): boolean {
    return changed.uri === this.uriText(uri);
  }

  /** Settles when the server answers, or can't be started: then its state is `stopped`. */
  async start(): Promise<void> {
    const conversation = this.#current();
    try {
      await (await conversation).start();
    } catch (error) {
      if (conversation !== this.#conversation) return;
      this.#log.error(`The server could not be started: ${String(error)}`);
      this.#enter('stopped');
    }
  }

  /** Asked again while it is at it, it does so once. */
  restart(): Promise<void> {
    this.#restarting ??= this.#restart().finally(() => (this.#restarting = undefined));
    return this.#restarting;
  }

  /**
   * @param known the drawing that there is, by its `id`, so that only what is another in the new one is told
   * @throws when the server is not running
   */
  scene(uri: vscode.Uri, look: Look, known: number): Promise<WholeScene | ChangedScene | null> {
    return this.#ask('scene', { ...this.#sceneParams(uri, look), handling: true, known });
  }

  /**
   * @param known as for `scene`
   * @throws when the server is not running
   */
  tryChange(
    uri: vscode.Uri,
    look: Look,
    version: number,
    change: HandChange,
    known: number,
  ): Promise<SceneResult | TriedChange | Refused | null> {
    return this.#ask('tryChange', { ...this.#sceneParams(uri, look), version, change, known });
  }

  /** @throws when the server is not running */
  writeChange(uri: vscode.Uri, version: number, change: HandChange): Promise<WrittenChange | Refused | null> {
    return this.#ask('writeChange', { textDocument: { uri: this.uriText(uri) }, version, change });
  }

  /** @throws when the server is not running */
  export(
    uri: vscode.Uri,
    params: Omit<ExportParams, 'textDocument'>,
    token?: vscode.CancellationToken,
  ): Promise<ExportResult | null> {
    return this.#ask('export', { textDocument: { uri: this.uriText(uri) }, ...params }, token);
  }

  /** @throws when the server is not running */
  compare(params: CompareParams): Promise<ComparedPlans | NeededFiles | null> {
    return this.#ask('compare', params);
  }

  /** @throws when the server is not running */
  card(params: CardParams, token: vscode.CancellationToken): Promise<CardResult | null> {
    return this.#ask('card', params, token);
  }

  /** A URI as the server is told it. */
  uriText(uri: vscode.Uri): string {
    return uri.toString();
  }

  showLog(): void {
    this.#log.show();
  }

  /** Settles when the server is gone or can't be ended. */
  async stop(): Promise<void> {
    await this.#end(this.#conversation);
  }

  dispose(): void {
    this.#stateChanged.dispose();
    this.#planChanged.dispose();
    this.#planDiagnosed.dispose();
  }

  async #restart(): Promise<void> {
    this.#restarts.forget();
    const wasRunning = this.#state === 'running';
    const end = this.#end(this.#conversation);
    this.#renew();
    // One that is starting may never come to it: it is ended if it does.
    if (wasRunning) await end;
    await this.start();
  }

  async #end(conversation: Promise<Conversation> | undefined): Promise<void> {
    // One that could not be loaded has nothing to end.
    const loaded = await conversation?.catch(() => undefined);
    await loaded?.stop();
  }

  /** A client whose start has failed can't be started again, and one that restarts itself says so in its own words. */
  #renew(): void {
    this.#conversation = undefined;
    this.#enter('starting');
  }

  async #ask<Kind extends keyof Requests>(
    kind: Kind,
    params: Requests[Kind]['params'],
    token?: vscode.CancellationToken,
  ): Promise<Requests[Kind]['answer']> {
    return (await this.#current()).ask(kind, params, token);
  }

  #current(): Promise<Conversation> {
    this.#conversation ??= this.#begin();
    return this.#conversation;
  }

  #begin(): Promise<Conversation> {
    const isCurrent = () => conversation === this.#conversation;
    const conversation = this.#open({
      languageId,
      initializationOptions: this.#initializationOptions(),
      middleware: referenceLinks(this.#extension),
      log: this.#log,
      entered: (state) => {
        if (isCurrent()) this.#enter(state);
      },
      ended: () => {
        if (!isCurrent() || !this.#restarts.ended()) return;
        this.#renew();
        void this.start();
      },
      planChanged: (changed) => {
        if (isCurrent()) this.#planChanged.fire(changed);
      },
      planDiagnosed: (diagnosed) => {
        if (!isCurrent()) return;
        this.#versions.set(diagnosed.uri, diagnosed.version);
        this.#planDiagnosed.fire(diagnosed);
      },
      findPlans: async () => {
        const found = await vscode.workspace.findFiles('**/*.mahl', undefined, 300);
        return found.map((uri) => this.uriText(uri));
      },
      readFile: ({ uri }) => readFileForPlan(uri, reachOfPlans(languageId), workspaceFiles),
      readBytes,
    });
    return conversation;
  }

  #initializationOptions(): InitializationOptions {
    return {
      readFiles: true,
      readBytes: true,
      findPlans: true,
      pushDiagnostics: true,
      drawings: true,
      reference: this.#extension.toString(),
      rules: plainSetting('rules'),
      hints: plainSetting('hints'),
    };
  }

  #sceneParams(uri: vscode.Uri, { view, distanceMillimetres, sitting, isNarrow }: Look): SceneParams {
    return {
      textDocument: { uri: this.uriText(uri) },
      view,
      ...(distanceMillimetres === undefined ? {} : { distanceMillimetres }),
      ...(sitting === undefined ? {} : { sitting }),
      ...(isNarrow === undefined ? {} : { isNarrow }),
    };
  }

  #enter(state: ServerState): void {
    if (state === this.#state) return;
    this.#state = state;
    if (state !== 'running') this.#versions.clear();
    this.#stateChanged.fire(state);
  }
}

async function readBytes({ uri, limitBytes, asText }: ReadBytesParams): Promise<ReadBytesResult> {
  const read = await readBytesForPlan(uri, reachOfPlans(languageId), workspaceFiles, limitBytes);
  if (!read.ok) return read;
  // What a file system hands out may be part of a larger store, or a Buffer, which a worker does not know.
  return { ok: true, bytes: asText ? toBase64(read.bytes) : Uint8Array.from(read.bytes) };
}

/** A setting as plain data: what the editor gives is a proxy, which can't be sent to a worker. */
function plainSetting(name: string): unknown {
  const setting: unknown = vscode.workspace.getConfiguration('mahlstick').get(name);
  return setting === undefined ? undefined : JSON.parse(JSON.stringify(setting));
}
