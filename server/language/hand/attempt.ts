import type { FixEdit } from '../../findings/finding.js';
import type { TextChange } from '../../findings/text-changes.js';

/** What a change by hand comes to in the text, before it is tried. */
export type Attempt =
  | { readonly kind: 'edits'; readonly edits: readonly FixEdit[] }
  /** Something new: its lines, and where in them the name stands that may be typed over. */
  | { readonly kind: 'new'; readonly change: TextChange; readonly name: NameInText }
  | Refusal;

/** A sentence to the painter. */
export interface Refusal {
  readonly kind: 'refused';
  readonly why: string;
}

/** Counted in the text of the change: the line of it, and the column in that line. */
export interface NameInText {
  readonly line: number;
  readonly start: number;
  readonly end: number;
}

export function edits(all: readonly FixEdit[]): Attempt {
  return { kind: 'edits', edits: all };
}

export function refusal(why: string): Refusal {
  return { kind: 'refused', why };
}
