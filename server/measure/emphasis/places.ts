import { type Box, type Point, distance } from '../../plan/geometry/point.js';
import type { BorderStretch } from '../borders/borders.js';
import { higherFirst, inSteps } from '../areas/place-order.js';
import { sameInputs } from '../memory.js';
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

interface Candidates {
  /** Cells that may be the strongest of all within the reach, strongest first. */
  readonly cells: readonly number[];
  readonly isPeak: (cell: number) => boolean;
  readonly strongest: number;
}

function candidates(field: Float64Array, grid: FieldGrid, diagonal: number, least: number): Candidates {
  const strongest = strongestOf(field);
  if (strongest === 0) return { cells: [], isPeak: () => false, strongest };
  const ranking = new Ranking(field, strongest, grid, diagonal);
  const steps = stepsWithin(grid, REACH * diagonal);
  const enough = Math.max(WEAKEST * strongest, least - BELOW * strongest);
  const cells = withoutStrongerNeighbour(field, grid, enough);
  cells.sort((one, other) => (field[other] as number) - (field[one] as number));
  return { cells, strongest, isPeak: (cell) => isFirstRound(cell, grid, steps, ranking) };
}

/** The greatest strength of a field. */
export function strongestOf(field: Float64Array): number {
  let strongest = 0;
  for (let cell = 0; cell < field.length; cell++) {
    if ((field[cell] as number) > strongest) strongest = field[cell] as number;
  }
  return strongest;
}

/** The cells of at least some strength beside which none is clearly stronger: a quick look that spares most the long one. */
function withoutStrongerNeighbour(field: Float64Array, { columns }: FieldGrid, enough: number): number[] {
  const cells: number[] = [];
  const behindLast = field.length - columns;
  for (let cell = 0, column = 0; cell < field.length; cell++, column++) {
    if (column === columns) column = 0;
    const strength = field[cell] as number;
    if (strength < enough) continue;
    const clearly = strength * (1 + 4 * ALIKE);
    if (cell >= columns && (field[cell - columns] as number) > clearly) continue;
    if (cell < behindLast && (field[cell + columns] as number) > clearly) continue;
    if (column > 0 && (field[cell - 1] as number) > clearly) continue;
    if (column + 1 < columns && (field[cell + 1] as number) > clearly) continue;
    cells.push(cell);
  }
  return cells;
}

