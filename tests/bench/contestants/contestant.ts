/** Something that reads documents of its own kind. */
export interface Contestant {
  readonly name: string;
  /** What it does with a document, in a few words. */
  readonly does: string;
  /** A document of exactly so many lines; each seed gives another. */
  readonly document: (lines: number, seed: number) => string;
  /** @returns how many problems it found */
  readonly read: (text: string) => number | Promise<number>;
}
