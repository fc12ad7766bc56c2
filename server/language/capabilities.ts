import {
  PositionEncodingKind,
  TextDocumentSyncKind,
  type FileOperationRegistrationOptions,
  type ServerCapabilities,
} from 'vscode-languageserver-protocol';
import type { Abilities } from './abilities.js';
import { actionKinds } from './action-kinds.js';
import { legend } from './token-legend.js';

/** What the server offers a client. Nothing is registered later on that a client has not asked for here. */
export function capabilitiesFor(abilities: Abilities): ServerCapabilities {
  const tells = abilities.progress ? { workDoneProgress: true } : {};
  /** What other plans must be read for may take its time. */
  const beyondOnePlan = abilities.progress ? tells : true;
  return {
    positionEncoding: PositionEncodingKind.UTF16,
    textDocumentSync: {
      openClose: true,
      change: TextDocumentSyncKind.Incremental,
      save: { includeText: false },
    },
    completionProvider: { triggerCharacters: completionTriggers },
    hoverProvider: true,
    definitionProvider: beyondOnePlan,
    documentHighlightProvider: true,
    referencesProvider: beyondOnePlan,
    renameProvider: abilities.renamePreparing ? { prepareProvider: true, ...tells } : beyondOnePlan,
    documentSymbolProvider: true,
    foldingRangeProvider: true,
    // What is found in a plan may hang on the files that it names.
    ...(abilities.pulledDiagnostics
      ? { diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: false, ...tells } }
      : {}),
    ...(abilities.inlayHints ? { inlayHintProvider: true } : {}),
    ...(abilities.semanticTokens
      ? { semanticTokensProvider: { legend, full: { delta: true }, range: true } }
      : {}),
    colorProvider: true,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' },
    selectionRangeProvider: true,
    documentLinkProvider: { resolveProvider: false },
    workspaceSymbolProvider: beyondOnePlan,
    // A client without code action literals could only be given commands, and there are none.
    ...(abilities.codeActions ? { codeActionProvider: { codeActionKinds: [...actionKinds] } } : {}),
    workspace: {
      ...(abilities.workspaceFolders
        ? { workspaceFolders: { supported: true, changeNotifications: true } }
        : {}),
      ...(abilities.fileMoves ? { fileOperations: { willRename: { filters: movedFiles } } } : {}),
    },
  };
}

/** Files that plans name, plans, and folders that may hold such. */
const movedFiles: FileOperationRegistrationOptions['filters'] = [
  {
    pattern: {
      glob: '**/*.{mahl,svg,png,jpg,jpeg,gif,webp,avif,bmp,tif,tiff}',
      matches: 'file',
      options: { ignoreCase: true },
    },
  },
  { pattern: { glob: '**', matches: 'folder' } },
];

/** Behind a space stands the next word of a statement, and a quote opens the name of a file or part. */
const completionTriggers = [' ', '"', '/'];
