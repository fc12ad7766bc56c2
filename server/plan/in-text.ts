import type { Reason } from '../../grammar/index.js';

/** Where the things of a plan stand in its text, the files that it names, and what of it could not be resolved. */

/** A stretch of one line of the text, zero-based, columns in UTF-16 code units, end exclusive. */
export interface Location {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  /**
   * Path, relative to this plan, of the plan in whose text it stands: one that this builds on. Missing for this plan's
   * own text.
   */
  readonly file?: string;
}

/** A place in the plan's own text, where an editor can show and change something. */
export type OwnLocation = Location & { readonly file?: never };

export interface Stated<T> {
  readonly value: T;
  readonly location: Location;
}

export interface FileReference {
  /** As written, relative to the plan. */
  readonly path: string;
  readonly kind: 'drawing' | 'plan' | 'photograph' | 'sketch';
  readonly location: Location;
}

export interface PlanProblem {
  readonly code: PlanProblemCode;
  readonly severity: 'error' | 'warning' | 'hint';
  readonly message: string;
  readonly location: OwnLocation;
  /** Where it comes from, when that is in a plan that this one builds on. */
  readonly from?: Location;
  readonly related: readonly { readonly location: Location; readonly message: string }[];
  readonly fix?: { readonly title: string; readonly replacement: string };
}

export type PlanProblemCode =
  | 'unknown name'
  | 'repeated name'
  | 'repeated statement'
  | 'circular reference'
  | 'unreadable colour'
  | 'unreadable shape'
  | 'unreadable file'
  | 'number out of range'
  | 'no canvas'
  | 'no such crossing'
  | 'lead without length'
  | 'error in another plan'
  | 'left out with it';

/** What a file that the plan names holds, or why it can't be had. */
export type FileAnswer =
  | { readonly ok: true; readonly text: string }
  /** A sentence to the painter, or the makings of one. */
  | { readonly ok: false; readonly reason: string | Reason };

/** Reads a file by the path written in the plan; `undefined` while it is still being fetched. */
export type ReadFile = (path: string) => FileAnswer | undefined;
