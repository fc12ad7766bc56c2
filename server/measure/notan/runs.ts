import type { LabelMap } from '../areas/label-map.js';

/** A label map as runs of cells of one label in one row, row by row. */
export interface Runs {
  /** First cell of each run, and the number of all cells behind the last. */
  readonly starts: Int32Array;
  readonly labels: Int32Array;
}

export function runsOf({ columns, rows, labels }: Pick<LabelMap, 'columns' | 'rows' | 'labels'>): Runs {
  const starts: number[] = [];
  for (let row = 0; row < rows; row++) {
    const end = (row + 1) * columns;
    for (let cell = row * columns; cell < end; cell++) {
      if (cell === row * columns || labels[cell] !== labels[cell - 1]) starts.push(cell);
    }
  }
  return {
    starts: Int32Array.from([...starts, rows * columns]),
    labels: Int32Array.from(starts, (cell) => labels[cell] as number),
  };
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
