import { type Point, distance } from '../../plan/geometry/point.js';
import type { BorderStretch } from '../borders/borders.js';
import { higherFirst, inSteps } from '../areas/place-order.js';
import { once, sameInputs } from '../memory.js';
import { type FieldGrid, REACH, type Weigh, boxOfStretches, counted, middleOf } from './field.js';

/** A place that is stronger than all round it. */
export interface Peak {
  /** The middle of what is gathered there, weighted; canvas units. */
  readonly at: Point;
  readonly strength: number;
  /** The two areas whose border counts most there. */
  readonly areas: readonly [number, number];
}

/** Weaker places than this part of the strongest one are not told. */
const WEAKEST = 0.1;
/** Strengths within this part of the strongest are alike. */
const ALIKE = 1e-6;
/** Part of the strongest: more than what two strengths of one class differ by, so that no weaker place moves a stronger one. */
const BELOW = 1e-4;
const ROUNDING = 1e-9;

/** The strongest cell, those alike told apart by `rank`. */
type Rank = (one: number, other: number) => number;

/**
 * The places of a field that are stronger than all within the reach, strongest first, of those alike the highest up, no
 * two nearer than the reach.
 * A mirrored picture has the mirrored places: of cells of one strength the one in the middle of the others counts,
 * then the one nearest to the middle of the canvas.
 *
 * @param least strength of the places that are asked for; there may be weaker ones among those told, but not all
 */
export function peaks(
  field: Float64Array,
  grid: FieldGrid,
  byFront: readonly { readonly stretches: readonly BorderStretch[] }[],
  weigh: Weigh,
  diagonal: number,
  least = 0,
): readonly Peak[] {
  const { cells, isPeak, strongest } = candidates(field, grid, diagonal, least);
  const found = cells.filter(isPeak).map((cell): Peak => ({
    strength: field[cell] as number,
    ...gathering(byFront, weigh, middleOf(grid, cell), diagonal),
  }));
  const higher = higherFirst({ width: grid.columns * grid.cellWidth, diagonal });
  const class_ = ({ strength }: Peak): number => inSteps(strength, strongest);
  found.sort((one, other) => class_(other) - class_(one) || higher(one.at, other.at));
  return apart(found, strongest, diagonal);
}

