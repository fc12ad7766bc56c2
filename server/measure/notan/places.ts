import { distance, type Point } from '../../plan/geometry/point.js';
import type { CanvasSize } from '../areas/areas.js';
import type { Cells } from './fields.js';
import { runsOf } from './runs.js';

/** Cells on a side of a block: a place in the middle of a region need not be found to the cell. */
const BLOCK = 4;
/** Distances in thirds of a block, to neighbours beside and across a corner: Borgefors 1986. */
const BESIDE = 3;
const ACROSS = 4;

/** A raster of cells or blocks, each in a region; negative for none. */
interface Raster {
  readonly columns: number;
  readonly rows: number;
  readonly regionOf: Int32Array;
}

/**
 * For each of so many regions, which are made of whole fields, a place inside it that is about as far from its border
 * and from the edge of the canvas as any, in canvas units. `regionOf[field]` is negative for a field of none. Nothing
 * for a region that has no cell.
 */
export function placesInside(
  cells: Cells,
  regionOf: Int32Array,
  regions: number,
  canvas: CanvasSize,
): readonly (Point | undefined)[] {
  const blocks = blocksOf(cells, regionOf);
  const inBlocks = deepestBlocks(blocks, regions);
  const inRuns = inBlocks.every((place) => place !== undefined) ? [] : middleCells(cells, regionOf, regions);
  return inBlocks.map((block, region) => {
    const at = block ?? inRuns[region];
    if (!at) return undefined;
    const { columns, rows } = block ? blocks : cells;
    return { x: ((at.x + 0.5) / columns) * canvas.width, y: ((at.y + 0.5) / rows) * canvas.height };
  });
}

/** Cells by blocks; one that lies on the border of a region belongs to none. */
function blocksOf({ columns, rows, fields }: Cells, regionOf: Int32Array): Raster {
  const across = Math.floor(columns / BLOCK);
  const down = Math.floor(rows / BLOCK);
  const blocks = new Int32Array(across * down);
  const regionAt = (cell: number): number => regionOf[fields[cell] as number] as number;
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++) {
      const first = row * BLOCK * columns + column * BLOCK;
      let region = regionAt(first);
      for (let cell = 1; region >= 0 && cell < BLOCK * BLOCK; cell++) {
        const at = first + Math.floor(cell / BLOCK) * columns + (cell % BLOCK);
        if (regionAt(at) !== region) region = -1;
      }
      blocks[row * across + column] = region;
    }
  }
  return { columns: across, rows: down, regionOf: blocks };
}

/** For each region the block farthest from its border; of several that are as far, the one nearest to their middle. */
function deepestBlocks(blocks: Raster, regions: number): readonly (Point | undefined)[] {
  const { columns, regionOf } = blocks;
  const depths = depthsOf(blocks);
  const deepest = new Int32Array(regions);
  for (let block = 0; block < depths.length; block++) {
    const region = regionOf[block] as number;
    if (region >= 0) deepest[region] = Math.max(deepest[region] as number, depths[block] as number);
  }
  const candidates: { readonly region: number; readonly at: Point }[] = [];
  for (let block = 0; block < depths.length; block++) {
    const region = regionOf[block] as number;
    if (region < 0 || depths[block] !== deepest[region]) continue;
    candidates.push({ region, at: { x: block % columns, y: Math.floor(block / columns) } });
  }
  return nearestToMean(
    candidates.map((candidate) => ({ ...candidate, weight: 1 })),
    regions,
    columns,
    ({ at }) => at,
  );
}

/** For each region the cell nearest to the mean of its cells. */
function middleCells(cells: Cells, regionOf: Int32Array, regions: number): readonly (Point | undefined)[] {
  const { columns } = cells;
  const { starts, labels } = runsOf({ ...cells, labels: cells.fields });
  const stretches = Array.from(labels, (field, run) => {
    const start = starts[run] as number;
    const count = (starts[run + 1] as number) - start;
    const left = start % columns;
    const y = Math.floor(start / columns);
    const at = { x: left + (count - 1) / 2, y };
    return { region: regionOf[field] as number, at, weight: count, left, right: left + count - 1 };
  });
  return nearestToMean(stretches, regions, columns, ({ left, right, at }, mean) => ({
    x: Math.min(right, Math.max(left, Math.round(mean.x))),
    y: at.y,
  }));
}

interface Weighed {
  readonly region: number;
  readonly at: Point;
  readonly weight: number;
}

/** Distances in blocks or cells that differ by less are one. */
const ALIKE = 1e-6;

/** For each region, of the points nearest to its mean in each of its parts, the nearest; of those as near the one that comes before. */
function nearestToMean<Part extends Weighed>(
  parts: readonly Part[],
  regions: number,
  columns: number,
  nearestIn: (part: Part, mean: Point) => Point,
): readonly (Point | undefined)[] {
  const sums = Array.from({ length: regions }, () => ({ x: 0, y: 0, weight: 0 }));
  for (const { region, at, weight } of parts) {
    const sum = sums[region];
    if (!sum) continue;
    sum.x += weight * at.x;
    sum.y += weight * at.y;
    sum.weight += weight;
  }
  const means = sums.map(({ x, y, weight }) => ({ x: x / weight, y: y / weight }));
  const nearest = sums.map((): Point | undefined => undefined);
  const distances = new Float64Array(regions).fill(Infinity);
  for (const part of parts) {
    const mean = means[part.region];
    if (!mean) continue;
    const at = nearestIn(part, mean);
    const away = distance(at, mean);
    const known = nearest[part.region];
    const closer = (distances[part.region] as number) - away;
    if (known && (closer < -ALIKE || (closer <= ALIKE && !isBefore(at, known, columns)))) continue;
    distances[part.region] = away;
    nearest[part.region] = at;
  }
  return nearest;
}

/** Of two places the higher one comes before, of those as high the one nearer to the upright middle. */
function isBefore(one: Point, other: Point, columns: number): boolean {
  const fromMiddle = ({ x }: Point): number => Math.abs(2 * x - columns + 1);
  return one.y < other.y || (one.y === other.y && fromMiddle(one) < fromMiddle(other));
}

/** How far each block is from the nearest of another region or the edge of the canvas. */
function depthsOf({ columns, rows, regionOf }: Raster): Int32Array {
  const depths = new Int32Array(columns * rows).fill(BESIDE * (columns + rows));
  const settle = (row: number, column: number, way: 1 | -1): void => {
    const at = row * columns + column;
    const region = regionOf[at] as number;
    let depth = region < 0 ? 0 : (depths[at] as number);
    const look = (down: number, right: number, step: number): void => {
      const y = row + down;
      const x = column + right;
      const outside = x < 0 || x >= columns || y < 0 || y >= rows;
      const there = y * columns + x;
      const other = outside || regionOf[there] !== region ? 0 : (depths[there] as number);
      depth = Math.min(depth, other + step);
    };
    look(-way, -1, ACROSS);
    look(-way, 0, BESIDE);
    look(-way, 1, ACROSS);
    look(0, -way, BESIDE);
    depths[at] = depth;
  };
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) settle(row, column, 1);
  for (let row = rows - 1; row >= 0; row--) {
    for (let column = columns - 1; column >= 0; column--) settle(row, column, -1);
  }
  return depths;
}
