import type { SquaredAnswer } from '../measure/photograph/photographs.js';

/** Of what nobody asks for just now, in case that a corner is put back or a plan opened again. */
const UNWANTED_KEPT = 30;

/**
 * What was measured, by the ids of squared-up pictures: what is asked for, whatever its number, and the last of what
 * was.
 */
export class KeptAnswers {
  /** The one used last is the last. */
  readonly #answers = new Map<string, SquaredAnswer>();

  use(id: string): SquaredAnswer | undefined {
    const answer = this.#answers.get(id);
    if (answer === undefined) return undefined;
    this.#answers.delete(id);
    this.#answers.set(id, answer);
    return answer;
  }

  /** @param wanted the ids of all that is asked for: what of it were let go would be measured again and again */
  keep(id: string, answer: SquaredAnswer, wanted: ReadonlySet<string>): void {
    this.#answers.set(id, answer);
    const unwanted = [...this.#answers.keys()].filter((each) => !wanted.has(each));
    for (const each of unwanted.slice(0, Math.max(0, unwanted.length - UNWANTED_KEPT)))
      this.#answers.delete(each);
  }
}
