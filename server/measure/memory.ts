interface Kept {
  readonly inputs: readonly unknown[];
  readonly result: unknown;
}

/**
 * Keeps what was worked out about a document from one version to the next, by what it depends on, so that an edit
 * works out only what changed. One memory serves one document: two plans would push out each other's results.
 */
export class Memory {
  #current = new Map<string, Kept>();
  #earlier = new Map<string, Kept>();
  readonly #worked = new Map<string, number>();

  /** Starts measuring another version: what the version before did not ask for is dropped. */
  turnOver(): void {
    this.#earlier = this.#current;
    this.#current = new Map();
  }

  /** A memory that starts with what this one keeps, for a version that is only tried: this one stays as it is. */
  aside(): Memory {
    const other = new Memory();
    other.#current = new Map(this.#current);
    return other;
  }

  /**
   * The result of `work`, done only when an input is another than when this was last asked for. Inputs are compared
   * one by one as `Object.is` does, so an array or object counts as the same only when it is the very same one;
   * `work` may depend on nothing else. `subject` says what kind of work it is and is what is counted, `key` which
   * piece of it (the name of an object, say); together they are unique within one measuring.
   */
  recall<Result>(subject: string, key: string, inputs: readonly unknown[], work: () => Result): Result {
    const name = `${subject}\n${key}`;
    const kept = this.#current.get(name) ?? this.#earlier.get(name);
    if (kept && sameInputs(kept.inputs, inputs)) {
      this.#current.set(name, kept);
      return kept.result as Result;
    }
    const result = work();
    this.#worked.set(subject, (this.#worked.get(subject) ?? 0) + 1);
    this.#current.set(name, { inputs, result });
    return result;
  }

  /** How many results are kept, those of the version before among them. */
  get kept(): number {
    return new Set([...this.#current.keys(), ...this.#earlier.keys()]).size;
  }

  /** How often work of this kind has been done so far. */
  worked(subject: string): number {
    return this.#worked.get(subject) ?? 0;
  }
}

/** Works out when it is first asked for, and once. */
export function once<Result>(work: () => Result): () => Result {
  let known: { readonly value: Result } | undefined;
  return () => (known ??= { value: work() }).value;
}

/** Whether nothing that a result depends on has changed: the same inputs one by one, as `Object.is` compares. */
export function sameInputs(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((input, index) => Object.is(input, other[index]));
}
