import type { HandChange } from '../../../server/language/hand/change.js';

/** A change, made on the drawing of a version of the text. */
export interface Made {
  readonly version: number;
  readonly change: HandChange;
}

/**
 * Tries changes while something moves: one question at a time, and after its answer the latest change that came
 * meanwhile, so that a fast hand neither piles up questions nor waits for all of them.
 */
export class TryFeed {
  /** Asks, and gives the number that the answer will bear. */
  readonly #ask: (made: Made) => number;
  #asked: number | undefined;
  /** The answer is of no use any more. */
  #dropped = false;
  #next: Made | undefined;

  constructor(ask: (made: Made) => number) {
    this.#ask = ask;
  }

  try(made: Made): void {
    if (this.#asked === undefined) this.#asked = this.#ask(made);
    else this.#next = made;
  }

  /** An answer has come. Whether it is to one of these questions, and whether that is of use still. */
  answered(id: number): 'shown' | 'dropped' | 'not asked' {
    if (id !== this.#asked) return 'not asked';
    const outcome = this.#dropped ? 'dropped' : 'shown';
    this.#asked = undefined;
    this.#dropped = false;
    const next = this.#next;
    this.#next = undefined;
    if (next !== undefined) this.try(next);
    return outcome;
  }

  /** Nothing moves any more: what is still to come is not shown. */
  drop(): void {
    this.#next = undefined;
    this.#dropped = this.#asked !== undefined;
  }

  /** The other side is gone and will not answer. */
  forget(): void {
    this.#asked = undefined;
    this.#next = undefined;
    this.#dropped = false;
  }
}
