import type { PartOfField, Rows } from './field.js';
import type { FieldGrid } from './grid.js';

/** What some stretches add to a field, laid in all rows or in some. */
export type Laid = (only?: Rows) => PartOfField | undefined;

/**
 * A field as it is with some stretches weighing otherwise: only what they add to it is another. It is laid where it is
 * looked at, as most trials are over after one cell.
 */
export class TriedField {
  readonly #now: Float64Array;
  readonly #grid: FieldGrid;
  readonly #before: PartOfField | undefined;
  readonly #after: Laid;
  #whole: Float64Array | undefined;
  readonly #cells = new Map<number, number>();

  /**
   * @param now the field as it is
   * @param before what these stretches add to it
   * @param after what they add to it instead
   */
  constructor(now: Float64Array, grid: FieldGrid, before: PartOfField | undefined, after: Laid) {
    this.#now = now;
    this.#grid = grid;
    this.#before = before;
    this.#after = after;
  }

  /** The strength at every cell of the grid, row by row. */
  get whole(): Float64Array {
    if (this.#whole) return this.#whole;
    const field = this.#now.slice();
    add(field, this.#grid, this.#before, -1);
    add(field, this.#grid, this.#after(), 1);
    return (this.#whole = field);
  }

  /** The strength at one cell. */
  at(cell: number): number {
    const known = this.#cells.get(cell) ?? this.strongestAmong([cell]);
    this.#cells.set(cell, known);
    return known;
  }

  /** The greatest strength at some cells, which are told row by row. */
  strongestAmong(cells: readonly number[]): number {
    const { columns } = this.#grid;
    if (this.#whole) return strongestAmong(cells, this.#whole);
    const top = Math.floor((cells[0] ?? 0) / columns);
    const bottom = Math.floor((cells.at(-1) ?? 0) / columns);
    const after = this.#after({ top, rows: bottom - top + 1 });
    let most = 0;
    for (const cell of cells) {
      const row = Math.floor(cell / columns);
      const column = cell - row * columns;
      const without = Math.max(0, (this.#now[cell] as number) - strengthAt(this.#before, row, column));
      most = Math.max(most, without + strengthAt(after, row, column));
    }
    return most;
  }
}

/** The greatest strength at some cells of a whole field. */
export function strongestAmong(cells: readonly number[], field: Float64Array): number {
  let most = 0;
  for (const cell of cells) most = Math.max(most, field[cell] as number);
  return most;
}

function strengthAt(part: PartOfField | undefined, row: number, column: number): number {
  if (!part) return 0;
  const down = row - part.top;
  const across = column - part.left;
  if (down < 0 || down >= part.rows || across < 0 || across >= part.columns) return 0;
  return part.strengths[down * part.columns + across] as number;
}

function add(field: Float64Array, grid: FieldGrid, part: PartOfField | undefined, sign: 1 | -1): void {
  if (!part) return;
  const { left, top, columns, rows, strengths } = part;
  for (let row = 0; row < rows; row++) {
    const start = (top + row) * grid.columns + left;
    const own = row * columns;
    for (let column = 0; column < columns; column++) {
      const amount = sign * (strengths[own + column] as number);
      // What is taken away again leaves a trace of rounding.
      field[start + column] = Math.max(0, (field[start + column] as number) + amount);
    }
  }
}
