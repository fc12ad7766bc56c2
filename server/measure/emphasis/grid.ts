import type { Point } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';

/** Part of the diagonal within which borders are gathered round a place. */
export const REACH = 0.08;
/**
 * Part of the diagonal over which a stretch passes from counting to not counting, half of it on either side of the
 * reach: as long as a stretch, so that what is gathered changes smoothly from place to place.
 */
export const PASSAGE = 0.005;
const LONG_SIDE = 96;

/** A grid of equal cells over the canvas. */
export interface FieldGrid {
  readonly columns: number;
  readonly rows: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
}

/** 96 cells on the long side, square as nearly as whole numbers allow. */
export function fieldGrid({ width, height }: Pick<Canvas, 'width' | 'height'>): FieldGrid {
  const long = Math.max(width, height);
  const columns = Math.max(1, Math.round((LONG_SIDE * width) / long));
  const rows = Math.max(1, Math.round((LONG_SIDE * height) / long));
  return { columns, rows, cellWidth: width / columns, cellHeight: height / rows };
}

export function isSameGrid(one: FieldGrid, other: FieldGrid): boolean {
  return (
    one.columns === other.columns &&
    one.rows === other.rows &&
    one.cellWidth === other.cellWidth &&
    one.cellHeight === other.cellHeight
  );
}

/** The middle of a cell, canvas units. */
export function middleOf({ columns, cellWidth, cellHeight }: FieldGrid, cell: number): Point {
  const column = cell % columns;
  return { x: (column + 0.5) * cellWidth, y: ((cell - column) / columns + 0.5) * cellHeight };
}

/** How much of a stretch counts at a distance from its middle, 0 to 1; all lengths in the same unit. */
export function counted(distance: number, diagonal: number): number {
  return Math.min(1, Math.max(0, 0.5 + (REACH * diagonal - distance) / (PASSAGE * diagonal)));
}
