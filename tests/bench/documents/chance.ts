/** Numbers that look like chance and are the same on every machine: a seed gives one document. */
export class Chance {
  #state: number;

  constructor(seed: number) {
    this.#state = (seed * 2_654_435_761) >>> 0;
  }

  /** From 0 up to but without 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = this.#state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  }

  between(low: number, high: number): number {
    return low + this.next() * (high - low);
  }

  /** Both ends included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  of<T>(items: readonly T[]): T {
    const item = items[Math.floor(this.next() * items.length)];
    if (item === undefined) throw new Error('nothing to choose from');
    return item;
  }
}
