import type { Ring } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Box } from '../scene.js';

/** Cells along the picture's long side. Names are placed to the nearest cell, which is finer than a letter. */
const CELLS = 144;

const NOBODY = -1;

/** The picture cut into square cells, and which of several shapes is seen in each. */
export interface CellMap {
  readonly columns: number;
  readonly rows: number;
  /** Side of a cell, canvas units. */
  readonly cell: number;
  /** By cell, row after row: the index of the shape seen at its middle, -1 for none. */
  readonly owner: Int32Array;
  /** By shape: the cells it is seen in; undefined when it is too small to hold the middle of any. */
  readonly extents: readonly (Extent | undefined)[];
}

/** Columns and rows, both ends included, and the middle of all cells in canvas units. */
interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly centre: Point;
}

/** The cells of one shape. */
export interface Region {
  readonly map: CellMap;
  readonly extent: Extent;
  /** The middle of the cell deepest inside: where a leader points. */
  readonly heart: Point;
  /** Running sums of its cells within the extent, with one more column and row. */
  readonly sums: Int32Array;
}

/** Maps what is seen of shapes; `shapes[i]` are rings that overlap neither each other nor other shapes. */
export function mapCells(width: number, height: number, shapes: readonly (readonly Ring[])[]): CellMap {
  const cell = Math.max(width, height) / CELLS;
  const columns = Math.max(1, Math.round(width / cell));
  const rows = Math.max(1, Math.round(height / cell));
  const owner = new Int32Array(columns * rows).fill(NOBODY);
  const extents = shapes.map((rings, index) => {
    const { runs, extent } = cellsOf(rings, { columns, rows, cell });
    for (let run = 0; run + 1 < runs.length; run += 2) owner.fill(index, runs[run], runs[run + 1]);
    return extent;
  });
  return { columns, rows, cell, owner, extents };
}

const regions = new WeakMap<CellMap, Map<number, Region | undefined>>();

/** The cells of a shape, none when it holds the middle of none; kept as long as the map. */
export function regionOf(map: CellMap, index: number): Region | undefined {
  let ofMap = regions.get(map);
  if (!ofMap) {
    ofMap = new Map();
    regions.set(map, ofMap);
  }
  if (!ofMap.has(index)) ofMap.set(index, findRegion(map, index));
  return ofMap.get(index);
}

function findRegion(map: CellMap, index: number): Region | undefined {
  const extent = map.extents[index];
  if (extent === undefined) return undefined;
  const { left, top, right, bottom } = extent;
  const wide = right - left + 2;
  const sums = new Int32Array(wide * (bottom - top + 2));
  for (let row = top; row <= bottom; row++) {
    let inRow = 0;
    for (let column = left; column <= right; column++) {
      if (map.owner[row * map.columns + column] === index) inRow++;
      const at = (row - top + 1) * wide + column - left + 1;
      sums[at] = (sums[at - wide] ?? 0) + inRow;
    }
  }
  return { map, extent, heart: deepest(map, index, extent), sums };
}

/** Whether every cell that a box touches lies in the region. */
export function holdsBox({ map, extent, sums }: Region, box: Box): boolean {
  const left = Math.floor(box.x / map.cell) - extent.left;
  const top = Math.floor(box.y / map.cell) - extent.top;
  const right = Math.ceil((box.x + box.width) / map.cell) - extent.left;
  const bottom = Math.ceil((box.y + box.height) / map.cell) - extent.top;
  const wide = extent.right - extent.left + 2;
  if (left < 0 || top < 0 || right >= wide || bottom > extent.bottom - extent.top + 1) return false;
  const at = (column: number, row: number) => sums[row * wide + column] ?? 0;
  const held = at(right, bottom) - at(left, bottom) - at(right, top) + at(left, top);
  return held === (right - left) * (bottom - top);
}

/** The shape seen at a place; undefined for none and off the picture. */
export function ownerAt({ columns, rows, cell, owner }: CellMap, { x, y }: Point): number | undefined {
  const column = Math.floor(x / cell);
  const row = Math.floor(y / cell);
  if (column < 0 || row < 0 || column >= columns || row >= rows) return undefined;
  const index = owner[row * columns + column] ?? NOBODY;
  return index === NOBODY ? undefined : index;
}

type Grid = Pick<CellMap, 'columns' | 'rows' | 'cell'>;

/** The cells of a shape, whatever lies over it. */
interface Cells {
  /** From the first of each run of cells to the one after its last, row after row of the whole map. */
  readonly runs: readonly number[];
  readonly extent: Extent | undefined;
}

const kept = new WeakMap<readonly Ring[], { readonly grid: Grid; readonly cells: Cells }>();

/** Found once for each shape: one that an edit leaves alone stays the same object. */
function cellsOf(rings: readonly Ring[], grid: Grid): Cells {
  const known = kept.get(rings);
  if (known && isSameGrid(known.grid, grid)) return known.cells;
  const cells = findCells(rings, grid);
  kept.set(rings, { grid, cells });
  return cells;
}