/** Whether a cell ranks before all at some steps from it; neighbours are asked first. */
function isFirstRound(
  cell: number,
  { columns, rows }: FieldGrid,
  { across, down }: Steps,
  ranking: Ranking,
): boolean {
  const column = cell % columns;
  const row = (cell - column) / columns;
  for (let step = 0; step < across.length; step++) {
    const x = column + (across[step] as number);
    const y = row + (down[step] as number);
    if (x < 0 || x >= columns || y < 0 || y >= rows) continue;
    if (ranking.compare(y * columns + x, cell) > 0) return false;
  }
  return true;
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

/** Whether nothing within a box is gathered at a place; canvas units. */
function isFarOff({ x, y }: Point, { left, top, right, bottom }: Box, diagonal: number): boolean {
  const farthest = 2 * REACH * diagonal;
  return left - x > farthest || x - right > farthest || top - y > farthest || y - bottom > farthest;
}

interface KeptGatherings {
  readonly weigh: Weigh;
  readonly diagonal: number;
  /** By place. */
  readonly at: Map<string, Pick<Peak, 'at' | 'areas'>>;
}

const gatherings = new WeakMap<Fronts, KeptGatherings>();

/** `gathering`, kept as long as the borders, with what was last counted of them. */
function keptGathering(
  byFront: Fronts,
  weigh: Weigh,
  place: Point,
  diagonal: number,
): Pick<Peak, 'at' | 'areas'> {
  let kept = gatherings.get(byFront);
  if (kept?.weigh !== weigh || kept.diagonal !== diagonal) {
    kept = { weigh, diagonal, at: new Map() };
    gatherings.set(byFront, kept);
  }
  const key = `${place.x} ${place.y}`;
  const known = kept.at.get(key) ?? gathering(byFront, weigh, place, diagonal);
  kept.at.set(key, known);
  return known;
}

type Fronts = readonly { readonly stretches: readonly BorderStretch[] }[];

const boxes = new WeakMap<Fronts, Float64Array>();

/** Left, top, right and bottom of the box round each list of stretches, kept as long as the lists. */
function boxesOf(byFront: Fronts): Float64Array {
  const known = boxes.get(byFront);
  if (known) return known;
  const all = new Float64Array(4 * byFront.length);
  byFront.forEach(({ stretches }, index) => {
    const { left, top, right, bottom } = boxOfStretches(stretches);
    all.set([left, top, right, bottom], 4 * index);
  });
  boxes.set(byFront, all);
  return all;
}

/** What counts at a place: its weighted middle, and the border that counts most. */
function gathering(
  byFront: Fronts,
  weigh: Weigh,
  place: Point,
  diagonal: number,
): Pick<Peak, 'at' | 'areas'> {
  const farthest = 2 * REACH * diagonal;
  const around = boxesOf(byFront);
  let [sum, x, y] = [0, 0, 0];
  const borders = new Map<number, Map<number, number>>();
  for (let index = 0, box = 0; index < byFront.length; index++, box += 4) {
    if ((around[box] as number) - place.x > farthest || place.x - (around[box + 2] as number) > farthest)
      continue;
    if ((around[box + 1] as number) - place.y > farthest) continue;
    if (place.y - (around[box + 3] as number) > farthest) continue;
    for (const stretch of (byFront[index] as Fronts[number]).stretches) {
      const dx = stretch.at.x - place.x;
      const dy = stretch.at.y - place.y;
      // Most lie far off, and a root costs more than all the rest.
      if (dx > farthest || dx < -farthest || dy > farthest || dy < -farthest) continue;
      const part = counted(Math.sqrt(dx * dx + dy * dy), diagonal);
      if (part === 0) continue;
      const amount = part * stretch.length * weigh(stretch);
      if (amount === 0) continue;
      sum += amount;
      x += amount * stretch.at.x;
      y += amount * stretch.at.y;
      let ofFront = borders.get(stretch.front);
      if (!ofFront) {
        ofFront = new Map<number, number>();
        borders.set(stretch.front, ofFront);
      }
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

/** Which of two cells comes first: the stronger, of those alike the one in the midst of more, then the one nearer to the middle. */
class Ranking {
  #around: Float64Array | undefined;
  #most = 0;

  constructor(
    private readonly field: Float64Array,
    private readonly strongest: number,
    private readonly grid: FieldGrid,
    private readonly diagonal: number,
  ) {}

  /** Above 0 where the first comes first, 0 for the same rank. */
  compare(one: number, other: number): number {
    const { field, strongest } = this;
    const stronger =
      alikeClass(field[one] as number, strongest) - alikeClass(field[other] as number, strongest);
    if (stronger !== 0) return stronger;
    const inner = this.inside(one) - this.inside(other);
    if (inner !== 0) return inner;
    return this.offAcross(other) - this.offAcross(one) || this.offDown(other) - this.offDown(one);
  }

  /** Asked for few cells: most are told apart by their strength. */
  private inside(cell: number): number {
    if (!this.#around) {
      this.#around = sumsAround(this.field, this.grid, REACH * this.diagonal);
      this.#most = strongestOf(this.#around);
    }
    return alikeClass(this.#around[cell] as number, this.#most);
  }

  private offAcross(cell: number): number {
    const { columns } = this.grid;
    return Math.abs(2 * (cell % columns) - columns + 1);
  }

  private offDown(cell: number): number {
    const { columns, rows } = this.grid;
    return Math.abs(2 * Math.floor(cell / columns) - rows + 1);
  }
}

function alikeClass(amount: number, most: number): number {
  return Math.round(amount / (ALIKE * most));
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

/** How far across and down cells lie from one, the nearest first. */
interface Steps {
  readonly across: Int32Array;
  readonly down: Int32Array;
}

let lately: { readonly inputs: readonly number[]; readonly steps: Steps } | undefined;

/** From a cell to those within a distance of it; those for the last grid are kept. */
function stepsWithin({ cellWidth, cellHeight }: FieldGrid, reach: number): Steps {
  const inputs = [cellWidth, cellHeight, reach];
  if (lately && sameInputs(lately.inputs, inputs)) return lately.steps;
  const wide = Math.floor(reach / cellWidth);
  const high = Math.floor(reach / cellHeight);
  const all: { readonly across: number; readonly down: number; readonly away: number }[] = [];
  for (let down = -high; down <= high; down++) {
    for (let across = -wide; across <= wide; across++) {
      const away = Math.hypot(across * cellWidth, down * cellHeight);
      if (away > 0 && away <= reach) all.push({ across, down, away });
    }
  }
  all.sort((a, b) => a.away - b.away);
  const steps = {
    across: Int32Array.from(all, ({ across }) => across),
    down: Int32Array.from(all, ({ down }) => down),
  };
  lately = { inputs, steps };
  return steps;
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
