import { type Runs, runsOf } from './runs.js';

/** Cells on a side of a block: a place in the middle of a region need not be found to the cell. */
const BLOCK = 4;

/** A raster of cells over the canvas, each in a field. */
export interface Cells {
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the upper left. */
  readonly fields: Int32Array;
}

/** What is kept of such cells, a tenth of them in size. */
export interface FieldRaster {
  readonly columns: number;
  readonly rows: number;
  /** Cells of one field in one row. */
  readonly runs: Runs;
  /** The first run of each row. */
  readonly firstRuns: Int32Array;
  /** The cells that each field reaches to. */
  readonly extents: Extents;
  readonly blocks: Blocks;
}

/** By field, all included; `left` is beyond `right` for a field without a cell. */
export interface Extents {
  readonly left: Int32Array;
  readonly top: Int32Array;
  readonly right: Int32Array;
  readonly bottom: Int32Array;
}

/** Blocks of cells; what is left over on the right and below belongs to none. */
export interface Blocks {
  readonly columns: number;
  readonly rows: number;
  /** The field of all cells of a block; below zero, `-1 - i`, for one that is shared by the fields `shared[i]`. */
  readonly fieldOf: Int32Array;
  readonly shared: readonly (readonly number[])[];
  /** Cells on a side. */
  readonly side: number;
}

/** @param fields how many there are */
export function rasterOf(cells: Cells, fields: number): FieldRaster {
  const { columns, rows } = cells;
  const runs = runsOf({ columns, rows, labels: cells.fields });
  const firstRuns = new Int32Array(rows);
  const extents: Extents = {
    left: new Int32Array(fields).fill(columns),
    top: new Int32Array(fields).fill(rows),
    right: new Int32Array(fields).fill(-1),
    bottom: new Int32Array(fields).fill(-1),
  };
  const { left, top, right, bottom } = extents;
  let row = -1;
  for (let run = 0; run < runs.labels.length; run++) {
    const start = runs.starts[run] as number;
    if (start === (row + 1) * columns) firstRuns[++row] = run;
    const from = start - row * columns;
    const to = (runs.starts[run + 1] as number) - row * columns - 1;
    const field = runs.labels[run] as number;
    if (from < (left[field] as number)) left[field] = from;
    if (to > (right[field] as number)) right[field] = to;
    if ((top[field] as number) === rows) top[field] = row;
    bottom[field] = row;
  }
  return { columns, rows, runs, firstRuns, extents, blocks: blocksOf(cells) };
}

function blocksOf({ columns, rows, fields }: Cells): Blocks {
  const across = Math.floor(columns / BLOCK);
  const down = Math.floor(rows / BLOCK);
  const fieldOf = new Int32Array(across * down);
  const shared: (readonly number[])[] = [];
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++) {
      const first = row * BLOCK * columns + column * BLOCK;
      const field = fields[first] as number;
      let isOne = true;
      for (let y = 0; isOne && y < BLOCK; y++) {
        const start = first + y * columns;
        for (let x = 0; x < BLOCK; x++) if (fields[start + x] !== field) isOne = false;
      }
      fieldOf[row * across + column] = isOne ? field : -1 - shared.length;
      if (!isOne) shared.push(fieldsIn(fields, first, columns));
    }
  }
  return { columns: across, rows: down, fieldOf, shared, side: BLOCK };
}

/** The fields of the block that begins at a cell. */
function fieldsIn(fields: Int32Array, first: number, columns: number): readonly number[] {
  const found: number[] = [];
  for (let cell = 0; cell < BLOCK * BLOCK; cell++) {
    const field = fields[first + Math.floor(cell / BLOCK) * columns + (cell % BLOCK)] as number;
    if (!found.includes(field)) found.push(field);
  }
  return found;
}
