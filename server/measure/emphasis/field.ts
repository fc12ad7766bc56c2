import type { Box } from '../../plan/geometry/point.js';
import type { BorderStretch } from '../borders/borders.js';
import { type Footprints, footprintsOf, keptFootprints } from './footprints.js';
import { type FieldGrid, PASSAGE, REACH, isSameGrid } from './grid.js';

/** What is gathered of borders at the middles of some cells of the grid: the others get nothing of them. */
export interface PartOfField {
  readonly left: number;
  readonly top: number;
  readonly columns: number;
  readonly rows: number;
  readonly strengths: Float64Array;
}

/** What of a stretch is gathered, for a unit of its length. */
export type Weigh = (stretch: BorderStretch) => number;

export const byPull: Weigh = ({ pull }) => pull;
export const byValue: Weigh = ({ sharpness, valueContrast }) => (sharpness * valueContrast) / 10;
export const byColour: Weigh = ({ sharpness, colourContrast }) => (sharpness * colourContrast) / 100;

/**
 * What is gathered at the middles of all cells that any of the stretches reaches: the sum over the stretches of what
 * counts x length in diagonals x weight; nothing when none of them weighs anything.
 */
export function partOfField(
  stretches: readonly BorderStretch[],
  weigh: Weigh,
  grid: FieldGrid,
  diagonal: number,
  footprints = () => footprintsOf(stretches, grid, diagonal),
): PartOfField | undefined {
  const weighed = weighedStretches(stretches, weigh, grid, diagonal);
  return weighed && laidPart(weighed, footprints(), grid);
}

/** Stretches as they count in a field. */
export interface WeighedStretches {
  /** What each of them adds where all of it counts. */
  readonly amounts: Float64Array;
  /** The cells that those reach which weigh anything. */
  readonly area: Cells;
}

/** Nothing when none of the stretches weighs anything. */
export function weighedStretches(
  stretches: readonly BorderStretch[],
  weigh: Weigh,
  grid: FieldGrid,
  diagonal: number,
): WeighedStretches | undefined {
  const weights = new Float64Array(stretches.length);
  stretches.forEach((stretch, index) => (weights[index] = weigh(stretch)));
  const heavy = weights.every((weight) => weight > 0)
    ? stretches
    : stretches.filter((_, index) => (weights[index] as number) > 0);
  const area = cellsReached(heavy, grid, (REACH + PASSAGE / 2) * diagonal);
  if (!area) return undefined;
  const amounts = weights.map((weight, index) =>
    weight > 0 ? ((stretches[index] as BorderStretch).length * weight) / diagonal : 0,
  );
  return { amounts, area };
}

/** Some rows of the grid. */
export type Rows = Pick<Cells, 'top' | 'rows'>;

/**
 * What stretches add to a field; nothing where it is none.
 *
 * @param only these rows are laid, all that are reached when left out
 */
export function laidPart(
  { amounts, area }: WeighedStretches,
  { starts, from, to, counts }: Footprints,
  grid: FieldGrid,
  only: Rows = area,
): PartOfField | undefined {
  const top = Math.max(area.top, only.top);
  const rows = Math.min(area.top + area.rows, only.top + only.rows) - top;
  if (rows <= 0) return undefined;
  const cells = { ...area, top, rows };
  const steps = stepsOver(cells, grid);
  const firstStep = top * (grid.columns + 1);
  const stepsEnd = (top + rows) * (grid.columns + 1);
  for (let index = 0; index < amounts.length; index++) {
    const amount = amounts[index] as number;
    if (amount === 0) continue;
    const end = starts[index + 1] as number;
    for (let run = starts[index] as number; run < end; run++) {
      const first = from[run] as number;
      if (first < firstStep) continue;
      if (first >= stepsEnd) break;
      const part = amount * (counts[run] as number);
      const behind = to[run] as number;
      steps[first] = (steps[first] as number) + part;
      steps[behind] = (steps[behind] as number) - part;
    }
  }
  return { ...cells, strengths: summedUp(steps, cells, grid) };
}

let lastSteps = new Float64Array(0);

