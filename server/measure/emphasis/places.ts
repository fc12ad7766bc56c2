import { type Box, type Point, distance } from '../../plan/geometry/point.js';
import { higherFirst, inSteps } from '../areas/place-order.js';
import { ALIKE, candidates } from './candidates.js';
import type { Weigh } from './field.js';
import { type Fronts, type Gathered, gathering, isFarOff, keptGathering } from './gathering.js';
import { type FieldGrid, REACH, middleOf } from './grid.js';

/** A place that is stronger than all round it. */
export interface Peak extends Gathered {
  readonly strength: number;
}

const ROUNDING = 1e-9;

/**
 * The places of a field that are stronger than all within the reach, strongest first, of those alike the highest up, no
 * two nearer than the reach.
 * A mirrored picture has the mirrored places: of cells of one strength the one in the middle of the others counts,
 * then the one nearest to the middle of the canvas.
 *
 * @param least strength of the places that are asked for; there may be weaker ones among those told, but not all
 * @param plain what counts far from `weighedOtherwise`, the box round all stretches of which another weight counts
 */
export function peaks(
  field: Float64Array,
  grid: FieldGrid,
  byFront: Fronts,
  weigh: Weigh,
  diagonal: number,
  least = 0,
  plain = weigh,
  weighedOtherwise?: Box,
): readonly Peak[] {
  const { cells, isPeak, strongest } = candidates(field, grid, diagonal, least);
  const found = cells.filter(isPeak).map((cell): Peak => {
    const place = middleOf(grid, cell);
    const isOther = weighedOtherwise !== undefined && !isFarOff(place, weighedOtherwise, diagonal);
    return {
      strength: field[cell] as number,
      ...(isOther
        ? gathering(byFront, weigh, place, diagonal)
        : keptGathering(byFront, plain, place, diagonal)),
    };
  });
  const higher = higherFirst({ width: grid.columns * grid.cellWidth, diagonal });
  const strengthClass = ({ strength }: Peak): number => inSteps(strength, strongest);
  found.sort((one, other) => strengthClass(other) - strengthClass(one) || higher(one.at, other.at));
  return apart(found, strongest, diagonal);
}

/** The strongest of these places that counts, none weaker than `least`; much less work than to find them all. */
export function strongestPeak(
  field: Float64Array,
  grid: FieldGrid,
  byFront: Fronts,
  weigh: Weigh,
  diagonal: number,
  counts: (peak: Peak) => boolean,
  least = 0,
): Peak | undefined {
  const { cells, isPeak } = candidates(field, grid, diagonal, least);
  for (const cell of cells) {
    if (!isPeak(cell)) continue;
    const strength = field[cell] as number;
    const peak = { strength, ...gathering(byFront, weigh, middleOf(grid, cell), diagonal) };
    if (counts(peak)) return peak;
  }
  return undefined;
}

/** The strongest place within the reach of a point, and what is gathered there. */
export function strongestNear(
  field: Float64Array,
  grid: FieldGrid,
  byFront: Fronts,
  weigh: Weigh,
  point: Point,
  diagonal: number,
): Peak {
  const { columns, cellWidth, cellHeight } = grid;
  let best = -1;
  let strength = 0;
  let nearest = Infinity;
  for (const cell of cellsNear(grid, point, REACH * diagonal)) {
    // As `middleOf`, without a place for each of hundreds of cells.
    const column = cell % columns;
    const dx = (column + 0.5) * cellWidth - point.x;
    const dy = ((cell - column) / columns + 0.5) * cellHeight - point.y;
    const away = Math.sqrt(dx * dx + dy * dy);
    if (!isWithinReach(away, diagonal)) continue;
    const here = field[cell] as number;
    const alike = ALIKE * strength;
    if (best < 0 || here > strength + alike || (here > strength - alike && away < nearest)) {
      best = cell;
      strength = here;
      nearest = away;
    }
  }
  return { strength, ...gathering(byFront, weigh, strength > 0 ? middleOf(grid, best) : point, diagonal) };
}

/** The cells whose middles may lie within a distance of a place, row by row; canvas units. */
export function cellsNear(
  { columns, rows, cellWidth, cellHeight }: FieldGrid,
  { x, y }: Point,
  reach: number,
): readonly number[] {
  // A cell more on each side, for what rounding may do.
  const top = Math.max(0, Math.floor((y - reach) / cellHeight) - 1);
  const bottom = Math.min(rows - 1, Math.floor((y + reach) / cellHeight) + 1);
  const left = Math.max(0, Math.floor((x - reach) / cellWidth) - 1);
  const right = Math.min(columns - 1, Math.floor((x + reach) / cellWidth) + 1);
  const cells: number[] = [];
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) cells.push(row * columns + column);
  }
  return cells;
}

/** Whether a distance is within the reach, one of exactly the reach in spite of rounding; canvas units. */
export function isWithinReach(away: number, diagonal: number): boolean {
  return away <= REACH * diagonal * (1 + ROUNDING);
}

/** Of places nearer than the reach the strongest; of those alike, the place between them. */
function apart(found: readonly Peak[], strongest: number, diagonal: number): readonly Peak[] {
  const groups: { readonly first: Peak; readonly alike: Peak[] }[] = [];
  for (const peak of found) {
    const group = groups.find(({ first }) => isNearer(first.at, peak.at, REACH * diagonal));
    if (!group) groups.push({ first: peak, alike: [peak] });
    else if (group.first.strength - peak.strength <= ALIKE * strongest) group.alike.push(peak);
  }
  return groups.map(({ first, alike }) => ({
    ...first,
    at: {
      x: alike.reduce((sum, { at }) => sum + at.x, 0) / alike.length,
      y: alike.reduce((sum, { at }) => sum + at.y, 0) / alike.length,
    },
  }));
}

/** Whether two places are nearer than the reach; most are farther apart along one axis alone. */
function isNearer(one: Point, other: Point, reach: number): boolean {
  if (Math.abs(one.x - other.x) >= reach || Math.abs(one.y - other.y) >= reach) return false;
  return distance(one, other) < reach;
}
