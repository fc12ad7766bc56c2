import type { CanvasSides } from './division.js';
import type { Point } from './geometry/point.js';

/** So that a point on a middle line is told as such in spite of rounding; part of the side. */
const ON_MIDDLE = 1e-9;

/** Where on the canvas a point lies: `upper left`, `middle right`, `lower centre`, `centre`. */
export function quadrantName({ x, y }: Point, { width, height }: CanvasSides): string {
  const row = Math.abs(y - height / 2) < height * ON_MIDDLE ? 'middle' : y < height / 2 ? 'upper' : 'lower';
  const column = Math.abs(x - width / 2) < width * ON_MIDDLE ? 'centre' : x < width / 2 ? 'left' : 'right';
  return crossingName(row, column) ?? 'centre';
}

/** The name of the crossing of a named row and a named column; nothing when either has no name. */
export function crossingName(row: string | undefined, column: string | undefined): string | undefined {
  if (row === undefined || column === undefined) return undefined;
  return row === 'middle' && column === 'centre' ? 'centre' : `${row} ${column}`;
}