/** Differences from cell to cell, one column more than cells: none yet in the rows of an area, anything elsewhere. */
function stepsOver({ top, rows }: Cells, grid: FieldGrid): Float64Array {
  const columns = grid.columns + 1;
  if (lastSteps.length < columns * grid.rows) lastSteps = new Float64Array(columns * grid.rows);
  return lastSteps.fill(0, top * columns, (top + rows) * columns);
}

interface KeptPart {
  readonly weigh: Weigh;
  readonly grid: FieldGrid;
  readonly diagonal: number;
  readonly part: PartOfField | undefined;
}

const kept = new WeakMap<readonly BorderStretch[], readonly KeptPart[]>();

/**
 * What `partOfField` gives, kept as long as the list of stretches.
 *
 * @param before another list, of which it is taken over where that weighs the same at the same places
 */
export function keptPart(
  stretches: readonly BorderStretch[],
  weigh: Weigh,
  grid: FieldGrid,
  diagonal: number,
  before?: readonly BorderStretch[],
): PartOfField | undefined {
  const known = knownPart(stretches, weigh, grid, diagonal);
  if (known) return known.part;
  const earlier = before && knownPart(before, weigh, grid, diagonal);
  const isAlike = earlier && weighAlike(stretches, before, weigh);
  const part = isAlike
    ? earlier.part
    : partOfField(stretches, weigh, grid, diagonal, () => keptFootprints(stretches, grid, diagonal, before));
  const others = kept.get(stretches)?.filter((each) => each.weigh !== weigh) ?? [];
  kept.set(stretches, [...others, { weigh, grid, diagonal, part }]);
  return part;
}

function knownPart(
  stretches: readonly BorderStretch[],
  weigh: Weigh,
  grid: FieldGrid,
  diagonal: number,
): KeptPart | undefined {
  return kept
    .get(stretches)
    ?.find((each) => each.weigh === weigh && each.diagonal === diagonal && isSameGrid(each.grid, grid));
}

/** Whether stretches are as long at the same places, lie between the same areas and weigh as much. */
function weighAlike(
  stretches: readonly BorderStretch[],
  others: readonly BorderStretch[],
  weigh: Weigh,
): boolean {
  return (
    stretches.length === others.length &&
    stretches.every((one, index) => {
      const other = others[index] as BorderStretch;
      const isThere = one.at.x === other.at.x && one.at.y === other.at.y && one.length === other.length;
      const isBetween = one.front === other.front && one.behind === other.behind;
      return isThere && isBetween && weigh(one) === weigh(other);
    })
  );
}

type Parts = readonly (PartOfField | undefined)[];

/** The parts laid over each other, at every cell of the grid, row by row. */
export function wholeField(parts: Parts, grid: FieldGrid): Float64Array {
  const field = new Float64Array(grid.columns * grid.rows);
  lay(parts, field, grid, { left: 0, top: 0, columns: grid.columns, rows: grid.rows });
  return field;
}

type ByFront = readonly { readonly stretches: readonly BorderStretch[] }[];

interface KeptField {
  readonly grid: FieldGrid;
  readonly diagonal: number;
  readonly field: Float64Array;
}

const fields = new WeakMap<ByFront, Map<Weigh, KeptField>>();

/** Keeps a field as long as the borders that it was laid of. */
export function keepField(byFront: ByFront, weigh: Weigh, field: KeptField): void {
  const ofBorders = fields.get(byFront) ?? new Map<Weigh, KeptField>();
  fields.set(byFront, ofBorders);
  ofBorders.set(weigh, field);
}

/** The field of all borders of a picture, kept as long as they are. */
export function keptField(byFront: ByFront, weigh: Weigh, grid: FieldGrid, diagonal: number): Float64Array {
  const known = fields.get(byFront)?.get(weigh);
  if (known?.diagonal === diagonal && isSameGrid(known.grid, grid)) return known.field;
  const parts = byFront.map(({ stretches }) => keptPart(stretches, weigh, grid, diagonal));
  const field = wholeField(parts, grid);
  keepField(byFront, weigh, { grid, diagonal, field });
  return field;
}

/** A whole field with the parts that it was laid of. */
export interface LaidField {
  readonly parts: Parts;
  readonly columns: number;
  readonly field: Float64Array;
}

