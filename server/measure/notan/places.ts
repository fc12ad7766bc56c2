import { distance, type Point } from '../../plan/geometry/point.js';
import type { CanvasSize } from '../areas/areas.js';
import type { Blocks, Extents, FieldRaster } from './raster.js';

/** Distances in thirds of a block, to neighbours beside and across a corner: Borgefors 1986. */
const BESIDE = 3;
const ACROSS = 4;

/** A rectangle of cells or blocks, all included. */
interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * A place inside a region that is about as far from its border and from the edge of the canvas as any, in canvas units.
 * Only what the region reaches to is looked at.
 *
 * @param own the fields that the region is made of
 * @returns nothing for a region that has no cell
 */
export function placeInside(
  raster: FieldRaster,
  own: readonly number[],
  canvas: CanvasSize,
): Point | undefined {
  const reach = reachOf(raster.extents, own);
  const isOwn = new Uint8Array(raster.extents.left.length);
  for (const field of own) isOwn[field] = 1;
  const block = deepestBlock(raster.blocks, isOwn, reach);
  const at = block ?? middleCell(raster, isOwn, reach);
  if (!at) return undefined;
  const { columns, rows } = block ? raster.blocks : raster;
  return { x: ((at.x + 0.5) / columns) * canvas.width, y: ((at.y + 0.5) / rows) * canvas.height };
}

function reachOf({ left, top, right, bottom }: Extents, own: readonly number[]): Extent {
  const reach = { left: Infinity, top: Infinity, right: -1, bottom: -1 };
  for (const field of own) {
    reach.left = Math.min(reach.left, left[field] as number);
    reach.top = Math.min(reach.top, top[field] as number);
    reach.right = Math.max(reach.right, right[field] as number);
    reach.bottom = Math.max(reach.bottom, bottom[field] as number);
  }
  return reach;
}

/** The block farthest from the border of the region; of several that are as far, the one nearest to their middle. */
function deepestBlock(blocks: Blocks, isOwn: Uint8Array, cells: Extent): Point | undefined {
  const { columns, rows, side } = blocks;
  const reach = {
    left: Math.floor(cells.left / side),
    top: Math.floor(cells.top / side),
    right: Math.min(columns - 1, Math.floor(cells.right / side)),
    bottom: Math.min(rows - 1, Math.floor(cells.bottom / side)),
  };
  if (reach.left > reach.right || reach.top > reach.bottom) return undefined;
  const depths = depthsOf(blocks, isOwn, reach);
  const wide = reach.right - reach.left + 3;
  let deepest = 0;
  for (const depth of depths) if (depth > deepest) deepest = depth;
  if (deepest === 0) return undefined;
  const candidates: Stretch[] = [];
  depths.forEach((depth, at) => {
    if (depth !== deepest) return;
    const x = reach.left + (at % wide) - 1;
    const y = reach.top + Math.floor(at / wide) - 1;
    candidates.push({ left: x, right: x, y });
  });
  return nearestToMean(candidates, columns);
}

/** The cell nearest to the mean of the region's cells. */
function middleCell(raster: FieldRaster, isOwn: Uint8Array, reach: Extent): Point | undefined {
  const { columns, firstRuns } = raster;
  const { starts, labels } = raster.runs;
  const stretches: Stretch[] = [];
  for (let y = reach.top; y <= reach.bottom; y++) {
    const end = firstRuns[y + 1] ?? labels.length;
    for (let run = firstRuns[y] as number; run < end; run++) {
      if (isOwn[labels[run] as number] !== 1) continue;
      const before = y * columns;
      stretches.push({
        left: (starts[run] as number) - before,
        right: (starts[run + 1] as number) - before - 1,
        y,
      });
    }
  }
  return nearestToMean(stretches, columns);
}

/** Cells or blocks beside each other in one row, both ends included. */
interface Stretch {
  readonly left: number;
  readonly right: number;
  readonly y: number;
}

/** Distances in blocks or cells that differ by less are one. */
const ALIKE = 1e-6;

/** Of the places nearest to the mean of all in each stretch, the nearest; of those as near the one that comes before. */
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
 * How far each block in reach is from the nearest that is not of the region, or from the edge of the canvas; row by row, with a
 * border of noughts all round.
 */
function depthsOf({ columns, rows, fieldOf, shared }: Blocks, isOwn: Uint8Array, reach: Extent): Int32Array {
  const wide = reach.right - reach.left + 3;
  const high = reach.bottom - reach.top + 3;
  const depths = new Int32Array(wide * high);
  for (let y = 1; y < high - 1; y++) {
    const first = (reach.top + y - 1) * columns + reach.left - 1;
    for (let x = 1; x < wide - 1; x++) {
      const field = fieldOf[first + x] as number;
      const isIn =
        field >= 0 ? isOwn[field] === 1 : (shared[-1 - field] ?? []).every((each) => isOwn[each] === 1);
      if (!isIn) continue;
      const at = y * wide + x;
      depths[at] = Math.min(
        BESIDE * (columns + rows),
        (depths[at - wide - 1] as number) + ACROSS,
        (depths[at - wide] as number) + BESIDE,
        (depths[at - wide + 1] as number) + ACROSS,
        (depths[at - 1] as number) + BESIDE,
      );
    }
  }
  for (let y = high - 2; y > 0; y--) {
    for (let x = wide - 2; x > 0; x--) {
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
