import type { Ring } from '../plan/geometry/outline.js';
import type { Point } from '../plan/geometry/point.js';
import type { Box } from './scene.js';

/** Cells along the picture's long side. Names are placed to the nearest cell, which is finer than a letter. */
const CELLS = 144;

/** The picture cut into square cells. */
export interface CellGrid {
  readonly columns: number;
  readonly rows: number;
  /** Canvas units. */
  readonly cell: number;
}

/** The cells whose middle lies in a shape. */
export interface Region {
  readonly grid: CellGrid;
  /** Middle of its cells; it may lie outside of a bent shape. */
  readonly centre: Point;
  /** The cell deepest inside: where a leader points. */
  readonly heart: Point;
  /** Running sums of cells inside, with one more column and row than the grid. */
  readonly sums: Int32Array;
}

export function cellGrid(width: number, height: number): CellGrid {
  const cell = Math.max(width, height) / CELLS;
  return {
    cell,
    columns: Math.max(1, Math.round(width / cell)),
    rows: Math.max(1, Math.round(height / cell)),
  };
}

/** The cells of what is seen of a shape (rings that do not overlap); none when it is too small to hold any. */
export function regionOf(rings: readonly Ring[], grid: CellGrid): Region | undefined {
  const inside = fillCells(rings, grid);
  const { columns, rows, cell } = grid;
  const sums = new Int32Array((columns + 1) * (rows + 1));
  let count = 0;
  let sumX = 0;
  let sumY = 0;
  for (let row = 0; row < rows; row++) {
    let inRow = 0;
    for (let column = 0; column < columns; column++) {
      if (inside[row * columns + column] === 1) {
        inRow++;
        count++;
        sumX += column;
        sumY += row;
      }
      sums[(row + 1) * (columns + 1) + column + 1] = (sums[row * (columns + 1) + column + 1] ?? 0) + inRow;
    }
  }
  if (count === 0) return undefined;
  const centre = { x: (sumX / count + 0.5) * cell, y: (sumY / count + 0.5) * cell };
  return { grid, centre, heart: deepest(inside, grid, centre), sums };
}

/** Whether every cell that a box touches lies in the region. A box that reaches over the grid does not. */
export function holdsBox({ grid, sums }: Region, box: Box): boolean {
  const { cell, columns, rows } = grid;
  const left = Math.floor(box.x / cell);
  const top = Math.floor(box.y / cell);
  const right = Math.ceil((box.x + box.width) / cell);
  const bottom = Math.ceil((box.y + box.height) / cell);
  if (left < 0 || top < 0 || right > columns || bottom > rows) return false;
  const at = (column: number, row: number) => sums[row * (columns + 1) + column] ?? 0;
  const held = at(right, bottom) - at(left, bottom) - at(right, top) + at(left, top);
  return held === (right - left) * (bottom - top);
}

function fillCells(rings: readonly Ring[], { columns, rows, cell }: CellGrid): Uint8Array {
  const crossings: number[][] = Array.from({ length: rows }, () => []);
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const next = (i + 2) % ring.length;
      const [ax, ay, bx, by] = [ring[i], ring[i + 1], ring[next], ring[next + 1]].map(
        (value) => (value ?? 0) / cell,
      ) as [number, number, number, number];
      if (ay === by) continue;
      const first = Math.max(0, Math.ceil(Math.min(ay, by) - 0.5));
      const last = Math.min(rows, Math.ceil(Math.max(ay, by) - 0.5));
      for (let row = first; row < last; row++) {
        crossings[row]?.push(ax + ((row + 0.5 - ay) / (by - ay)) * (bx - ax));
      }
    }
  }
  const inside = new Uint8Array(columns * rows);
  crossings.forEach((across, row) => {
    across.sort((a, b) => a - b);
    for (let i = 0; i + 1 < across.length; i += 2) {
      const from = Math.max(0, Math.ceil((across[i] ?? 0) - 0.5));
      const to = Math.min(columns, Math.ceil((across[i + 1] ?? 0) - 0.5));
      if (to > from) inside.fill(1, row * columns + from, row * columns + to);
    }
  });
  return inside;
}

/** The cell with the most cells of the region round it in both directions; of equals, the nearest to the middle. */
function deepest(inside: Uint8Array, { columns, rows, cell }: CellGrid, centre: Point): Point {
  const depth = new Int16Array(columns * rows);
  const at = (column: number, row: number) =>
    column < 0 || row < 0 || column >= columns || row >= rows ? 0 : (depth[row * columns + column] ?? 0);
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (inside[row * columns + column] !== 1) continue;
      depth[row * columns + column] =
        1 + Math.min(at(column - 1, row), at(column, row - 1), at(column - 1, row - 1));
    }
  }
  let best = { depth: 0, distance: Infinity, x: centre.x, y: centre.y };
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = columns - 1; column >= 0; column--) {
      const own = at(column, row);
      if (own === 0) continue;
      const around = Math.min(
        own,
        1 + Math.min(at(column + 1, row), at(column, row + 1), at(column + 1, row + 1)),
      );
      depth[row * columns + column] = around;
      const x = (column + 0.5) * cell;
      const y = (row + 0.5) * cell;
      const distance = Math.hypot(x - centre.x, y - centre.y);
      if (around > best.depth || (around === best.depth && distance < best.distance)) {
        best = { depth: around, distance, x, y };
      }
    }
  }
  return { x: best.x, y: best.y };
}
