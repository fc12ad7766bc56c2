import { distance, type Point } from '../../plan/geometry/point.js';
import type { CanvasSize } from '../areas/areas.js';
import { sameInputs } from '../memory.js';
import type { Extent, FieldCells } from './cells.js';

/** Distances in thirds of a block, to neighbours beside and across a corner: Borgefors 1986. */
const BESIDE = 3;
const ACROSS = 4;

/** Cells on a side of a block: a place in the middle of a region need not be found to the cell. */
const BLOCK = 4;

interface KeptPlace {
  readonly own: readonly number[];
  readonly extent: Extent | undefined;
  readonly at: Point | undefined;
}

/** Places inside regions of one picture, each looked for once. */
export class Places {
  /** By the first field of the region. */
  readonly #kept = new Map<number, KeptPlace>();

  /** @param last those of an earlier picture, which are taken over where nothing has changed round them */
  constructor(
    private readonly cells: FieldCells,
    private readonly canvas: CanvasSize,
    last?: Places,
  ) {
    if (!last || last.#kept.size === 0) return;
    const changes = cells.changesSince(last.cells);
    if (!changes) return;
    for (const { own, extent, at } of last.#kept.values()) {
      const now = own.flatMap((field) => changes.fieldNow(field) ?? []).sort((a, b) => a - b);
      const [first] = now;
      if (first === undefined || !extent || now.length < own.length) continue;
      const extentNow = extentOfBlocks(cells, now);
      if (extentNow && isSameExtent(extentNow, extent) && !overlap(extent, changes.within))
        this.#kept.set(first, { own: now, extent, at });
    }
  }

  /**
   * A place inside a region that is about as far from its border and from the edge of the canvas as any, in canvas
   * units.
   *
   * @param own the fields that the region is made of, in ascending order
   * @returns nothing for a region that has no cell
   */
  inside(own: readonly number[]): Point | undefined {
    const first = own[0] ?? 0;
    const known = this.#kept.get(first);
    if (known && sameInputs(known.own, own)) return known.at;
    const extent = extentOfBlocks(this.cells, own);
    const at = extent && placeInside(regionOf(this.cells, own, extent), this.cells, this.canvas);
    this.#kept.set(first, { own, extent, at });
    return at;
  }
}

function isSameExtent(one: Extent, other: Extent): boolean {
  const { left, top, right, bottom } = other;
  return one.left === left && one.top === top && one.right === right && one.bottom === bottom;
}

function overlap(one: Extent, other: Extent): boolean {
  return (
    one.left <= other.right && other.left <= one.right && one.top <= other.bottom && other.top <= one.bottom
  );
}

function placeInside(region: Region, cells: Raster, canvas: CanvasSize): Point | undefined {
  const block = deepestBlock(region, cells);
  const at = block ?? middleCell(region, cells);
  if (!at) return undefined;
  const { columns, rows } = block ? inBlocks(cells) : cells;
  return { x: ((at.x + 0.5) / columns) * canvas.width, y: ((at.y + 0.5) / rows) * canvas.height };
}

/** The cells round a region, whole blocks of them as far as the canvas has such. */
interface Region {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  /** Row by row. */
  readonly fields: Int32Array;
  readonly own: ReadonlySet<number>;
}

function regionOf(cells: FieldCells, own: readonly number[], extent: Extent): Region {
  const { left, top, right, bottom } = extent;
  return {
    left,
    top,
    columns: right - left + 1,
    rows: bottom - top + 1,
    fields: cells.fieldsIn(extent),
    own: new Set(own),
  };
}

/** The whole blocks in which all cells of so many fields lie; nothing for fields that have none. */
function extentOfBlocks(cells: FieldCells, own: readonly number[]): Extent | undefined {
  const { left, top, right, bottom } = cells.extentOf(own);
  if (left > right || top > bottom) return undefined;
  return {
    left: BLOCK * Math.floor(left / BLOCK),
    top: BLOCK * Math.floor(top / BLOCK),
    right: Math.min(cells.columns, BLOCK * (Math.floor(right / BLOCK) + 1)) - 1,
    bottom: Math.min(cells.rows, BLOCK * (Math.floor(bottom / BLOCK) + 1)) - 1,
  };
}

interface Raster {
  readonly columns: number;
  readonly rows: number;
}

/** What is left over on the right and below belongs to no block. */
function inBlocks({ columns, rows }: Raster): Raster {
  return { columns: Math.floor(columns / BLOCK), rows: Math.floor(rows / BLOCK) };
}

/** The block farthest from the border of the region; of several that are as far, the one nearest to their middle. */
function deepestBlock(region: Region, canvas: Raster): Point | undefined {
  const depths = depthsOf(region, canvas);
  const wide = inBlocks(region).columns + 2;
  let deepest = 0;
  for (const depth of depths) if (depth > deepest) deepest = depth;
  if (deepest === 0) return undefined;
  const candidates: Stretch[] = [];
  depths.forEach((depth, at) => {
    if (depth !== deepest) return;
    const x = region.left / BLOCK + (at % wide) - 1;
    candidates.push({ left: x, right: x, y: region.top / BLOCK + Math.floor(at / wide) - 1 });
  });
  return nearestToMean(candidates, inBlocks(canvas).columns);
}

/** The cell nearest to the mean of the region's cells. */
function middleCell({ left, top, columns, rows, fields, own }: Region, canvas: Raster): Point | undefined {
  const stretches: Stretch[] = [];
  for (let row = 0; row < rows; row++) {
    const end = (row + 1) * columns;
    for (let from = row * columns; from < end;) {
      const field = fields[from] as number;
      let to = from + 1;
      while (to < end && fields[to] === field) to++;
      if (own.has(field)) {
        const first = left + from - row * columns;
        stretches.push({ left: first, right: first + to - from - 1, y: top + row });
      }
      from = to;
    }
  }
  return nearestToMean(stretches, canvas.columns);
}

/** Cells or blocks beside each other in one row, both ends included. */
interface Stretch {
  readonly left: number;
  readonly right: number;
  readonly y: number;
}

/** Distances in blocks or cells that differ by less are one. */
const ALIKE = 1e-6;

/**
 * Of the places nearest to the mean of all in each stretch, the nearest; of those as near the one that comes before.
 */
function nearestToMean(stretches: readonly Stretch[], columns: number): Point | undefined {
  let [sumX, sumY, count] = [0, 0, 0];
  for (const { left, right, y } of stretches) {
    const weight = right - left + 1;
    sumX += weight * (left + (weight - 1) / 2);
    sumY += weight * y;
    count += weight;
  }
  const mean = { x: sumX / count, y: sumY / count };
  let nearest: Point | undefined;
  let nearestAway = Infinity;
  for (const { left, right, y } of stretches) {
    const x = Math.min(right, Math.max(left, Math.round(mean.x)));
    const away = distance({ x, y }, mean);
    const closer = nearestAway - away;
    if (nearest && (closer < -ALIKE || (closer <= ALIKE && !isBefore({ x, y }, nearest, columns)))) continue;
    nearestAway = away;
    nearest = { x, y };
  }
  return nearest;
}

/** Of two places the higher one comes before, of those as high the one nearer to the upright middle. */
function isBefore(one: Point, other: Point, columns: number): boolean {
  const fromMiddle = ({ x }: Point): number => Math.abs(2 * x - columns + 1);
  return one.y < other.y || (one.y === other.y && fromMiddle(one) < fromMiddle(other));
}

/**
 * How far each block of a region is from the nearest that is not whole or of another, or from the edge of the canvas;
 * row by row, with a border of noughts all round.
 */
function depthsOf(region: Region, canvas: Raster): Int32Array {
  const { columns, rows } = inBlocks(region);
  const wide = columns + 2;
  const depths = new Int32Array(wide * (rows + 2));
  const most = BESIDE * (inBlocks(canvas).columns + inBlocks(canvas).rows);
  for (let y = 1; y <= rows; y++) {
    for (let x = 1; x <= columns; x++) {
      if (!isWhole(region, x - 1, y - 1)) continue;
      const at = y * wide + x;
      depths[at] = Math.min(
        most,
        (depths[at - wide - 1] as number) + ACROSS,
        (depths[at - wide] as number) + BESIDE,
        (depths[at - wide + 1] as number) + ACROSS,
        (depths[at - 1] as number) + BESIDE,
      );
    }
  }
  for (let y = rows; y > 0; y--) {
    for (let x = columns; x > 0; x--) {
      const at = y * wide + x;
      const depth = depths[at] as number;
      if (depth === 0) continue;
      depths[at] = Math.min(
        depth,
        (depths[at + wide + 1] as number) + ACROSS,
        (depths[at + wide] as number) + BESIDE,
        (depths[at + wide - 1] as number) + ACROSS,
        (depths[at + 1] as number) + BESIDE,
      );
    }
  }
  return depths;
}

/** Whether all cells of a block are of the region. */
function isWhole({ columns, fields, own }: Region, x: number, y: number): boolean {
  const first = BLOCK * (y * columns + x);
  const field = fields[first] as number;
  if (!own.has(field)) return false;
  for (let row = 0; row < BLOCK; row++) {
    const start = first + row * columns;
    for (let cell = start; cell < start + BLOCK; cell++) {
      if (fields[cell] !== field && !own.has(fields[cell] as number)) return false;
    }
  }
  return true;
}
