import type { Ring } from '../../plan/geometry/outline.js';
import type { CanvasSize } from '../areas/areas.js';
import { ringPieces } from '../areas/ring-pieces.js';

/** What is closer than this part of the diagonal is the same line; the areas are cut within 1e-10 of it. */
export const SAME_PLACE = 1e-7;

/** The straight sides of the rings of an area that is seen, without those along the edges of the canvas. */
export interface Sides {
  /** Four numbers a side: x and y of where it begins, x and y of where it ends. */
  readonly ends: Float64Array;
  /** Two numbers for each cell of the sorting grid that a side passes: the cell, the side. */
  readonly cells: Int32Array;
  /** Length along the edges of the canvas: left, top, right, bottom. */
  readonly atEdge: readonly [number, number, number, number];
  /** Ring by ring, in the order of the sides; what one gives is the same as long as the ring. */
  readonly rings: readonly RingSides[];
  /** Of each side the place of its ring among these. */
  readonly ringOf: Int32Array;
  /** Of each ring the part of the area that it bounds, as `ringPieces` counts them. */
  readonly pieceOf: Int32Array;
}

/** The sides of one ring, told as those of an area are. */
export interface RingSides {
  readonly ends: Float64Array;
  readonly cells: Int32Array;
  /** For each side along an edge of the canvas which edge it is, and its length. */
  readonly along: readonly number[];
}

/** A grid that sides are sorted into, so that only those near each other are compared. */
export interface SortingGrid {
  readonly columns: number;
  readonly rows: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
}

const LONG_SIDE = 192;

export function sortingGrid({ width, height }: CanvasSize): SortingGrid {
  const long = Math.max(width, height);
  const columns = Math.max(1, Math.round((LONG_SIDE * width) / long));
  const rows = Math.max(1, Math.round((LONG_SIDE * height) / long));
  return { columns, rows, cellWidth: width / columns, cellHeight: height / rows };
}

/** The cell of a grid that holds a place, the nearest one for a place off the canvas. */
export function cellOf({ columns, rows, cellWidth, cellHeight }: SortingGrid, x: number, y: number): number {
  const column = Math.min(columns - 1, Math.max(0, Math.floor(x / cellWidth)));
  const row = Math.min(rows - 1, Math.max(0, Math.floor(y / cellHeight)));
  return row * columns + column;
}

const sides = new WeakMap<readonly Ring[], { readonly of: CanvasSize; readonly sides: Sides }>();

/**
 * The sides of what is seen of an area, or of what stays bare, kept as long as that; `worked` is told of each found
 * anew.
 */
export function keptSides(rings: readonly Ring[], { width, height }: CanvasSize, worked: () => void): Sides {
  const last = sides.get(rings);
  if (last?.of.width === width && last.of.height === height) return last.sides;
  const of = { width, height };
  const found = sidesOf(rings, of);
  worked();
  sides.set(rings, { of, sides: found });
  return found;
}

/**
 * The sides of visible rings. Points that only divide a straight side are passed over, so that the sides do not
 * depend on how the areas were cut; so are slivers that are no more than a line.
 */
function sidesOf(rings: readonly Ring[], canvas: CanvasSize): Sides {
  const all: RingSides[] = [];
  const pieces: number[] = [];
  ringPieces(rings).forEach((piece, index) => {
    for (const ring of piece.rings) {
      all.push(keptRing(ring, canvas));
      pieces.push(index);
    }
  });
  const pieceOf = Int32Array.from(pieces);
  const atEdge: [number, number, number, number] = [0, 0, 0, 0];
  for (const { along } of all) {
    for (let i = 0; i < along.length; i += 2) atEdge[along[i] as 0 | 1 | 2 | 3] += along[i + 1] as number;
  }
  const ringOf = new Int32Array(all.reduce((sum, { ends }) => sum + ends.length / 4, 0));
  let side = 0;
  all.forEach(({ ends }, ring) => {
    const end = side + ends.length / 4;
    ringOf.fill(ring, side, end);
    side = end;
  });
  const [only] = all;
  const { ends, cells } = only && all.length === 1 ? only : together(all, side);
  return { ends, cells, atEdge, rings: all, ringOf, pieceOf };
}

function together(all: readonly RingSides[], count: number): Pick<Sides, 'ends' | 'cells'> {
  const ends = new Float64Array(4 * count);
  const cells = new Int32Array(all.reduce((sum, ring) => sum + ring.cells.length, 0));
  let [first, at] = [0, 0];
  for (const ring of all) {
    ends.set(ring.ends, 4 * first);
    for (let i = 0; i < ring.cells.length; i += 2) {
      cells[at++] = ring.cells[i] as number;
      cells[at++] = (ring.cells[i + 1] as number) + first;
    }
    first += ring.ends.length / 4;
  }
  return { ends, cells };
}

const kept = new WeakMap<Ring, { readonly of: CanvasSize; readonly sides: RingSides }>();

function keptRing(ring: Ring, canvas: CanvasSize): RingSides {
  const known = kept.get(ring);
  if (known?.of.width === canvas.width && known.of.height === canvas.height) return known.sides;
  const sides = sidesOfRing(ring, canvas);
  kept.set(ring, { of: { width: canvas.width, height: canvas.height }, sides });
  return sides;
}

