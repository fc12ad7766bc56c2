import { marked } from '../../grammar/marked.js';
import type { NoPhotograph, SquaredAnswer, Squaring } from '../measure/photograph/photographs.js';

/** What may be told and asked while a photograph is being squared up. */
export interface SquaringOptions {
  /** Called with the part of the work that is done, 0 to 1. */
  readonly progress?: (part: number) => void;
  /** Once it is aborted the answer is that measuring was stopped. */
  readonly signal?: AbortSignal;
  /** What `contentOf` gives for the bytes, where it is known already. */
  readonly content?: string;
}

/** The answer to those who have stopped it. */
export const stopped: NoPhotograph = { ok: false, reason: marked('Measuring was stopped.') };

/** Squares up the canvas in the bytes of a photograph. Never rejects: what can't be measured is said in a sentence. */
export type SquarePhotograph = (
  bytes: Uint8Array,
  squaring: Squaring,
  options?: SquaringOptions,
) => Promise<SquaredAnswer>;
