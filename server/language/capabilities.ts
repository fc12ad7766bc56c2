import {
  CodeActionKind,
  PositionEncodingKind,
  TextDocumentSyncKind,
  type ServerCapabilities,
} from 'vscode-languageserver-protocol';
import type { Abilities } from './abilities.js';
import { legend } from './semantic-tokens.js';

/** What the server offers a client. Nothing is registered later on that a client has not asked for here. */
export function capabilitiesFor(abilities: Abilities): ServerCapabilities {
  return {
    positionEncoding: PositionEncodingKind.UTF16,
    textDocumentSync: {
      openClose: true,
      change: TextDocumentSyncKind.Incremental,
      save: { includeText: false },
    },
    completionProvider: { triggerCharacters: completionTriggers },
    hoverProvider: true,
    definitionProvider: true,
    documentHighlightProvider: true,
    referencesProvider: true,
    renameProvider: abilities.renamePreparing ? { prepareProvider: true } : true,
    documentSymbolProvider: true,
    foldingRangeProvider: true,
    ...(abilities.inlayHints ? { inlayHintProvider: true } : {}),
    ...(abilities.semanticTokens
      ? { semanticTokensProvider: { legend, full: { delta: true }, range: true } }
      : {}),
    colorProvider: true,
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    // A client without code action literals could only be given commands, and there are none.
    ...(abilities.codeActions ? { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] } } : {}),
    ...(abilities.workspaceFolders
      ? { workspace: { workspaceFolders: { supported: true, changeNotifications: true } } }
      : {}),
  };
}

/** Behind a space stands the next word of a statement, and a quote opens the name of a file or part. */
const completionTriggers = [' ', '"', '/'];
