import {
  CodeActionRequest,
  ColorPresentationRequest,
  CompletionRequest,
  DefinitionRequest,
  DocumentColorRequest,
  DocumentFormattingRequest,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  DocumentOnTypeFormattingRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  InlayHintRequest,
  MessageType,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  ShowMessageNotification,
  SemanticTokensDeltaRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  LSPErrorCodes,
  ResponseError,
  WillRenameFilesRequest,
  WorkspaceSymbolRequest,
  type Connection,
} from 'vscode-languageserver';
import { answeringOn } from './answering.js';
import {
  atPosition,
  atPositions,
  inRange,
  ofActions,
  ofColour,
  ofDelta,
  ofDocument,
  ofMoves,
  ofQuery,
  ofReferences,
  ofRename,
  ofTyping,
  ofView,
  tried,
  written,
} from './forms.js';
import { GivenScenes } from './given-scenes.js';
import type { Guard } from './guard.js';
import { sceneRequest, tryChangeRequest, writeChangeRequest } from './protocol.js';
import type { Refusal } from './rename.js';

/** Registers an answer for every request about a document. */
export function answerRequests(connection: Connection, guard: Guard): void {
  const { answer, answerLater, answerAround } = answeringOn(connection, guard);
  const given = new GivenScenes();
  const told = new Set<string>();
  /** Shows a sentence to the painter, unless it was shown before. */
  const tellOnce = (message: string | undefined): void => {
    if (message === undefined || told.has(message)) return;
    told.add(message);
    connection
      .sendNotification(ShowMessageNotification.type, { type: MessageType.Info, message })
      .catch(() => undefined);
  };

  answer(CompletionRequest.type, atPosition, null, ({ service }, { textDocument, position }) => [
    ...service.completions(textDocument.uri, position),
  ]);
  answerLater(
    HoverRequest.type,
    atPosition,
    null,
    ({ service }, { textDocument, position }) => service.hover(textDocument.uri, position) ?? null,
  );
  answerAround(
    DefinitionRequest.type,
    atPosition,
    null,
    ({ service, abilities }, { textDocument, position }, around) => {
      const link = service.definition(textDocument.uri, position, around);
      if (link === undefined) return null;
      return abilities.definitionLinks ? [link] : { uri: link.targetUri, range: link.targetSelectionRange };
    },
  );
  answerAround(
    ReferencesRequest.type,
    ofReferences,
    null,
    ({ service }, { textDocument, position, context }, around) => [
      ...service.references(textDocument.uri, position, context.includeDeclaration, around),
    ],
  );
  answerAround(
    PrepareRenameRequest.type,
    atPosition,
    null,
    ({ service }, { textDocument, position }, around) =>
      orRefused(service.renamable(textDocument.uri, position, around)),
  );
  answerAround(
    RenameRequest.type,
    ofRename,
    null,
    ({ service }, { textDocument, position, newName }, around) => {
      const renamed = service.rename(textDocument.uri, position, newName, around);
      if (renamed !== undefined && !('refused' in renamed))
        tellOnce(service.outOfReach(textDocument.uri, position, around));
      return orRefused(renamed);
    },
  );
  answer(DocumentHighlightRequest.type, atPosition, null, ({ service }, { textDocument, position }) => [
    ...service.highlights(textDocument.uri, position),
  ]);
  answer(DocumentSymbolRequest.type, ofDocument, null, ({ service }, { textDocument }) =>
    service.symbols(textDocument.uri),
  );
  answer(FoldingRangeRequest.type, ofDocument, null, ({ service }, { textDocument }) => [
    ...service.foldingRanges(textDocument.uri),
  ]);
  answerLater(InlayHintRequest.type, inRange, null, ({ service }, { textDocument, range }) => [
    ...service.inlayHints(textDocument.uri, range),
  ]);
  answer(SemanticTokensRequest.type, ofDocument, null, ({ service }, { textDocument }) =>
    service.semanticTokens(textDocument.uri),
  );
  answer(SemanticTokensRangeRequest.type, inRange, null, ({ service }, { textDocument, range }) =>
    service.semanticTokensIn(textDocument.uri, range),
  );
  answer(SemanticTokensDeltaRequest.type, ofDelta, null, ({ service }, { textDocument, previousResultId }) =>
    service.semanticTokensDelta(textDocument.uri, previousResultId),
  );
  answer(DocumentColorRequest.type, ofDocument, [], ({ service }, { textDocument }) => [
    ...service.colours(textDocument.uri),
  ]);
  answer(ColorPresentationRequest.type, ofColour, [], ({ service }, { textDocument, range, color }) => [
    ...service.colourPresentations(textDocument.uri, range, color),
  ]);
  answer(DocumentFormattingRequest.type, ofDocument, null, ({ service }, { textDocument }) => [
    ...service.format(textDocument.uri),
  ]);
  answer(DocumentRangeFormattingRequest.type, inRange, null, ({ service }, { textDocument, range }) => [
    ...service.format(textDocument.uri, range),
  ]);
  answer(
    DocumentOnTypeFormattingRequest.type,
    ofTyping,
    null,
    ({ service }, { textDocument, position, ch, options }) =>
      ch === '\n' ? [...service.onTypeEdits(textDocument.uri, position, options)] : [],
  );
  answer(SelectionRangeRequest.type, atPositions, null, ({ service }, { textDocument, positions }) => [
    ...service.selectionRanges(textDocument.uri, positions),
  ]);
  answer(DocumentLinkRequest.type, ofDocument, null, ({ service }, { textDocument }) => [
    ...service.links(textDocument.uri),
  ]);
  answerAround(WorkspaceSymbolRequest.type, ofQuery, null, ({ service }, { query }, around) =>
    service.workspaceSymbols(query, around),
  );
  answerAround(
    WillRenameFilesRequest.type,
    ofMoves,
    null,
    ({ service }, { files }, around) => service.editsForMoves(files, around) ?? null,
  );
  answerLater(CodeActionRequest.type, ofActions, null, ({ service }, { textDocument, range, context }) => [
    ...service.codeActions(textDocument.uri, range, context.only),
  ]);
  answer(tryChangeRequest, tried, null, ({ service }, { known, ...params }) => {
    const attempt = service.tryChange(params);
    return attempt !== null && 'scene' in attempt ? given.tried(attempt, known) : attempt;
  });
  answer(writeChangeRequest, written, null, ({ service }, params) => service.writeChange(params));
  answer(sceneRequest, ofView, null, ({ service }, { textDocument, view, known, ...options }) => {
    const version = service.snapshot(textDocument.uri)?.version;
    const scene = service.scene(textDocument.uri, view, options);
    return version === undefined || scene === undefined ? null : given.answer({ version, scene }, known);
  });
}

/** A refusal as an editor shows it: the sentence beside the name. */
function orRefused<T extends object>(answered: T | Refusal | undefined): T | ResponseError<void> | null {
  if (answered === undefined) return null;
  return 'refused' in answered ? new ResponseError(LSPErrorCodes.RequestFailed, answered.refused) : answered;
}
