import type { LabelMap } from '../areas/label-map.js';

/** A label map as runs of cells of one label in one row, row by row. */
export interface Runs {
  /** First cell of each run, and the number of all cells behind the last. */
  readonly starts: Int32Array;
  readonly labels: Int32Array;
  /** First run of each row, and the number of all runs behind the last. */
  readonly rows: Int32Array;
  readonly columns: number;
}

export function runsOf({ columns, rows, labels }: Pick<LabelMap, 'columns' | 'rows' | 'labels'>): Runs {
  const starts: number[] = [];
  const rowStarts = new Int32Array(rows + 1);
  for (let row = 0; row < rows; row++) {
    rowStarts[row] = starts.length;
    const end = (row + 1) * columns;
    for (let cell = row * columns; cell < end; cell++) {
      if (cell === row * columns || labels[cell] !== labels[cell - 1]) starts.push(cell);
    }
  }
  rowStarts[rows] = starts.length;
  return {
    starts: Int32Array.from([...starts, rows * columns]),
    labels: Int32Array.from(starts, (cell) => labels[cell] as number),
    rows: rowStarts,
    columns,
  };
}

/** The run that holds a cell. */
export function runAt({ starts }: Pick<Runs, 'starts'>, cell: number): number {
  let first = 0;
  let behind = starts.length - 1;
  while (behind - first > 1) {
    const middle = (first + behind) >> 1;
    if ((starts[middle] as number) <= cell) first = middle;
    else behind = middle;
  }
  return first;
}

/**
 * For each run the first run of what it hangs together with: cells of one label that have a side in common, not only
 * a corner.
 */
export function joinedRuns(runs: Runs): Int32Array {
  const { labels } = runs;
  const groups = new Groups(labels.length);
  eachRunBelow(runs, (above, below) => {
    if (labels[above] === labels[below]) groups.join(above, below);
  });
  return Int32Array.from(labels, (_, run) => groups.firstOf(run));
}

/** Every two runs of different labels that lie beside or below each other, and the sides of cells they have in common. */
export function eachMeeting(runs: Runs, visit: (one: number, other: number, cells: number) => void): void {
  const { labels, rows } = runs;
  for (let row = 0; row + 1 < rows.length; row++) {
    const end = rows[row + 1] as number;
    for (let run = (rows[row] as number) + 1; run < end; run++) visit(run - 1, run, 1);
  }
  eachRunBelow(runs, (above, below, cells) => {
    if (labels[above] !== labels[below]) visit(above, below, cells);
  });
}

/** Every run with each run below it, and over how many cells. */
function eachRunBelow(
  { starts, rows, columns }: Runs,
  visit: (above: number, below: number, cells: number) => void,
): void {
  for (let row = 0; row + 2 < rows.length; row++) {
    let above = rows[row] as number;
    let below = rows[row + 1] as number;
    const lastAbove = below;
    const lastBelow = rows[row + 2] as number;
    while (above < lastAbove && below < lastBelow) {
      const from = Math.max(starts[above] as number, (starts[below] as number) - columns);
      const endAbove = starts[above + 1] as number;
      const endBelow = (starts[below + 1] as number) - columns;
      visit(above, below, Math.min(endAbove, endBelow) - from);
      if (endAbove <= endBelow) above++;
      if (endBelow <= endAbove) below++;
    }
  }
}

/** Things joined into groups; each group goes by the first of its things. */
export class Groups {
  readonly #next: Int32Array;

  constructor(things: number) {
    this.#next = Int32Array.from({ length: things }, (_, thing) => thing);
  }

  firstOf(thing: number): number {
    let first = thing;
    while (this.#next[first] !== first) first = this.#next[first] as number;
    let step = thing;
    while (step !== first) {
      const next = this.#next[step] as number;
      this.#next[step] = first;
      step = next;
    }
    return first;
  }

  join(one: number, other: number): void {
    const a = this.firstOf(one);
    const b = this.firstOf(other);
    this.#next[Math.max(a, b)] = Math.min(a, b);
  }
}
