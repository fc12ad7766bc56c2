import * as v from 'valibot';
import {
  LSPErrorCodes,
  ResponseError,
  type CancellationToken,
  type Connection,
  type RequestType,
} from 'vscode-languageserver';
import { ofDocument, type Form } from './forms.js';
import { admitted, cancelled, type Guard, type Session } from './guard.js';
import type { Surroundings } from './library.js';
import { speaking, t } from '../../grammar/index.js';
import { followWork } from './progress.js';

/**
 * The ways in which requests are answered. Each takes the request, the form of its parameters, and what to answer
 * after a fault of ours.
 */
export interface Answering {
  /** At once. */
  readonly answer: <P, R, E>(
    type: RequestType<P, R, E>,
    form: Form,
    none: NoInfer<R>,
    feature: (session: Session, params: P) => NoInfer<R>,
  ) => void;
  /** What costs more than a turn: it waits until nothing else comes in, and may be taken back until then. */
  readonly answerLater: <P, R, E>(
    type: RequestType<P, R, E>,
    form: Form,
    none: NoInfer<R>,
    feature: (
      session: Session,
      params: P,
      /** What to answer instead where it has been taken back or overtaken since. */
      lost: () => ResponseError<void> | undefined,
    ) => NoInfer<R> | ResponseError<void> | Promise<R | ResponseError<void>>,
  ) => void;
  /** What reaches beyond one plan: what stands round it is read first. */
  readonly answerAround: <P, R, E>(
    type: RequestType<P, R, E>,
    form: Form,
    none: NoInfer<R>,
    feature: (session: Session, params: P, around: Surroundings) => NoInfer<R> | ResponseError<void>,
  ) => void;
}

/** Refuses what is not well formed, honours cancellation, and turns a fault in a feature into the answer `none`. */
export function answeringOn(connection: Connection, guard: Guard): Answering {
  const answer: Answering['answer'] = (type, form, none, feature) => {
    connection.onRequest(
      type.method,
      (params: Parameters<typeof feature>[1], token: CancellationToken): unknown => {
        const session = admitted(guard, type.method, form, params);
        if (session instanceof ResponseError) return session;
        if (token.isCancellationRequested) return cancelled();
        try {
          return feature(session, params);
        } catch (error) {
          guard.failed(type.method, error);
          return none;
        }
      },
    );
  };

  const answerLater: Answering['answerLater'] = (type, form, none, feature) => {
    connection.onRequest(
      type.method,
      async (params: Parameters<typeof feature>[1], token: CancellationToken): Promise<unknown> => {
        const session = admitted(guard, type.method, form, params);
        if (session instanceof ResponseError) return session;
        const uri = v.is(ofDocument, params) ? params.textDocument.uri : undefined;
        try {
          const version = uri === undefined ? undefined : session.service.snapshot(uri)?.version;
          await guard.lull.reached();
          const lost = (): ResponseError<void> | undefined => {
            if (token.isCancellationRequested) return cancelled();
            return uri !== undefined && session.service.snapshot(uri)?.version !== version
              ? new ResponseError(LSPErrorCodes.ContentModified, 'the plan has changed')
              : undefined;
          };
          return lost() ?? (await feature(session, params, lost));
        } catch (error) {
          guard.failed(type.method, error);
          return none;
        }
      },
    );
  };

  const answerAround: Answering['answerAround'] = (type, form, none, feature) =>
    answerLater(type, form, none, async (session, params, lost) => {
      const progress = followWork(
        connection,
        params,
        speaking(session.abilities.language, () => t('Reading the plans of the workspace')),
      );
      try {
        const around = await session.service.surroundings();
        return lost() ?? feature(session, params, around);
      } finally {
        progress.end();
      }
    });

  return { answer, answerLater, answerAround };
}
