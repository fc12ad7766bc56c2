import type * as vscode from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type LanguageClientOptions,
  type Middleware,
  type RequestType,
  RevealOutputChannelOn,
  State,
} from 'vscode-languageclient';
import { cardRequest, compareRequest } from '../server/language/comparison-protocol.js';
import { exportRequest } from '../server/language/export-protocol.js';
import {
  findPlansRequest,
  type InitializationOptions,
  planChangedNotification,
  planDiagnosedNotification,
  type PlanVersion,
  type ReadBytesParams,
  readBytesRequest,
  type ReadBytesResult,
  type ReadFileParams,
  readFileRequest,
  type ReadFileResult,
  sceneRequest,
  tryChangeRequest,
  writeChangeRequest,
} from '../server/language/protocol.js';
import type { ServerState } from './preview/messages.js';

/** What the server is asked beyond the Language Server Protocol. */
const requests = {
  scene: sceneRequest,
  tryChange: tryChangeRequest,
  writeChange: writeChangeRequest,
  export: exportRequest,
  compare: compareRequest,
  card: cardRequest,
};

type TypesOf<Request> =
  Request extends RequestType<infer Params, infer Answer, void> ? { params: Params; answer: Answer } : never;

export type Requests = { readonly [Kind in keyof typeof requests]: TypesOf<(typeof requests)[Kind]> };

/** What the server is told, and who answers and hears it. */
export interface ConversationParts {
  readonly languageId: string;
  readonly initializationOptions: InitializationOptions;
  readonly middleware: Middleware;
  readonly log: vscode.LogOutputChannel;
  readonly entered: (state: ServerState) => void;
  /** The server has ended without being asked to. */
  readonly ended: () => void;
  readonly planChanged: (changed: PlanVersion) => void;
  /** After the diagnostics of that version have been sent. */
  readonly planDiagnosed: (diagnosed: PlanVersion) => void;
  readonly findPlans: () => Promise<readonly string[]>;
  readonly readFile: (asked: ReadFileParams) => Promise<ReadFileResult>;
  readonly readBytes: (asked: ReadBytesParams) => Promise<ReadBytesResult>;
}

/**
 * What is said with one server, from its start to its end. It holds all of the language client, which is loaded beside
 * the extension: nothing that keeps something, such as the language that sentences are told in, may be in both.
 */
export class Conversation {
  readonly #client: BaseLanguageClient;
  readonly #log: vscode.LogOutputChannel;

  /** @param create makes the client, over whatever the host of the extension has to carry its messages */
  constructor(parts: ConversationParts, create: (options: LanguageClientOptions) => BaseLanguageClient) {
    this.#client = create(optionsFor(parts));
    this.#log = parts.log;
    this.#listen(parts);
  }

  /** Settles when the server answers, and rejects when it can't be started. */
  start(): Promise<void> {
    return this.#client.start();
  }

  /**
   * Ends the server; one that is starting can be ended only when it has started. Settles when it is gone or can't be
   * ended.
   */
  async stop(): Promise<void> {
    if (!this.#client.needsStop()) return;
    try {
      await this.#client.start();
      await this.#client.stop();
    } catch (error) {
      this.#log.debug(`The server was not stopped: ${String(error)}`);
    }
  }

  /** @throws when the server is not running */
  ask<Kind extends keyof Requests>(
    kind: Kind,
    params: Requests[Kind]['params'],
    token?: vscode.CancellationToken,
  ): Promise<Requests[Kind]['answer']> {
    const { method } = requests[kind];
    // Asked by its name alone, a second parameter would be sent even where it is `undefined`.
    return token === undefined
      ? this.#client.sendRequest(method, params)
      : this.#client.sendRequest(method, params, token);
  }

  #listen({ entered, planChanged, planDiagnosed, findPlans, readFile, readBytes }: ConversationParts): void {
    const client = this.#client;
    const log = client.error.bind(client);
    // What is wrong with it is for the log; the painter is told in words that say what to do.
    client.error = (message, data) => log(message, data, false);
    client.onDidChangeState(({ newState }) => entered(stateOf(newState)));
    client.onNotification(planChangedNotification, planChanged);
    client.onNotification(planDiagnosedNotification, planDiagnosed);
    client.onRequest(findPlansRequest, findPlans);
    client.onRequest(readFileRequest, readFile);
    client.onRequest(readBytesRequest, readBytes);
  }
}

function optionsFor({
  languageId,
  initializationOptions,
  middleware,
  log,
  ended,
}: ConversationParts): LanguageClientOptions {
  return {
    documentSelector: [{ language: languageId }],
    initializationOptions,
    middleware,
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
        ended();
        return { action: CloseAction.DoNotRestart, handled: true };
      },
    },
  };
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
