import { areSameThings as sameInputs } from '../plan/same-data.js';

/** Whether nothing that a result depends on has changed. */
export { sameInputs };

interface Kept {
  readonly inputs: readonly unknown[];
  readonly result: unknown;
}

/** By what kind of work it is, and which piece of it. */
type BySubject = Map<string, Map<string, Kept>>;

/**
 * Keeps what was worked out about a document from one version to the next, by what it depends on, so that an edit
 * works out only what changed. One memory serves one document: two plans would push out each other's results.
 */
export class Memory {
  #current: BySubject = new Map();
  #earlier: BySubject = new Map();
  #version: unknown;
  readonly #worked = new Map<string, number>();

  /**
   * Starts measuring a version: what the version before did not ask for is dropped.
   *
   * @param version what all is worked out from; of the one before nothing is dropped while it is that
   */
  turnOver(version?: object): void {
    if (version !== undefined && version === this.#version) return;
    this.#version = version;
    this.#earlier = this.#current;
    this.#current = new Map();
  }

  /** A memory that starts with what this one keeps, for a version that is only tried: this one stays as it is. */
  aside(): Memory {
    const other = new Memory();
    for (const [subject, kept] of this.#current) other.#current.set(subject, new Map(kept));
    return other;
  }

  /**
   * The result of `work`, done only when an input is another than when this was last asked for. Inputs are compared
   * one by one as `Object.is` does, so an array or object counts as the same only when it is the very same one;
   * `work` may depend on nothing else. `subject` says what kind of work it is and is what is counted, `key` which
   * piece of it (the name of an object, say); together they are unique within one measuring.
   *
   * @param work is given the last result, of which it may take over what would come out the same
   */
  recall<Result>(
    subject: string,
    key: string,
    inputs: readonly unknown[],
    work: (last: Result | undefined) => Result,
  ): Result {
    let current = this.#current.get(subject);
    if (!current) {
      current = new Map();
      this.#current.set(subject, current);
    }
    const known = current.get(key);
    const kept = known ?? this.#earlier.get(subject)?.get(key);
    if (kept && sameInputs(kept.inputs, inputs)) {
      if (!known) current.set(key, kept);
      return kept.result as Result;
    }
    const result = work(kept?.result as Result | undefined);
    this.count(subject);
    current.set(key, { inputs, result });
    return result;
  }

  /**
   * All results of this kind stay for the next version as if each had been asked for, unless one was already: what
   * they went into is the same.
   */
  keep(subject: string): void {
    const earlier = this.#earlier.get(subject);
    if (earlier && !this.#current.has(subject)) this.#current.set(subject, new Map(earlier));
  }

  /** How many results are kept, those of the version before among them. */
  get kept(): number {
    let count = 0;
    for (const subject of new Set([...this.#current.keys(), ...this.#earlier.keys()])) {
      const keys = [this.#current, this.#earlier].flatMap((of) => [...(of.get(subject)?.keys() ?? [])]);
      count += new Set(keys).size;
    }
    return count;
  }

  /** Counts one more piece of a kind of work, of one that is kept by other means than here too. */
  count(subject: string): void {
    this.#worked.set(subject, (this.#worked.get(subject) ?? 0) + 1);
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
