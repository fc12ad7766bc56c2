import type { Box, Point } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import type { BorderStretch } from '../borders/borders.js';

/** Part of the diagonal within which borders are gathered round a place. */
export const REACH = 0.08;
/**
 * Part of the diagonal over which a stretch passes from counting to not counting, half of it on either side of the
 * reach: as long as a stretch, so that what is gathered changes smoothly from place to place.
 */
const PASSAGE = 0.005;
const LONG_SIDE = 96;

/** A grid of equal cells over the canvas. */
export interface FieldGrid {
  readonly columns: number;
  readonly rows: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
}

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

/** 96 cells on the long side, square as nearly as whole numbers allow. */
export function fieldGrid({ width, height }: Pick<Canvas, 'width' | 'height'>): FieldGrid {
  const long = Math.max(width, height);
  const columns = Math.max(1, Math.round((LONG_SIDE * width) / long));
  const rows = Math.max(1, Math.round((LONG_SIDE * height) / long));
  return { columns, rows, cellWidth: width / columns, cellHeight: height / rows };
}

/** The middle of a cell, canvas units. */
export function middleOf({ columns, cellWidth, cellHeight }: FieldGrid, cell: number): Point {
  const column = cell % columns;
  return { x: (column + 0.5) * cellWidth, y: ((cell - column) / columns + 0.5) * cellHeight };
}

/** How much of a stretch counts at a distance from its middle, 0 to 1; all lengths in the same unit. */
export function counted(distance: number, diagonal: number): number {
  return Math.min(1, Math.max(0, 0.5 + (REACH * diagonal - distance) / (PASSAGE * diagonal)));
}

/**
 * What is gathered at the middles of all cells that any of the stretches reaches: the sum over the stretches of what
 * counts x length in diagonals x weight; nothing when none of them weighs anything.
 * Each stretch adds one run of cells to each row that it reaches, so the work grows with stretches x rows reached.
 */
export function partOfField(
  stretches: readonly BorderStretch[],
  weigh: Weigh,
  grid: FieldGrid,
  diagonal: number,
): PartOfField | undefined {
  const heavy = stretches.filter((stretch) => weigh(stretch) > 0);
  const whole = heavy.length === stretches.length;
  const outer = (REACH + PASSAGE / 2) * diagonal;
  const inner = (REACH - PASSAGE / 2) * diagonal;
  const area = cellsReached(whole ? stretches : heavy, grid, outer);
  if (!area) return undefined;
  const { left, top, columns, rows } = area;
  // Differences from cell to cell at first, one column more than cells.
  const steps = new Float64Array((columns + 1) * rows);
  const { cellWidth, cellHeight } = grid;
  for (const stretch of heavy) {
    const { x, y } = stretch.at;
    const amount = (stretch.length * weigh(stretch)) / diagonal;
    const lastRow = Math.min(top + rows - 1, Math.floor((y + outer) / cellHeight));
    for (let row = Math.max(top, Math.floor((y - outer) / cellHeight)); row <= lastRow; row++) {
      const down = (row + 0.5) * cellHeight - y;
      if (Math.abs(down) >= outer) continue;
      const widest = Math.sqrt(outer * outer - down * down);
      const from = Math.max(left, columnAt(x - widest, cellWidth));
      const to = Math.min(left + columns, columnAt(x + widest, cellWidth));
      let [wholeFrom, wholeTo] = [to, to];
      if (Math.abs(down) < inner) {
        const whole = Math.sqrt(inner * inner - down * down);
        wholeFrom = Math.min(to, Math.max(from, columnAt(x - whole, cellWidth)));
        wholeTo = Math.max(wholeFrom, Math.min(to, columnAt(x + whole, cellWidth)));
      }
      const start = (row - top) * (columns + 1) - left;
      if (wholeFrom < wholeTo) add(steps, start + wholeFrom, start + wholeTo, amount);
      for (let cell = from; cell < to; cell++) {
        if (cell === wholeFrom) cell = wholeTo;
        if (cell >= to) break;
        const across = (cell + 0.5) * cellWidth - x;
        const part = amount * counted(Math.sqrt(across * across + down * down), diagonal);
        add(steps, start + cell, start + cell + 1, part);
      }
    }
  }
  return { left, top, columns, rows, strengths: summedUp(steps, columns, rows) };
}

/** The first column whose middle lies no farther left than a place. */
function columnAt(x: number, cellWidth: number): number {
  return Math.ceil(x / cellWidth - 0.5);
}

function add(steps: Float64Array, from: number, to: number, amount: number): void {
  steps[from] = (steps[from] as number) + amount;
  steps[to] = (steps[to] as number) - amount;
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
  const part = isAlike ? earlier.part : partOfField(stretches, weigh, grid, diagonal);
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

function isSameGrid(one: FieldGrid, other: FieldGrid): boolean {
  return (
    one.columns === other.columns &&
    one.rows === other.rows &&
    one.cellWidth === other.cellWidth &&
    one.cellHeight === other.cellHeight
  );
}

type Parts = readonly (PartOfField | undefined)[];

/** The parts laid over each other, at every cell of the grid, row by row. */
export function wholeField(parts: Parts, grid: FieldGrid): Float64Array {
  const field = new Float64Array(grid.columns * grid.rows);
  lay(parts, field, grid, { left: 0, top: 0, columns: grid.columns, rows: grid.rows });
  return field;
}

/** A whole field with the parts that it was laid of. */
export interface LaidField {
  readonly parts: Parts;
  readonly columns: number;
  readonly field: Float64Array;
}

/** `wholeField`, bit for bit, for which only those cells are laid anew that a part reaches which is another than last time. */
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

function summedUp(steps: Float64Array, columns: number, rows: number): Float64Array {
  const sums = new Float64Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    let sum = 0;
    for (let column = 0; column < columns; column++) {
      sum += steps[row * (columns + 1) + column] as number;
      // Where runs have ended, rounding leaves a trace.
      sums[row * columns + column] = Math.max(0, sum);
    }
  }
  return sums;
}