/** The strongest of these places that counts, none weaker than `least`; much less work than to find them all. */
export function strongestPeak(
  field: Float64Array,
  grid: FieldGrid,
  byFront: readonly { readonly stretches: readonly BorderStretch[] }[],
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

interface Candidates {
  /** Cells that may be the strongest of all within the reach, strongest first. */
  readonly cells: readonly number[];
  readonly isPeak: (cell: number) => boolean;
  readonly strongest: number;
}

function candidates(field: Float64Array, grid: FieldGrid, diagonal: number, least: number): Candidates {
  let strongest = 0;
  for (const strength of field) if (strength > strongest) strongest = strength;
  if (strongest === 0) return { cells: [], isPeak: () => false, strongest };
  const rank = ranking(field, strongest, grid, diagonal);
  const round = cellsRound(grid, REACH * diagonal);
  const enough = Math.max(WEAKEST * strongest, least - BELOW * strongest);
  const cells: number[] = [];
  for (let cell = 0; cell < field.length; cell++) {
    const isWeak = (field[cell] as number) < enough;
    if (!isWeak && !hasStrongerNeighbour(field, grid, cell)) cells.push(cell);
  }
  cells.sort((one, other) => (field[other] as number) - (field[one] as number));
  return { cells, strongest, isPeak: (cell) => !round(cell, (other) => rank(other, cell) > 0) };
}

/** The strongest place within the reach of a point, and what is gathered there. */
export function strongestNear(
  field: Float64Array,
  grid: FieldGrid,
  byFront: readonly { readonly stretches: readonly BorderStretch[] }[],
  weigh: Weigh,
  point: Point,
  diagonal: number,
): Peak {
  let best: { readonly strength: number; readonly away: number; readonly at: Point } | undefined;
  for (const cell of cellsNear(grid, point, REACH * diagonal)) {
    const at = middleOf(grid, cell);
    const dx = at.x - point.x;
    const dy = at.y - point.y;
    const away = Math.sqrt(dx * dx + dy * dy);
    if (!isWithinReach(away, diagonal)) continue;
    const strength = field[cell] as number;
    const alike = ALIKE * (best?.strength ?? 0);
    if (!best || strength > best.strength + alike || (strength > best.strength - alike && away < best.away)) {
      best = { strength, away, at };
    }
  }
  const strength = best?.strength ?? 0;
  return { strength, ...gathering(byFront, weigh, best && strength > 0 ? best.at : point, diagonal) };
}

/** The cells whose middles may lie within a distance of a place, row by row; canvas units. */
function cellsNear(
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

/** What counts at a place: its weighted middle, and the border that counts most. */
function gathering(
  byFront: readonly { readonly stretches: readonly BorderStretch[] }[],
  weigh: Weigh,
  place: Point,
  diagonal: number,
): Pick<Peak, 'at' | 'areas'> {
  const farthest = 2 * REACH * diagonal;
  let [sum, x, y] = [0, 0, 0];
  const borders = new Map<number, Map<number, number>>();
  for (const { stretches } of byFront) {
    const { left, top, right, bottom } = boxOfStretches(stretches);
    if (left - place.x > farthest || place.x - right > farthest) continue;
    if (top - place.y > farthest || place.y - bottom > farthest) continue;
    for (const stretch of stretches) {
      const dx = stretch.at.x - place.x;
      const dy = stretch.at.y - place.y;
      // Most lie far off, and a root costs more than all the rest.
      if (dx > farthest || dx < -farthest || dy > farthest || dy < -farthest) continue;
      const part = counted(Math.sqrt(dx * dx + dy * dy), diagonal);
      const amount = part * stretch.length * weigh(stretch);
      if (amount === 0) continue;
      sum += amount;
      x += amount * stretch.at.x;
      y += amount * stretch.at.y;
      const ofFront = borders.get(stretch.front) ?? new Map<number, number>();
      borders.set(stretch.front, ofFront);
      ofFront.set(stretch.behind, (ofFront.get(stretch.behind) ?? 0) + amount);
    }
  }
  let most = { amount: 0, areas: [-1, -1] as readonly [number, number] };
  for (const [front, ofFront] of borders) {
    for (const [behind, amount] of ofFront) {
      if (amount > most.amount * (1 + ALIKE)) most = { amount, areas: [front, behind] };
    }
  }
  return { at: sum > 0 ? { x: x / sum, y: y / sum } : place, areas: most.areas };
}

/** Above 0 where the first of two cells comes first, 0 for the same rank. */
function ranking(field: Float64Array, strongest: number, grid: FieldGrid, diagonal: number): Rank {
  const class_ = (amount: number, most: number) => Math.round(amount / (ALIKE * most));
  const strength = (cell: number) => class_(field[cell] as number, strongest);
  // Asked for few cells: most are told apart by their strength.
  const inside = once(() => {
    const around = sumsAround(field, grid, REACH * diagonal);
    const most = around.reduce((so, sum) => Math.max(so, sum), 0);
    return (cell: number) => class_(around[cell] as number, most);
  });
  const { columns, rows } = grid;
  const off = (cell: number) => {
    const column = cell % columns;
    const row = (cell - column) / columns;
    return [Math.abs(2 * column - columns + 1), Math.abs(2 * row - rows + 1)] as const;
  };
  return (one, other) => {
    const stronger = strength(one) - strength(other);
    if (stronger !== 0) return stronger;
    const inner = inside()(one) - inside()(other);
    if (inner !== 0) return inner;
    const [across, down] = off(one);
    const [otherAcross, otherDown] = off(other);
    return otherAcross - across || otherDown - down;
  };
}

/** A quick look that spares most cells the long one: a clearly stronger cell beside it. */
function hasStrongerNeighbour(field: Float64Array, { columns }: FieldGrid, cell: number): boolean {
  const column = cell % columns;
  const clearly = (field[cell] as number) * (1 + 4 * ALIKE);
  const stronger = (other: number) => (field[other] ?? 0) > clearly;
  return (
    stronger(cell - columns) ||
    stronger(cell + columns) ||
    (column > 0 && stronger(cell - 1)) ||
    (column + 1 < columns && stronger(cell + 1))
  );
}

/** The sum of a field over the upright box of twice the reach round each cell. */
function sumsAround(field: Float64Array, grid: FieldGrid, reach: number): Float64Array {
  const { columns, rows, cellWidth, cellHeight } = grid;
  const across = new Float64Array(field.length);
  const sums = new Float64Array(field.length);
  for (let row = 0; row < rows; row++) {
    slidingSums(field, across, row * columns, 1, columns, Math.floor(reach / cellWidth));
  }
  for (let column = 0; column < columns; column++) {
    slidingSums(across, sums, column, columns, rows, Math.floor(reach / cellHeight));
  }
  return sums;
}

/** For each of `count` numbers in a line the sum of those up to `wide` before and behind it. */
function slidingSums(
  from: Float64Array,
  into: Float64Array,
  start: number,
  step: number,
  count: number,
  wide: number,
): void {
  let sum = 0;
  for (let at = -wide; at < count; at++) {
    const entering = at + wide;
    const leaving = at - wide - 1;
    if (entering < count) sum += from[start + entering * step] as number;
    if (leaving >= 0) sum -= from[start + leaving * step] as number;
    if (at >= 0) into[start + at * step] = sum;
  }
}

interface Step {
  readonly across: number;
  readonly down: number;
  readonly away: number;
}

let lately: { readonly inputs: readonly number[]; readonly steps: readonly Step[] } | undefined;

/** From a cell to those within a distance of it, the nearest first; those for the last grid are kept. */
function stepsWithin({ cellWidth, cellHeight }: FieldGrid, reach: number): readonly Step[] {
  const inputs = [cellWidth, cellHeight, reach];
  if (lately && sameInputs(lately.inputs, inputs)) return lately.steps;
  const wide = Math.floor(reach / cellWidth);
  const high = Math.floor(reach / cellHeight);
  const steps: Step[] = [];
  for (let down = -high; down <= high; down++) {
    for (let across = -wide; across <= wide; across++) {
      const away = Math.hypot(across * cellWidth, down * cellHeight);
      if (away > 0 && away <= reach) steps.push({ across, down, away });
    }
  }
  steps.sort((a, b) => a.away - b.away);
  lately = { inputs, steps };
  return steps;
}

/** Whether any cell within a distance of a cell meets a condition; neighbours are asked first. */
function cellsRound(
  grid: FieldGrid,
  reach: number,
): (cell: number, meets: (other: number) => boolean) => boolean {
  const { columns, rows } = grid;
  const steps = stepsWithin(grid, reach);
  return (cell, meets) => {
    const column = cell % columns;
    const row = (cell - column) / columns;
    return steps.some(({ across, down }) => {
      const inside =
        column + across >= 0 && column + across < columns && row + down >= 0 && row + down < rows;
      return inside && meets(cell + down * columns + across);
    });
  };
}

/** Of places nearer than the reach the strongest; of those alike, the place between them. */
function apart(found: readonly Peak[], strongest: number, diagonal: number): readonly Peak[] {
  const groups: { readonly first: Peak; readonly alike: Peak[] }[] = [];
  for (const peak of found) {
    const group = groups.find(({ first }) => distance(first.at, peak.at) < REACH * diagonal);
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
