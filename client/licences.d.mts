/** A library that is bundled: its folder from the top of the repository, and what its manifest says. */
export interface Library {
  readonly folder: string;
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}

/** The libraries that bundled files belong to, in the order of their names; throws for one that names no licence. */
export function librariesOf(root: string, inputs: readonly string[]): readonly Library[];

/** Their licences in full, as one text. */
export function licenceTexts(root: string, inputs: readonly string[]): string;
