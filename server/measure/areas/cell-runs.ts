import type { Ring } from '../../plan/geometry/outline.js';
import type { CanvasSize } from './areas.js';

/** Equal cells over a canvas. */
export interface CellGrid extends CanvasSize {
  readonly columns: number;
  readonly rows: number;
}

/** The cells whose middles lie in the rings, as runs: index of the first cell, index behind the last, and so on. */
export function cellRuns(rings: readonly Ring[], grid: CellGrid): Int32Array {
  const { columns, rows } = grid;
  const crossings = crossingsByRow(rings, grid);
  const runs: number[] = [];
  for (const [row, across] of crossings) {
    across.sort((a, b) => a - b);
    for (let i = 0; i + 1 < across.length; i += 2) {
      const from = Math.max(0, Math.ceil((across[i] as number) - 0.5));
      const to = Math.min(columns, Math.ceil((across[i + 1] as number) - 0.5));
      if (from < to && row >= 0 && row < rows) runs.push(row * columns + from, row * columns + to);
    }
  }
  return Int32Array.from(runs);
}

const kept = new WeakMap<readonly Ring[], CellGrid & { readonly runs: Int32Array }>();

/** The same, kept as long as the list of rings. */
export function keptCellRuns(rings: readonly Ring[], grid: CellGrid): Int32Array {
  const { width, height, columns, rows } = grid;
  const last = kept.get(rings);
  if (last?.width === width && last.height === height && last.columns === columns && last.rows === rows)
    return last.runs;
  const runs = cellRuns(rings, grid);
  kept.set(rings, { width, height, columns, rows, runs });
  return runs;
}

/** Where borders cross the middle line of each row, in cells from the left. */
function crossingsByRow(
  rings: readonly Ring[],
  { width, height, columns, rows }: CellGrid,
): ReadonlyMap<number, number[]> {
  const crossings = new Map<number, number[]>();
  for (const ring of rings) {
    const count = ring.length;
    for (let i = 0; i + 1 < count; i += 2) {
      const next = (i + 2) % count;
      const ax = ((ring[i] as number) / width) * columns;
      const ay = ((ring[i + 1] as number) / height) * rows;
      const bx = ((ring[next] as number) / width) * columns;
      const by = ((ring[next + 1] as number) / height) * rows;
      const first = Math.max(0, Math.ceil(Math.min(ay, by) - 0.5));
      const last = Math.min(rows, Math.ceil(Math.max(ay, by) - 0.5));
      for (let row = first; row < last; row++) {
        const x = ax + ((row + 0.5 - ay) / (by - ay)) * (bx - ax);
        const known = crossings.get(row);
        if (known) known.push(x);
        else crossings.set(row, [x]);
      }
    }
  }
  return crossings;
}

/** Writes a label into the cells of runs as `cellRuns` gives them. */
export function lay(labels: Int32Array, runs: Int32Array, label: number): void {
  for (let i = 0; i + 1 < runs.length; i += 2) labels.fill(label, runs[i], runs[i + 1]);
}
