import type { Location } from '../plan/plan.js';

/** Nine places: no figure that is measured loses anything, and sums still come to one within 1e-6. */
export function round(value: number): number {
  return Number(value.toFixed(9)) + 0;
}

/** A place on the canvas for a document. */
export function pointOf({ x, y }: { readonly x: number; readonly y: number }) {
  return { x: round(x), y: round(y) };
}

/** A place in the text for a document: lines and columns are counted from 1, and the column after its end is told. */
export function placeOf({ line, start, end, file }: Location) {
  return { line: line + 1, column: start + 1, endColumn: end + 1, ...(file === undefined ? {} : { file }) };
}