function sidesOfRing(ring: Ring, canvas: CanvasSize): RingSides {
  const same = SAME_PLACE * Math.hypot(canvas.width, canvas.height);
  const corners = cornersOf(ring, same);
  if (isSliver(corners, same)) return NO_SIDES;
  const grid = sortingGrid(canvas);
  const ends: number[] = [];
  const cells: number[] = [];
  const along: number[] = [];
  for (let i = 0; i < corners.length; i += 2) {
    const next = (i + 2) % corners.length;
    const ax = corners[i] as number;
    const ay = corners[i + 1] as number;
    const bx = corners[next] as number;
    const by = corners[next + 1] as number;
    const edge = edgeOf(ax, ay, bx, by, canvas, same);
    if (edge !== undefined) {
      along.push(edge, Math.hypot(bx - ax, by - ay));
      continue;
    }
    sort(cells, ends.length / 4, grid, ax, ay, bx, by, same);
    ends.push(ax, ay, bx, by);
  }
  return { ends: Float64Array.from(ends), cells: Int32Array.from(cells), along };
}

const NO_SIDES: RingSides = { ends: new Float64Array(0), cells: new Int32Array(0), along: [] };

/** Marks each cell that a side passes. */
export function markCells({ cells }: Pick<Sides, 'cells'>, marked: Uint8Array): void {
  for (let i = 0; i < cells.length; i += 2) marked[cells[i] as number] = 1;
}

/** Whether a ring holds no more than a line: rounding has left it. */
export function isLine(ring: Ring, canvas: CanvasSize): boolean {
  return keptRing(ring, canvas) === NO_SIDES;
}

/** The ring without points that coincide with the one before or lie on the line between their neighbours. */
function cornersOf(ring: Ring, same: number): readonly number[] {
  // Far below `same`, so that a curve keeps all its points.
  const near = same / 100;
  const kept: number[] = [];
  const between = (i: number, j: number, x: number, y: number): boolean => {
    const ux = x - (kept[i] as number);
    const uy = y - (kept[i + 1] as number);
    const length = Math.hypot(ux, uy);
    const off = ux * ((kept[j + 1] as number) - (kept[i + 1] as number));
    return Math.abs(off - uy * ((kept[j] as number) - (kept[i] as number))) <= near * length;
  };
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const x = ring[i] as number;
    const y = ring[i + 1] as number;
    const last = kept.length - 2;
    if (last >= 0 && Math.hypot(x - (kept[last] as number), y - (kept[last + 1] as number)) <= near) continue;
    if (last >= 2 && between(last - 2, last, x, y)) kept.length = last;
    kept.push(x, y);
  }
  return withoutSeam(kept, between, near);
}

/** The first and last corner looked at as the others were. */
function withoutSeam(
  kept: number[],
  between: (i: number, j: number, x: number, y: number) => boolean,
  near: number,
): readonly number[] {
  const last = () => kept.length - 2;
  const closes = (i: number) =>
    Math.hypot((kept[i] as number) - (kept[0] as number), (kept[i + 1] as number) - (kept[1] as number));
  while (kept.length > 4 && closes(last()) <= near) kept.length -= 2;
  while (kept.length > 6 && between(last() - 2, last(), kept[0] as number, kept[1] as number)) {
    kept.length -= 2;
  }
  while (kept.length > 6 && between(last(), 0, kept[2] as number, kept[3] as number)) kept.splice(0, 2);
  return kept;
}

function isSliver(corners: readonly number[], same: number): boolean {
  let area = 0;
  let around = 0;
  for (let i = 0; i < corners.length; i += 2) {
    const next = (i + 2) % corners.length;
    const dx = (corners[next] as number) - (corners[i] as number);
    const dy = (corners[next + 1] as number) - (corners[i + 1] as number);
    // From the first corner, so that little is lost to rounding.
    const x = (corners[i] as number) - (corners[0] as number);
    const y = (corners[i + 1] as number) - (corners[1] as number);
    area += (x * dy - y * dx) / 2;
    around += Math.hypot(dx, dy);
  }
  return Math.abs(area) <= (same * around) / 2;
}

/** The edge of the canvas that a side runs along: 0 left, 1 top, 2 right, 3 bottom. */
function edgeOf(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  { width, height }: CanvasSize,
  same: number,
): 0 | 1 | 2 | 3 | undefined {
  if (Math.abs(ax) <= same && Math.abs(bx) <= same) return 0;
  if (Math.abs(ay) <= same && Math.abs(by) <= same) return 1;
  if (Math.abs(ax - width) <= same && Math.abs(bx - width) <= same) return 2;
  if (Math.abs(ay - height) <= same && Math.abs(by - height) <= same) return 3;
  return undefined;
}

/** Notes the side in every cell that it passes or all but touches. */
function sort(
  cells: number[],
  side: number,
  grid: SortingGrid,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  same: number,
): void {
  const { columns, rows, cellWidth, cellHeight } = grid;
  const pad = 4 * same;
  const top = Math.min(ay, by) - pad;
  const bottom = Math.max(ay, by) + pad;
  const lastRow = Math.min(rows - 1, Math.floor(bottom / cellHeight));
  for (let row = Math.max(0, Math.floor(top / cellHeight)); row <= lastRow; row++) {
    let left = Math.min(ax, bx);
    let right = Math.max(ax, bx);
    if (Math.abs(by - ay) > pad) {
      const slope = (bx - ax) / (by - ay);
      const one = ax + (row * cellHeight - pad - ay) * slope;
      const other = ax + ((row + 1) * cellHeight + pad - ay) * slope;
      left = Math.max(left, Math.min(one, other));
      right = Math.min(right, Math.max(one, other));
    }
    const lastColumn = Math.min(columns - 1, Math.floor((right + pad) / cellWidth));
    for (let column = Math.max(0, Math.floor((left - pad) / cellWidth)); column <= lastColumn; column++) {
      cells.push(row * columns + column, side);
    }
  }
}
