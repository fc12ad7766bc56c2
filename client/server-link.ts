import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  State,
} from 'vscode-languageclient';
import type { Look } from './preview/look.js';
import type { HandChange } from '../server/language/hand/change.js';
import {
  type InitializationOptions,
  type PlanVersion,
  type Refused,
  type SceneParams,
  type SceneResult,
  type WrittenChange,
  planChangedNotification,
  planDiagnosedNotification,
  findPlansRequest,
  readBytesRequest,
  readFileRequest,
  sceneRequest,
  tryChangeRequest,
  writeChangeRequest,
} from '../server/language/protocol.js';
import { toBase64 } from '../server/drawing/base64.js';
import {
  type CardParams,
  type CardResult,
  cardRequest,
  type ComparedPlans,
  type CompareParams,
  compareRequest,
  type NeededFiles,
} from '../server/language/comparison-protocol.js';
import { type ExportParams, type ExportResult, exportRequest } from '../server/language/export-protocol.js';
import type { ServerState } from './preview/messages.js';
import { readBytesForPlan, readFileForPlan } from './read-file.js';
import { reachOfPlans, workspaceFiles } from './reach.js';
import { referenceLinks } from './reference-links.js';
import { Restarts } from './restarts.js';

export const languageId = 'mahl';

/** Makes the client, over whatever the host of the extension has to carry its messages. */
export type CreateClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** The language server as the rest of the extension sees it: states, changed plans, scenes. */
export class ServerLink implements vscode.Disposable {
  readonly #createClient: () => BaseLanguageClient;
  readonly #restarts = new Restarts(Date.now);
  readonly #stateChanged = new vscode.EventEmitter<ServerState>();
  readonly #planChanged = new vscode.EventEmitter<PlanVersion>();
  readonly #planDiagnosed = new vscode.EventEmitter<PlanVersion>();
  readonly #versions = new Map<string, number>();
  #client: BaseLanguageClient;
  #state: ServerState = 'starting';
  #restarting: Promise<void> | undefined;

  readonly onStateChanged = this.#stateChanged.event;
  readonly onPlanChanged = this.#planChanged.event;
  /** After the diagnostics of that version have been sent. */
  readonly onPlanDiagnosed = this.#planDiagnosed.event;

  constructor(createClient: CreateClient, extension: vscode.Uri, log: vscode.LogOutputChannel) {
    this.#createClient = () => this.#connected(createClient(this.#options(extension, log)));
    this.#client = this.#createClient();
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
    const client = this.#client;
    try {
      await client.start();
    } catch {
      if (client === this.#client) this.#enter('stopped');
    }
  }

  /** Asked again while it is at it, it does so once. */
  restart(): Promise<void> {
    this.#restarting ??= this.#restart().finally(() => (this.#restarting = undefined));
    return this.#restarting;
  }

  /** @throws when the server is not running */
  scene(uri: vscode.Uri, look: Look): Promise<SceneResult | null> {
    return this.#client.sendRequest(sceneRequest, { ...this.#sceneParams(uri, look), handling: true });
  }

  /** @throws when the server is not running */
  tryChange(
    uri: vscode.Uri,
    look: Look,
    version: number,
    change: HandChange,
  ): Promise<SceneResult | Refused | null> {
    const params = { ...this.#sceneParams(uri, look), version, change };
    return this.#client.sendRequest(tryChangeRequest, params);
  }

  /** @throws when the server is not running */
  writeChange(uri: vscode.Uri, version: number, change: HandChange): Promise<WrittenChange | Refused | null> {
    const textDocument = { uri: this.uriText(uri) };
    return this.#client.sendRequest(writeChangeRequest, { textDocument, version, change });
  }

  /** @throws when the server is not running */
  export(
    uri: vscode.Uri,
    params: Omit<ExportParams, 'textDocument'>,
    token?: vscode.CancellationToken,
  ): Promise<ExportResult | null> {
    return this.#client.sendRequest(
      exportRequest,
      { textDocument: { uri: this.uriText(uri) }, ...params },
      token,
    );
  }

  /** @throws when the server is not running */
  compare(params: CompareParams): Promise<ComparedPlans | NeededFiles | null> {
    return this.#client.sendRequest(compareRequest, params);
  }

  /** @throws when the server is not running */
  card(params: CardParams, token: vscode.CancellationToken): Promise<CardResult | null> {
    return this.#client.sendRequest(cardRequest, params, token);
  }

  /** A URI as the server is told it. */
  uriText(uri: vscode.Uri): string {
    return this.#client.code2ProtocolConverter.asUri(uri);
  }

  showLog(): void {
    this.#client.outputChannel.show();
  }

  async stop(): Promise<void> {
    if (this.#client.needsStop()) await this.#client.stop();
  }

  dispose(): void {
    this.#stateChanged.dispose();
    this.#planChanged.dispose();
    this.#planDiagnosed.dispose();
  }

  async #restart(): Promise<void> {
    this.#restarts.forget();
    const last = this.#client;
    this.#renew();
    if (last.needsStop()) await last.stop().catch(() => undefined);
    await this.start();
  }

  /** A client whose start has failed can't be started again, and one that restarts itself says so in its own words. */
  #renew(): void {
    this.#client = this.#createClient();
    this.#enter('starting');
  }

