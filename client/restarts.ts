/**
 * Decides whether a server that ended is started again: yes, until it has ended more than `most` times within
 * `withinMs`; then something is wrong that starting again will not mend.
 */
export class Restarts {
  readonly #now: () => number;
  readonly #most: number;
  readonly #withinMs: number;
  #ends: readonly number[] = [];

  constructor(now: () => number, most = 4, withinMs = 180_000) {
    this.#now = now;
    this.#most = most;
    this.#withinMs = withinMs;
  }

  /** The server has ended: whether to start it again. */
  ended(): boolean {
    const now = this.#now();
    this.#ends = [...this.#ends.filter((end) => now - end < this.#withinMs), now];
    return this.#ends.length <= this.#most;
  }

  /** The painter asked for a start: what was before does not count. */
  forget(): void {
    this.#ends = [];
  }
}
