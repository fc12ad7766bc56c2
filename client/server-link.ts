import * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  State,
} from 'vscode-languageclient';
import { URI } from 'vscode-uri';
import type { View } from '../server/drawing/scene.js';
import {
  type InitializationOptions,
  type PlanChangedParams,
  type SceneResult,
  planChangedNotification,
  readFileRequest,
  sceneRequest,
} from '../server/language/protocol.js';
import type { ServerState } from './preview/messages.js';
import { readFileForPlan } from './read-file.js';
import { referenceLinks } from './reference-links.js';
import { Restarts } from './restarts.js';

export const languageId = 'mahl';

/** Makes the client, over whatever the host of the extension has to carry its messages. */
export type CreateClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** The language server as the rest of the extension sees it: states, changed plans, scenes. */
export class ServerLink implements vscode.Disposable {
  readonly #client: BaseLanguageClient;
  readonly #restarts = new Restarts(Date.now);
  readonly #stateChanged = new vscode.EventEmitter<ServerState>();
  readonly #planChanged = new vscode.EventEmitter<PlanChangedParams>();
  readonly #versions = new Map<string, number>();
  #state: ServerState = 'starting';
  #givenUp = false;
  #told = false;

  readonly onStateChanged = this.#stateChanged.event;
  /** After the diagnostics of that version have been sent. */
  readonly onPlanChanged = this.#planChanged.event;

  constructor(createClient: CreateClient, extension: vscode.Uri, log: vscode.LogOutputChannel) {
    const initializationOptions: InitializationOptions = {
      readFiles: true,
      reference: extension.toString(),
    };
    this.#client = createClient({
      documentSelector: [{ language: languageId }],
      initializationOptions,
      middleware: referenceLinks(extension),
      outputChannel: log,
      // One message of our own says that the server is gone; the channel need not come forward as well.
      revealOutputChannelOn: RevealOutputChannelOn.Never,
      errorHandler: {
        error: (_error, _message, count) => {
          const goesOn = count !== undefined && count <= 3;
          this.#givenUp ||= !goesOn;
          return { action: goesOn ? ErrorAction.Continue : ErrorAction.Shutdown, handled: true };
        },
        closed: () => {
          this.#givenUp = !this.#restarts.ended();
          return { action: this.#givenUp ? CloseAction.DoNotRestart : CloseAction.Restart, handled: true };
        },
      },
    });
    this.#client.onDidChangeState(({ newState }) => this.#enter(this.#stateOf(newState)));
    this.#client.onNotification(planChangedNotification, (changed) => {
      this.#versions.set(changed.uri, changed.version);
      this.#planChanged.fire(changed);
    });
    this.#client.onRequest(readFileRequest, ({ uri }) =>
      readFileForPlan(
        uri,
        {
          folders: (vscode.workspace.workspaceFolders ?? []).map((folder) => URI.from(folder.uri)),
          plans: vscode.workspace.textDocuments
            .filter((document) => document.languageId === languageId)
            .map((document) => URI.from(document.uri)),
        },
        {
          stat: (file) => vscode.workspace.fs.stat(vscode.Uri.from(file)),
          readFile: (file) => vscode.workspace.fs.readFile(vscode.Uri.from(file)),
        },
      ),
    );
  }

  get state(): ServerState {
    return this.#state;
  }

  /** The version of a plan that its latest diagnostics are of, or `undefined` before the first. */
  versionOf(uri: vscode.Uri): number | undefined {
    return this.#versions.get(this.#uriText(uri));
  }

  isAbout(changed: PlanChangedParams, uri: vscode.Uri): boolean {
    return changed.uri === this.#uriText(uri);
  }

  /** Starts the server, and tells the painter once when it can't be. */
  async start(): Promise<void> {
    try {
      await this.#client.start();
    } catch {
      this.#enter('stopped');
    }
  }

  async restart(): Promise<void> {
    this.#restarts.forget();
    this.#givenUp = false;
    this.#told = false;
    if (this.#client.needsStop()) await this.#client.stop().catch(() => undefined);
    await this.start();
  }

  /** @throws when the server is not running */
  scene(uri: vscode.Uri, view: View): Promise<SceneResult | null> {
    return this.#client.sendRequest(sceneRequest, { textDocument: { uri: this.#uriText(uri) }, view });
  }

  async stop(): Promise<void> {
    if (this.#client.needsStop()) await this.#client.stop();
  }

  dispose(): void {
    this.#stateChanged.dispose();
    this.#planChanged.dispose();
  }

  #uriText(uri: vscode.Uri): string {
    return this.#client.code2ProtocolConverter.asUri(uri);
  }

  #stateOf(state: State): ServerState {
    switch (state) {
      case State.Running:
        return 'running';
      case State.StartFailed:
        return 'stopped';
      case State.Starting:
        return 'starting';
      case State.Stopped:
        return this.#givenUp ? 'stopped' : 'starting';
    }
  }

  #enter(state: ServerState): void {
    if (state === this.#state) return;
    this.#state = state;
    if (state !== 'running') this.#versions.clear();
    this.#stateChanged.fire(state);
    if (state === 'stopped' && !this.#told) {
      this.#told = true;
      void this.#tell();
    }
  }

  async #tell(): Promise<void> {
    const again = 'Start Again';
    const showLog = 'Show Log';
    const chosen = await vscode.window.showErrorMessage(
      'Mahlstick has stopped: plans are neither checked nor drawn. Your text is not affected.',
      again,
      showLog,
    );
    if (chosen === again) await this.restart();
    if (chosen === showLog) this.#client.outputChannel.show();
  }
}
