import { type Reason, reasonInWords } from '../../grammar/index.js';

/** An answer with the reason, if it is refused, in the language that is spoken. */
export function toldAnswer<T extends { readonly ok: true }>(
  answer: T | { readonly ok: false; readonly reason: string | Reason },
): T | { readonly ok: false; readonly reason: string } {
  return answer.ok ? answer : { ok: false, reason: reasonInWords(answer.reason) };
}