  #options(extension: vscode.Uri, log: vscode.LogOutputChannel): LanguageClientOptions {
    const initializationOptions: InitializationOptions = {
      readFiles: true,
      readBytes: true,
      findPlans: true,
      pushDiagnostics: true,
      drawings: true,
      reference: extension.toString(),
      rules: plainSetting('rules'),
      hints: plainSetting('hints'),
    };
    return {
      documentSelector: [{ language: languageId }],
      initializationOptions,
      middleware: referenceLinks(extension),
      outputChannel: log,
      // One message of our own says that the server is gone; the channel need not come forward as well.
      revealOutputChannelOn: RevealOutputChannelOn.Never,
      initializationFailedHandler: () => false,
      errorHandler: {
        error: (_error, _message, count) => {
          // Only failed writes are counted; what else goes wrong ends the server, or does no harm.
          const goesOn = count === undefined || count <= 3;
          return { action: goesOn ? ErrorAction.Continue : ErrorAction.Shutdown, handled: true };
        },
        closed: () => {
          if (this.#restarts.ended()) {
            this.#renew();
            void this.start();
          }
          return { action: CloseAction.DoNotRestart, handled: true };
        },
      },
    };
  }

  #connected(client: BaseLanguageClient): BaseLanguageClient {
    const log = client.error.bind(client);
    // What is wrong with it is for the log; the painter is told in words that say what to do.
    client.error = (message, data) => log(message, data, false);
    client.onDidChangeState(({ newState }) => {
      if (client === this.#client) this.#enter(stateOf(newState));
    });
    client.onNotification(planChangedNotification, (changed) => this.#planChanged.fire(changed));
    client.onNotification(planDiagnosedNotification, (diagnosed) => {
      this.#versions.set(diagnosed.uri, diagnosed.version);
      this.#planDiagnosed.fire(diagnosed);
    });
    client.onRequest(findPlansRequest, async () => {
      const found = await vscode.workspace.findFiles('**/*.mahl', undefined, 300);
      return found.map((uri) => client.code2ProtocolConverter.asUri(uri));
    });
    client.onRequest(readFileRequest, ({ uri }) =>
      readFileForPlan(uri, reachOfPlans(languageId), workspaceFiles),
    );
    client.onRequest(readBytesRequest, async ({ uri, limitBytes, asText }) => {
      const read = await readBytesForPlan(uri, reachOfPlans(languageId), workspaceFiles, limitBytes);
      if (!read.ok) return read;
      // What a file system hands out may be part of a larger store, or a Buffer, which a worker does not know.
      return { ok: true, bytes: asText ? toBase64(read.bytes) : Uint8Array.from(read.bytes) };
    });
    return client;
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

function stateOf(state: State): ServerState {
  switch (state) {
    case State.Running:
      return 'running';
    case State.StartFailed:
    case State.Stopped:
      return 'stopped';
    case State.Starting:
      return 'starting';
  }
}

/** A setting as plain data: what the editor gives is a proxy, which can't be sent to a worker. */
function plainSetting(name: string): unknown {
  const setting: unknown = vscode.workspace.getConfiguration('mahlstick').get(name);
  return setting === undefined ? undefined : JSON.parse(JSON.stringify(setting));
}