function isSameGrid(one: Grid, other: Grid): boolean {
  return one.columns === other.columns && one.rows === other.rows && one.cell === other.cell;
}

function findCells(rings: readonly Ring[], { columns, rows, cell }: Grid): Cells {
  const crossings = new Map<number, number[]>();
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const next = (i + 2) % ring.length;
      const ax = (ring[i] ?? 0) / cell;
      const ay = (ring[i + 1] ?? 0) / cell;
      const bx = (ring[next] ?? 0) / cell;
      const by = (ring[next + 1] ?? 0) / cell;
      if (ay === by) continue;
      const first = Math.max(0, Math.ceil(Math.min(ay, by) - 0.5));
      const last = Math.min(rows, Math.ceil(Math.max(ay, by) - 0.5));
      for (let row = first; row < last; row++) {
        const x = ax + ((row + 0.5 - ay) / (by - ay)) * (bx - ax);
        const across = crossings.get(row);
        if (across === undefined) crossings.set(row, [x]);
        else across.push(x);
      }
    }
  }
  const runs: number[] = [];
  let count = 0;
  let sumX = 0;
  let sumY = 0;
  let [left, top, right, bottom] = [columns, rows, -1, -1];
  for (const [row, across] of crossings) {
    across.sort((a, b) => a - b);
    for (let i = 0; i + 1 < across.length; i += 2) {
      const from = Math.max(0, Math.ceil((across[i] ?? 0) - 0.5));
      const to = Math.min(columns, Math.ceil((across[i + 1] ?? 0) - 0.5));
      if (to <= from) continue;
      runs.push(row * columns + from, row * columns + to);
      count += to - from;
      sumX += ((to - from) * (from + to)) / 2;
      sumY += (to - from) * (row + 0.5);
      left = Math.min(left, from);
      right = Math.max(right, to - 1);
      top = Math.min(top, row);
      bottom = Math.max(bottom, row);
    }
  }
  if (count === 0) return { runs, extent: undefined };
  const centre = { x: (sumX / count) * cell, y: (sumY / count) * cell };
  return { runs, extent: { left, top, right, bottom, centre } };
}

/**
 * Whether a shape has cells within the same columns and rows and about the same middle as another, or both have none.
 */
export function sameExtent(one: Extent | undefined, other: Extent | undefined): boolean {
  if (one === other) return true;
  return (
    one !== undefined &&
    other !== undefined &&
    one.left === other.left &&
    one.top === other.top &&
    one.right === other.right &&
    one.bottom === other.bottom &&
    one.centre.x === other.centre.x &&
    one.centre.y === other.centre.y
  );
}

/**
 * A box round all cells in which another shape is seen than before, none where none is; undefined for maps of other
 * cells.
 */
export function changedCells(before: CellMap, after: CellMap): readonly Box[] | undefined {
  if (!isSameGrid(before, after)) return undefined;
  if (before === after) return [];
  const { columns, rows, cell } = after;
  let [left, top, right, bottom] = [columns, rows, -1, -1];
  for (let row = 0, at = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++, at++) {
      if (before.owner[at] === after.owner[at]) continue;
      left = Math.min(left, column);
      right = Math.max(right, column);
      top = Math.min(top, row);
      bottom = row;
    }
  }
  if (right < 0) return [];
  return [
    { x: left * cell, y: top * cell, width: (right - left + 1) * cell, height: (bottom - top + 1) * cell },
  ];
}

/** The cell with the most cells of its shape round it; of equals, the one nearest to the middle. */
function deepest({ owner, columns, cell }: CellMap, index: number, extent: Extent): Point {
  const { left, top, right, bottom, centre } = extent;
  // A border of noughts all round saves asking where the extent ends.
  const wide = right - left + 3;
  const depth = new Int16Array(wide * (bottom - top + 3));
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      if (owner[row * columns + column] !== index) continue;
      const at = (row - top + 1) * wide + column - left + 1;
      depth[at] = 1 + Math.min(depth[at - 1] ?? 0, depth[at - wide] ?? 0, depth[at - wide - 1] ?? 0);
    }
  }
  let best = { depth: 0, distance: Infinity, x: centre.x, y: centre.y };
  for (let row = bottom; row >= top; row--) {
    for (let column = right; column >= left; column--) {
      const at = (row - top + 1) * wide + column - left + 1;
      const own = depth[at] ?? 0;
      if (own === 0) continue;
      const around = Math.min(
        own,
        1 + Math.min(depth[at + 1] ?? 0, depth[at + wide] ?? 0, depth[at + wide + 1] ?? 0),
      );
      depth[at] = around;
      if (around < best.depth) continue;
      const x = (column + 0.5) * cell;
      const y = (row + 0.5) * cell;
      const distance = Math.hypot(x - centre.x, y - centre.y);
      if (around > best.depth || distance < best.distance) best = { depth: around, distance, x, y };
    }
  }
  return { x: best.x, y: best.y };
}
