import * as v from 'valibot';
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
  ErrorCodes,
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
  type CancellationToken,
  type Connection,
  type RequestType,
} from 'vscode-languageserver';
import type { Abilities } from './abilities.js';
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
  type Form,
} from './forms.js';
import type { Surroundings } from './library.js';
import { sceneRequest, tryChangeRequest, writeChangeRequest } from './protocol.js';
import { followWork } from './progress.js';
import type { Refusal } from './rename.js';
import type { LanguageService } from './language-service.js';
import type { Lull } from './turns.js';

/** What the handlers need of the running server. */
export interface Session {
  readonly service: LanguageService;
  readonly abilities: Abilities;
}

export interface Guard {
  /** What to refuse a request with while there is no session: the client has said no hello yet, or goodbye. */
  readonly session: () => Session | ResponseError<void>;
  /** Told of every message; costly answers wait for it. */
  readonly lull: Lull;
  /** Told of a fault of ours; the client has been answered with nothing, and the server goes on. */
  readonly failed: (what: string, error: unknown) => void;
}

/** Registers an answer for every request about a document. */
export function answerRequests(connection: Connection, guard: Guard): void {
  /**
   * One request: refuses what is not well formed, honours cancellation, and turns a fault in the feature into the
   * answer `none`.
   */
  const answer = <P, R, E>(
    type: RequestType<P, R, E>,
    form: Form,
    none: NoInfer<R>,
    feature: (session: Session, params: P) => NoInfer<R>,
  ): void => {
    connection.onRequest(type.method, (params: P, token: CancellationToken): unknown => {
      guard.lull.heard();
      const session = guard.session();
      if (session instanceof ResponseError) return session;
      if (!v.is(form, params))
        return new ResponseError(ErrorCodes.InvalidParams, `${type.method}: not well formed`);
      if (token.isCancellationRequested)
        return new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
      try {
        return feature(session, params);
      } catch (error) {
        guard.failed(type.method, error);
        return none;
      }
    });
  };

  /** A question whose answer costs more than a turn: it waits until nothing else comes in, and may be taken back until then. */
  const answerLater = <P, R, E>(
    type: RequestType<P, R, E>,
    form: Form,
    none: NoInfer<R>,
    feature: (
      session: Session,
      params: P,
      /** What to answer instead where it has been taken back or overtaken since. */
      lost: () => ResponseError<void> | undefined,
    ) => NoInfer<R> | ResponseError<void> | Promise<R | ResponseError<void>>,
  ): void => {
    connection.onRequest(type.method, async (params: P, token: CancellationToken): Promise<unknown> => {
      guard.lull.heard();
      const session = guard.session();
      if (session instanceof ResponseError) return session;
      if (!v.is(form, params))
        return new ResponseError(ErrorCodes.InvalidParams, `${type.method}: not well formed`);
      const uri = v.is(ofDocument, params) ? params.textDocument.uri : undefined;
      const version = uri === undefined ? undefined : session.service.snapshot(uri)?.version;
      await guard.lull.reached();
      const lost = (): ResponseError<void> | undefined => {
        if (token.isCancellationRequested)
          return new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
        return uri !== undefined && session.service.snapshot(uri)?.version !== version
          ? new ResponseError(LSPErrorCodes.ContentModified, 'the plan has changed')
          : undefined;
      };
      try {
        return lost() ?? (await feature(session, params, lost));
      } catch (error) {
        guard.failed(type.method, error);
        return none;
      }
    });
  };
  /** A question that reaches beyond one plan: what stands round it is read first. */
  const answerAround = <P, R, E>(
    type: RequestType<P, R, E>,
    form: Form,
    none: NoInfer<R>,
    feature: (session: Session, params: P, around: Surroundings) => NoInfer<R> | ResponseError<void>,
  ): void =>
    answerLater(type, form, none, async (session, params, lost) => {
      const progress = followWork(connection, params, 'Reading the plans of the workspace');
      try {
        const around = await session.service.surroundings();
        return lost() ?? feature(session, params, around);
      } finally {
        progress.end();
      }
    });

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
  answer(tryChangeRequest, tried, null, ({ service }, params) => service.tryChange(params));
  answer(writeChangeRequest, written, null, ({ service }, params) => service.writeChange(params));
  answer(sceneRequest, ofView, null, ({ service }, { textDocument, view, ...options }) => {
    const version = service.snapshot(textDocument.uri)?.version;
    const scene = service.scene(textDocument.uri, view, options);
    return version === undefined || scene === undefined ? null : { version, scene };
  });
}

/** A refusal as an editor shows it: the sentence beside the name. */
function orRefused<T extends object>(answered: T | Refusal | undefined): T | ResponseError<void> | null {
  if (answered === undefined) return null;
  return 'refused' in answered ? new ResponseError(LSPErrorCodes.RequestFailed, answered.refused) : answered;
}
