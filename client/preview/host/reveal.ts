import type { Location } from '../../../server/plan/plan.js';

/** What must be known of a document to decide whether a place in a drawing is still a place in it. */
export interface DocumentShape {
  readonly version: number;
  readonly lineCount: number;
  /** In UTF-16 code units, without the line's end. */
  readonly lineLength: (line: number) => number;
}

/** A document of the editor, as it is now. */
export function shapeOf(document: {
  readonly version: number;
  readonly lineCount: number;
  lineAt(line: number): { readonly text: string };
}): DocumentShape {
  return {
    version: document.version,
    lineCount: document.lineCount,
    lineLength: (line) => document.lineAt(line).text.length,
  };
}

export type PlaceCheck = 'here' | 'stale' | 'outside';

/**
 * Whether words that a drawing of `version` points at can be selected in the document as it is now: `stale` when
 * the document has another version, `outside` when it has no such place.
 */
export function checkPlace(document: DocumentShape, version: number, location: Location): PlaceCheck {
  if (version !== document.version) return 'stale';
  if (location.line >= document.lineCount) return 'outside';
  return location.start <= location.end && location.end <= document.lineLength(location.line)
    ? 'here'
    : 'outside';
}
