/** Calls back when everything that waits now has had its turn. */
export type NextTurn = (callback: () => void) => void;

/** The host's own turns; a browser's worker has no `setImmediate`. */
export const nextTurn: NextTurn =
  typeof setImmediate === 'function'
    ? (callback) => void setImmediate(callback)
    : (callback) => void setTimeout(callback, 0);

/**
 * Work that is overtaken while messages are still coming in. The connection handles one message a turn; a key that
 * is asked for runs once a whole turn has gone by in which nothing was asked for, so of a burst of edits only the
 * last is worked on, and a single edit waits for nothing. One key is worked on a turn, so that messages can come
 * between.
 */
export class Turns {
  readonly #work: (key: string) => void;
  readonly #next: NextTurn;
  readonly #waiting = new Set<string>();
  #askedThisTurn = false;
  #ticking = false;

  constructor(work: (key: string) => void, next: NextTurn = nextTurn) {
    this.#work = work;
    this.#next = next;
  }

  ask(key: string): void {
    this.#waiting.add(key);
    this.#askedThisTurn = true;
    this.#tickNext();
  }

  /** The key is not worked on any more, unless it is asked for again. */
  drop(key: string): void {
    this.#waiting.delete(key);
  }

  #tickNext(): void {
    if (this.#ticking) return;
    this.#ticking = true;
    this.#next(() => {
      this.#ticking = false;
      this.#tick();
    });
  }

  #tick(): void {
    if (this.#askedThisTurn) {
      this.#askedThisTurn = false;
      this.#tickNext();
      return;
    }
    const [key] = this.#waiting;
    if (key === undefined) return;
    this.#waiting.delete(key);
    if (this.#waiting.size > 0) this.#tickNext();
    this.#work(key);
  }
}
