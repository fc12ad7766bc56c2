import * as v from 'valibot';
import { ErrorCodes, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Abilities } from './abilities.js';
import type { Form } from './forms.js';
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

/** The session in which a request is to be answered, or what to refuse it with. */
export function admitted(
  guard: Guard,
  method: string,
  form: Form,
  params: unknown,
): Session | ResponseError<void> {
  guard.lull.heard();
  const session = guard.session();
  if (session instanceof ResponseError || v.is(form, params)) return session;
  return new ResponseError(ErrorCodes.InvalidParams, `${method}: not well formed`);
}

/** The answer to a request that has been taken back. */
export function cancelled(): ResponseError<void> {
  return new ResponseError(LSPErrorCodes.RequestCancelled, 'cancelled');
}
