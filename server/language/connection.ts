import * as v from 'valibot';
import {
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  DidSaveTextDocumentNotification,
  ErrorCodes,
  ResponseError,
  type Connection,
  type InitializeError,
  type InitializeParams,
  type InitializeResult,
  type NotificationType,
} from 'vscode-languageserver';
import { marked, type Sentences, speaking, t } from '../../grammar/index.js';
import type { SquarePhotograph } from '../photograph/answers.js';
import { abilitiesOf, type Abilities } from './abilities.js';
import { capabilitiesFor } from './capabilities.js';
import { Configuration } from './configuration.js';
import { usualSpelling } from './paths.js';
import { answerComparisons } from './comparisons.js';
import { answerExports, type Exporter } from './exports.js';
import type * as Features from './features.js';
import { type FilesHost, filesWithin } from './files-within.js';
import { changed, ofDocument, opened, otherFolders, watched, type Form } from './forms.js';
import { foldersOf, referenceOf, wishesOf } from './hello.js';
import { logOnce } from './log-once.js';
import { showStoppableWork } from './progress.js';
import { answerPulls } from './pulled-diagnostics.js';
import { answerRequests } from './requests.js';
import type { Guard, Session } from './guard.js';
import type { LanguageService } from './language-service.js';
import { languageFor, type Languages } from './locale.js';
import { ignoreEnd, tellOfPlan } from './telling.js';
import { Lull, nextTurn, Turns } from './turns.js';

/** What differs from one way of running the server to another. */
export interface ServerHost extends FilesHost {
  readonly version: string;
  /** Loads all that reads plans; asked for again whenever it is needed, and first once a client's hello is answered. */
  readonly features: () => typeof Features;
  /** Address of the folder that holds the reference the server was installed with. */
  readonly reference?: string;
  /**
   * Begins what squares up photographs, in a thread of its own. Asked for when a plan names the first, with the address
   * of the folder that the tool is installed in, where it is known; `undefined` where it can't be had.
   */
  readonly squarePhotograph?: (installed: string | undefined) => SquarePhotograph | undefined;
  /**
   * What is said in other languages than English, read when a client asks for one, from where it says that the tool is
   * installed.
   */
  readonly languages?: (installed: string | undefined) => Languages;
  /** Makes files of drawings; missing where there are none to be had. */
  readonly exportDrawing?: Exporter;
}

/**
 * Speaks the Language Server Protocol over a connection, whatever carries it, until the connection ends. Whatever
 * the client sends, the server answers and lives on.
 */