/**
 * `wholeField`, bit for bit, for which only those cells are laid anew that a part reaches which is another than last
 * time.
 */
export function laidField(parts: Parts, grid: FieldGrid, last: LaidField | undefined): LaidField {
  const { columns } = grid;
  const isAlike =
    last?.parts.length === parts.length &&
    last.columns === columns &&
    last.field.length === columns * grid.rows;
  if (!isAlike) return { parts, columns, field: wholeField(parts, grid) };
  const changed = roundChanges(parts, last.parts);
  if (!changed) return { parts, columns, field: last.field };
  const field = last.field.slice();
  for (let row = changed.top; row < changed.top + changed.rows; row++) {
    const start = row * columns + changed.left;
    field.fill(0, start, start + changed.columns);
  }
  lay(parts, field, grid, changed);
  return { parts, columns, field };
}

type Cells = Omit<PartOfField, 'strengths'>;

/** Adds what the parts have in some of the cells, part by part. */
function lay(parts: Parts, field: Float64Array, grid: FieldGrid, within: Cells): void {
  const lastRow = within.top + within.rows;
  const lastColumn = within.left + within.columns;
  for (const part of parts) {
    if (!part) continue;
    const { strengths } = part;
    const bottom = Math.min(part.top + part.rows, lastRow);
    const from = Math.max(part.left, within.left);
    const to = Math.min(part.left + part.columns, lastColumn);
    for (let row = Math.max(part.top, within.top); row < bottom; row++) {
      const start = row * grid.columns;
      const own = (row - part.top) * part.columns - part.left;
      for (let column = from; column < to; column++) {
        field[start + column] = (field[start + column] as number) + (strengths[own + column] as number);
      }
    }
  }
}

/** The rectangle of cells round all parts that are others than those at their places before. */
function roundChanges(parts: Parts, before: Parts): Cells | undefined {
  let [left, top, right, bottom] = [Infinity, Infinity, 0, 0];
  const take = (part: PartOfField | undefined): void => {
    if (!part) return;
    left = Math.min(left, part.left);
    top = Math.min(top, part.top);
    right = Math.max(right, part.left + part.columns);
    bottom = Math.max(bottom, part.top + part.rows);
  };
  parts.forEach((part, index) => {
    if (part === before[index]) return;
    take(part);
    take(before[index]);
  });
  return right > left && bottom > top ? { left, top, columns: right - left, rows: bottom - top } : undefined;
}

const boxes = new WeakMap<readonly BorderStretch[], Box>();

/** The upright box round the middles of stretches, kept as long as they are. */
export function boxOfStretches(stretches: readonly BorderStretch[]): Box {
  const known = boxes.get(stretches);
  if (known) return known;
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { at } of stretches) {
    left = Math.min(left, at.x);
    top = Math.min(top, at.y);
    right = Math.max(right, at.x);
    bottom = Math.max(bottom, at.y);
  }
  const box = { left, top, right, bottom };
  boxes.set(stretches, box);
  return box;
}

function cellsReached(
  stretches: readonly BorderStretch[],
  { columns, rows, cellWidth, cellHeight }: FieldGrid,
  reach: number,
): Cells | undefined {
  if (stretches.length === 0) return undefined;
  const box = boxOfStretches(stretches);
  const left = Math.max(0, Math.floor((box.left - reach) / cellWidth));
  const top = Math.max(0, Math.floor((box.top - reach) / cellHeight));
  const right = Math.min(columns, Math.floor((box.right + reach) / cellWidth) + 1);
  const bottom = Math.min(rows, Math.floor((box.bottom + reach) / cellHeight) + 1);
  return { left, top, columns: right - left, rows: bottom - top };
}

function summedUp(steps: Float64Array, { left, top, columns, rows }: Cells, grid: FieldGrid): Float64Array {
  const sums = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const start = (top + row) * (grid.columns + 1) + left;
    let sum = 0;
    for (let column = 0; column < columns; column++) {
      sum += steps[start + column] as number;
      // Where runs have ended, rounding leaves a trace.
      sums[row * columns + column] = Math.max(0, sum);
    }
  }
  return sums;
}
