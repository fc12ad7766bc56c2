import type { BuiltOutline } from './build-outline.js';

/**
 * Keeps outlines by what they are built from, so that an edit rebuilds only the shapes it touches and an untouched
 * outline stays the same object. What one whole resolution did not ask for is dropped at the next.
 */
export class OutlineCache {
  #current = new Map<string, BuiltOutline>();
  #earlier = new Map<string, BuiltOutline>();
  /** How many outlines have been built so far. */
  built = 0;

  /** Starts a resolution: only what the one before used is kept. */
  turnOver(): void {
    this.#earlier = this.#current;
    this.#current = new Map();
  }

  /** A cache that starts with what this one keeps, for a resolution that is only tried: this one stays as it is. */
  aside(): OutlineCache {
    const other = new OutlineCache();
    other.#current = new Map(this.#current);
    return other;
  }

  /** How many outlines are kept, those of the resolution before among them. */
  get kept(): number {
    return new Set([...this.#current.keys(), ...this.#earlier.keys()]).size;
  }

  get(key: string, build: () => BuiltOutline): BuiltOutline {
    const kept = this.#current.get(key) ?? this.#earlier.get(key);
    const outline = kept ?? build();
    if (!kept) this.built++;
    this.#current.set(key, outline);
    return outline;
  }
}
