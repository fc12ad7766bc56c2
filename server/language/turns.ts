/** Calls back when everything that waits now has had its turn. */
export type NextTurn = (callback: () => void) => void;

/** The host's own turns; a browser's worker has no `setImmediate`. */
export const nextTurn: NextTurn =
  typeof setImmediate === 'function'
    ? (callback) => void setImmediate(callback)
    : (callback) => void setTimeout(callback, 0);

/** Settles when everything that waits now has had its turn. */
export function aTurn(): Promise<void> {
  return new Promise((resolve) => nextTurn(resolve));
}

/** Nobody notices that a message waits so long. */
const WHILE_MILLISECONDS = 4;

/**
 * Does pieces of work for some milliseconds, at least one: a turn for each small piece would take longer than the work.
 *
 * @param piece false when there is nothing left to do
 * @returns whether there is more
 */
export function forAWhile(piece: () => boolean): boolean {
  const begun = performance.now();
  while (piece()) if (performance.now() - begun > WHILE_MILLISECONDS) return true;
  return false;
}

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

/** A client that never stops sending is answered all the same. */
const MOST_TURNS = 100;

/**
 * Lets costly answers wait until no more messages come in, so that those which were taken back or overtaken by then
 * cost nothing. Where nothing else has come, those are two turns.
 */
export class Lull {
  readonly #next: NextTurn;
  #heard = 0;

  constructor(next: NextTurn = nextTurn) {
    this.#next = next;
  }

  /** A message has come. */
  heard(): void {
    this.#heard++;
  }

  /** Settles once a whole turn has gone by without a message. The turn that it is called in is half gone already. */
  async reached(): Promise<void> {
    let quiet = 0;
    for (let turn = 0; turn < MOST_TURNS && quiet < 2; turn++) {
      const heard = this.#heard;
      await new Promise<void>((resolve) => this.#next(resolve));
      quiet = heard === this.#heard ? quiet + 1 : 0;
    }
  }
}
