import { MarkupKind, type ClientCapabilities } from 'vscode-languageserver-protocol';
import type { Sentences } from '../../grammar/index.js';

/**
 * What the client can take, as yes or no. A feature asks here and never looks into the client's own
 * capabilities, so that "can't" is written in one place and a missing branch of them is a plain "no".
 */
export interface Abilities {
  readonly completionSnippets: boolean;
  readonly completionMarkdown: boolean;
  /** The painter chooses in the editor whether an offer takes the place of what follows in the word. */
  readonly insertReplaceEdits: boolean;
  readonly hoverMarkdown: boolean;
  readonly nestedSymbols: boolean;
  readonly definitionLinks: boolean;
  /** Edits that name the version they were made for. */
  readonly versionedEdits: boolean;
  /** Edits with a placeholder that the painter types over. */
  readonly snippetEdits: boolean;
  /** The client colours words by what the server says they are. */
  readonly semanticTokens: boolean;
  readonly inlayHints: boolean;
  /** The client asks for inlay hints again when it is told to. */
  readonly inlayHintRefresh: boolean;
  /** The client asks for diagnostics itself, so none are sent without being asked for. */
  readonly pulledDiagnostics: boolean;
  /** The client asks for diagnostics again when it is told to. */
  readonly diagnosticRefresh: boolean;
  /** The client shows that work is being done which it has not asked for. */
  readonly progress: boolean;
  readonly linkTooltips: boolean;
  /** The client asks before files are renamed or moved what else is to change. */
  readonly fileMoves: boolean;
  /** The client asks first whether and what can be renamed. */
  readonly renamePreparing: boolean;
  readonly codeActions: boolean;
  readonly preferredActions: boolean;
  readonly diagnosticLinks: boolean;
  readonly relatedPlaces: boolean;
  readonly fadedDiagnostics: boolean;
  /** The client watches files when it is asked to. */
  readonly fileWatching: boolean;
  readonly workspaceFolders: boolean;
  /** The client answers what is asked about its settings. */
  readonly configuration: boolean;
  /** The client tells of changed settings when it is asked to. */
  readonly configurationNews: boolean;
  /** Drawings are seen in what is told in Markdown. */
  readonly drawings: boolean;
  /** Address of the folder that holds the reference; missing when the server has none to point to. */
  readonly reference?: string;
  /** The language of its reader, where we have it; English otherwise. */
  readonly language?: Sentences;
}

export interface Wishes {
  readonly wantsPush?: boolean;
  readonly drawings?: boolean;
}

/**
 * Reads the client's capabilities; an empty object gives a client that can do nothing.
 *
 * @param wishes what it says of itself in its options: that it is to be sent diagnostics though it could ask for them,
 *   and that it shows drawings
 */
export function abilitiesOf(
  { textDocument, window, workspace }: ClientCapabilities,
  reference?: string,
  { wantsPush = false, drawings = false }: Wishes = {},
): Abilities {
  const completion = textDocument?.completion?.completionItem;
  const diagnostics = textDocument?.publishDiagnostics;
  const actions = textDocument?.codeAction;
  const versionedEdits = workspace?.workspaceEdit?.documentChanges === true;
  return {
    completionSnippets: completion?.snippetSupport === true,
    completionMarkdown: completion?.documentationFormat?.[0] === MarkupKind.Markdown,
    insertReplaceEdits: completion?.insertReplaceSupport === true,
    hoverMarkdown: textDocument?.hover?.contentFormat?.[0] === MarkupKind.Markdown,
    nestedSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    definitionLinks: textDocument?.definition?.linkSupport === true,
    versionedEdits,
    snippetEdits: versionedEdits && workspace?.workspaceEdit?.snippetEditSupport === true,
    semanticTokens: textDocument?.semanticTokens !== undefined,
    inlayHints: textDocument?.inlayHint !== undefined,
    inlayHintRefresh: workspace?.inlayHint?.refreshSupport === true,
    pulledDiagnostics: textDocument?.diagnostic !== undefined && !wantsPush,
    diagnosticRefresh: workspace?.diagnostics?.refreshSupport === true,
    progress: window?.workDoneProgress === true,
    linkTooltips: textDocument?.documentLink?.tooltipSupport === true,
    fileMoves: workspace?.fileOperations?.willRename === true,
    renamePreparing: textDocument?.rename?.prepareSupport === true,
    codeActions: actions?.codeActionLiteralSupport !== undefined,
    preferredActions: actions?.isPreferredSupport === true,
    diagnosticLinks: diagnostics?.codeDescriptionSupport === true,
    relatedPlaces: diagnostics?.relatedInformation === true,
    fadedDiagnostics: diagnostics?.tagSupport !== undefined,
    fileWatching: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    workspaceFolders: workspace?.workspaceFolders === true,
    configuration: workspace?.configuration === true,
    configurationNews: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    drawings,
    ...(reference === undefined ? {} : { reference }),
  };
}
