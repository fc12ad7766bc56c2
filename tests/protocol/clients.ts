import type { ClientCapabilities } from 'vscode-languageserver-protocol';

/** A client that offers nothing. */
export const bareClient: ClientCapabilities = {};

/** A client that offers all that the server knows of. */
export const fullClient: ClientCapabilities = {
  general: { positionEncodings: ['utf-16'] },
  workspace: {
    applyEdit: true,
    workspaceFolders: true,
    workspaceEdit: { documentChanges: true, snippetEditSupport: true },
    didChangeWatchedFiles: { dynamicRegistration: true },
    fileOperations: { willRename: true },
    inlayHint: { refreshSupport: true },
  },
  textDocument: {
    publishDiagnostics: {
      relatedInformation: true,
      versionSupport: true,
      codeDescriptionSupport: true,
      tagSupport: { valueSet: [1, 2] },
    },
    completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'] } },
    hover: { contentFormat: ['markdown', 'plaintext'] },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    definition: { linkSupport: true },
    rename: { prepareSupport: true },
    semanticTokens: {
      requests: { full: { delta: true }, range: true },
      tokenTypes: [],
      tokenModifiers: [],
      formats: ['relative'],
    },
    inlayHint: {},
    documentLink: { tooltipSupport: true },
    codeAction: {
      codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } },
      isPreferredSupport: true,
    },
  },
};

/** What a client says of where the reference lies. */
export const pointedAt = { initializationOptions: { reference: 'file:///mahlstick' } };
