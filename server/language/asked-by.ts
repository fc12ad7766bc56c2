/** Plans that asked for something, each with the last of its computations in which it did. */
export class AskedBy {
  readonly #last = new Map<string, number>();

  /** In the order in which they asked first. */
  get plans(): readonly string[] {
    return [...this.#last.keys()];
  }

  has(planUri: string): boolean {
    return this.#last.has(planUri);
  }

  add(planUri: string, computation: number): void {
    this.#last.set(planUri, Math.max(computation, this.#last.get(planUri) ?? 0));
  }

  /** A plan is not among them any more if it did not ask in this computation or later. */
  letGo(planUri: string, before: number): void {
    const last = this.#last.get(planUri);
    if (last !== undefined && last < before) this.#last.delete(planUri);
  }
}

/** Counts the computations of plans. */
export class Computations {
  readonly #counts = new Map<string, number>();

  /** The number of the computation that begins: the first is 1. */
  begin(planUri: string): number {
    const computation = (this.#counts.get(planUri) ?? 0) + 1;
    this.#counts.set(planUri, computation);
    return computation;
  }

  forget(planUri: string): void {
    this.#counts.delete(planUri);
  }
}
