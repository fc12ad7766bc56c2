import { sameInputs } from '../memory.js';
import { type FieldGrid, REACH } from './grid.js';

/** Weaker places than this part of the strongest one are not told. */
const WEAKEST = 0.1;
/** Strengths within this part of the strongest are alike. */
export const ALIKE = 1e-6;
/**
 * Part of the strongest: more than what two strengths of one class differ by, so that no weaker place moves a stronger
 * one.
 */
const BELOW = 1e-4;

interface Candidates {
  /** Cells that may be the strongest of all within the reach, strongest first. */
  readonly cells: readonly number[];
  readonly isPeak: (cell: number) => boolean;
  readonly strongest: number;
}

/**
 * The cells of a field that may be its places, none weaker than a tenth of the strongest, nor much weaker than `least`.
 */
export function candidates(
  field: Float64Array,
  grid: FieldGrid,
  diagonal: number,
  least: number,
): Candidates {
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

/**
 * The cells of at least some strength beside which none is clearly stronger: a quick look that spares most the long
 * one.
 */
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

/**
 * Which of two cells comes first: the stronger, of those alike the one in the midst of more, then the one nearer to the
 * middle.
 */
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
    // Most are told apart without their classes.
    const more = (field[one] as number) - (field[other] as number);
    if (Math.abs(more) > 2 * ALIKE * strongest) return more;
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
