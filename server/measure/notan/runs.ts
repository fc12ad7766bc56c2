import type { LabelMap } from '../areas/label-map.js';

export { Groups } from '../../plan/geometry/groups.js';

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