export function serve(connection: Connection, host: ServerHost): void {
  let session: (Session & { readonly folders: Set<string> }) | undefined;
  let isShutDown = false;
  /** Address of the folder that the tool is installed in. */
  let installed: string | undefined;
  const failed = logOnce(connection);
  const guarded = (what: string, work: () => void): void => {
    try {
      work();
    } catch (error) {
      failed(what, error);
    }
  };

  const configuration = new Configuration(
    connection,
    {
      rules: (rules) => session?.service.rulesChanged(rules),
      hints: (hints) => session?.service.hintsChanged(hints),
    },
    (value) => host.features().readRuleSettings(value),
    failed,
  );
  const turns = new Turns((uri) =>
    guarded('plan', () => {
      if (session !== undefined) tellOfPlan({ connection, session, guarded }, uri);
    }),
  );
  const lull = new Lull();
  /** Once for all that changes in a turn. */
  const askAgain = new Turns(() => {
    const {
      inlayHintRefresh = false,
      diagnosticRefresh = false,
      pulledDiagnostics = false,
    } = session?.abilities ?? {};
    if (inlayHintRefresh) connection.languages.inlayHint.refresh().catch(() => undefined);
    if (diagnosticRefresh && pulledDiagnostics)
      connection.languages.diagnostics.refresh().catch(() => undefined);
  });
  /** English where the other can't be had. */
  function spoken({ locale }: InitializeParams): Sentences | undefined {
    try {
      return languageFor(locale, host.languages?.(installed));
    } catch (error) {
      failed('language', error);
      return undefined;
    }
  }

  connection.onInitialize((params): InitializeResult | ResponseError<InitializeError> => {
    if (session !== undefined) {
      return new ResponseError(ErrorCodes.InvalidRequest, 'initialized already', { retry: false });
    }
    installed = referenceOf(params) ?? host.reference;
    const language = spoken(params);
    const abilities = {
      ...abilitiesOf(params.capabilities, installed, wishesOf(params)),
      ...(language ? { language } : {}),
    };
    const folders = new Set(foldersOf(params));
    const files = filesWithin(connection, host, params, () => [...folders]);
    let begun: LanguageService | undefined;
    const begin = (): LanguageService => {
      begun = host.features().createLanguageService({
        abilities,
        folders: () => [...folders],
        fetchFile: files.fetch,
        photographs: {
          fetch: files.fetchBytes,
          square: whenWanted(() => host.squarePhotograph?.(installed)),
          show: (stop) =>
            showStoppableWork(
              connection,
              abilities.progress,
              speaking(abilities.language, () => t('Measuring photographs')),
              stop,
            ),
        },
        listPlans: files.list,
        planChanged: (uri) => turns.ask(uri),
        answersChanged: () => askAgain.ask('answers'),
        failed,
      });
      configuration.begin(params.initializationOptions);
      return begun;
    };
    session = {
      get service() {
        return begun ?? begin();
      },
      abilities,
      folders,
    };
    return {
      capabilities: capabilitiesFor(abilities),
      serverInfo: { name: 'Mahlstick', version: host.version },
    };
  });
  connection.onInitialized(() => {
    if (session !== undefined) {
      watch(connection, session.abilities, failed);
      configuration.follow(session.abilities);
      // A plan is about to be opened, and should not wait for what reads it.
      nextTurn(() => guarded('features', () => void session?.service));
    }
    if (session?.abilities.workspaceFolders !== true) return;
    connection.workspace.onDidChangeWorkspaceFolders((event) =>
      guarded('workspace/didChangeWorkspaceFolders', () => {
        v.assert(otherFolders, event);
        event.removed.forEach(({ uri }) => session?.folders.delete(uri));
        event.added.forEach(({ uri }) => session?.folders.add(uri));
        session?.service.foldersChanged();
      }),
    );
  });

  connection.onShutdown(() => {
    isShutDown = true;
  });

  /** Takes in one kind of notification; one that is not well formed is logged and changes nothing. */
  const take = <P>(
    type: NotificationType<P>,
    form: Form,
    work: (service: LanguageService, params: P) => void,
  ): void => {
    connection.onNotification(type, (params) =>
      guarded(type.method, () => {
        lull.heard();
        v.assert(form, params);
        if (session !== undefined) work(session.service, params);
      }),
    );
  };
  take(DidOpenTextDocumentNotification.type, opened, (service, { textDocument }) =>
    service.open(textDocument.uri, textDocument.version, textDocument.text),
  );
  take(DidChangeTextDocumentNotification.type, changed, (service, { textDocument, contentChanges }) =>
    service.change(textDocument.uri, versionAfter(service, textDocument), contentChanges),
  );
  take(DidCloseTextDocumentNotification.type, ofDocument, (service, { textDocument: { uri } }) => {
    service.close(uri);
    turns.drop(uri);
    pulls.forget(usualSpelling(uri));
    if (session?.abilities.pulledDiagnostics !== true)
      ignoreEnd(connection.sendDiagnostics({ uri, diagnostics: [] }));
  });
  take(DidSaveTextDocumentNotification.type, ofDocument, (service, { textDocument }) => {
    // Clients that watch no files, or only those below their folders, don't tell of every change: saving looks again.
    service.rereadFiles(textDocument.uri);
  });
  take(DidChangeWatchedFilesNotification.type, watched, (service, { changes }) =>
    service.filesChanged(changes.map(({ uri }) => uri)),
  );

  const guard: Guard = {
    lull,
    session: () => {
      if (isShutDown) return new ResponseError(ErrorCodes.InvalidRequest, 'shut down');
      return session ?? new ResponseError(ErrorCodes.ServerNotInitialized, 'not initialized');
    },
    failed,
  };
  answerRequests(connection, guard);
  answerComparisons(connection, guard, () => [...(session?.folders ?? [])], host.features);
  answerExports(connection, guard, host.exportDrawing, () => installed);
  const pulls = answerPulls(connection, guard);
  connection.listen();
}

/** The version that a change leads to; where the client does not say, the next one. */
function versionAfter(
  service: LanguageService,
  { uri, version }: { readonly uri: string; readonly version?: number | null },
): number {
  return version ?? (service.snapshot(uri)?.version ?? 0) + 1;
}

/** Begun with the first photograph. */
function whenWanted(begin: () => SquarePhotograph | undefined): SquarePhotograph {
  let square: SquarePhotograph | undefined;
  return async (bytes, squaring, options) => {
    square ??= begin();
    return (
      square?.(bytes, squaring, options) ?? {
        ok: false,
        reason: marked('Photographs cannot be measured here.'),
      }
    );
  };
}

/** Cameras write the endings of their files in capitals. */
const watchedFiles = '**/*.{mahl,svg,jpg,jpeg,png,webp,JPG,JPEG,PNG,WEBP}';

function watch(
  connection: Connection,
  { fileWatching }: Abilities,
  failed: (what: string, error: unknown) => void,
): void {
  if (!fileWatching) return;
  connection.client
    .register(DidChangeWatchedFilesNotification.type, { watchers: [{ globPattern: watchedFiles }] })
    .catch((error: unknown) => failed('watching files', error));
}
