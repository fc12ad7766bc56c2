import type { Ring } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { CanvasSize, VisibleAreas } from './areas.js';
import { GROUND } from '../borders/borders.js';
import { keptOrder } from '../kept-lists.js';
import type { Memory } from '../memory.js';

/** Who is seen where: the visible areas on a raster of equal cells over the canvas. */
export interface LabelMap {
  readonly columns: number;
  readonly rows: number;
  /**
   * For each row from the top its cells from the left: the index in `plan.objects` of what is seen at a cell's middle,
   * or `GROUND`. A row is the same one while nothing in it changes.
   */
  readonly labels: readonly Int32Array[];
  /** Whether every cell is where its area is; one that all areas missed by rounding goes to its neighbour. */
  readonly isWhole: boolean;
  /** What is seen in the cell that holds a place; nothing off the canvas. */
  areaAt(point: Point): number | undefined;
}

/**
 * Cells on the long side. A power of two, so that the middle of a cell lies on a border only where a plan gives a
 * length in 2048ths of the canvas: nobody does, and so no border falls to one side or the other by chance.
 */
const LONG_SIDE = 1024;
/** The count on the short side is a multiple of it, for the same reason. */
const MULTIPLE = 32;
const UNSET = -2;

/** How many cells across and down a canvas is divided into; they are square within some percent. */
function labelGrid({ width, height }: CanvasSize): {
  readonly columns: number;
  readonly rows: number;
} {
  const short = (part: number) => MULTIPLE * Math.max(1, Math.round((LONG_SIDE * part) / MULTIPLE));
  return width >= height
    ? { columns: LONG_SIDE, rows: short(height / width) }
    : { columns: short(width / height), rows: LONG_SIDE };
}

/**
 * The map of a plan's visible areas, 1,024 cells on the long side. The runs of cells of each area are taken over as
 * long as the same of it is seen, and the map itself is kept as long as all is; asking twice costs nothing.
 */
export function labelMap(plan: Plan, areas: VisibleAreas, memory: Memory): LabelMap {
  const { width, height } = plan.canvas;
  const order = keptOrder(plan, memory);
  const inputs = [areas, width, height, order];
  return memory.recall('label map of areas', '', inputs, (last: Mapped | undefined) =>
    mapOf(order, areas, { width, height, ...labelGrid(plan.canvas) }, memory, last),
  ).map;
}

function mapOf(
  order: readonly number[],
  areas: VisibleAreas,
  grid: Grid,
  memory: Memory,
  last: Mapped | undefined,
): Mapped {
  const { width, height } = grid;
  const before = last?.grid.width === width && last.grid.height === height ? last : undefined;
  const laid: Runs[] = [];
  const add = (object: number, visible: readonly Ring[]): void => {
    const earlier = before?.laid[laid.length];
    const isSame = earlier?.object === object && earlier.visible === visible;
    const runs = () => (object === GROUND ? cellRuns(visible, grid) : runsOf(visible, grid, memory));
    laid.push(isSame ? earlier : { object, visible, runs: runs() });
  };
  add(GROUND, areas.bare);
  order.forEach((object, position) => {
    const visible = areas.layers[position]?.visible;
    if (visible && visible.length > 0) add(object, visible);
  });
  // What stays bare follows from what is seen.
  const isSame =
    before?.laid.length === laid.length &&
    laid.every((own, place) => place === 0 || own === before.laid[place]);
  if (isSame) return before;
  return { grid, laid, map: asMap(labelsOf(laid, grid, before), grid) };
}

/** By itself, so that it keeps nothing of an earlier map. */
function asMap({ labels, isWhole }: Pick<LabelMap, 'labels' | 'isWhole'>, grid: Grid): LabelMap {
  const { width, height, columns, rows } = grid;
  return {
    columns,
    rows,
    labels,
    isWhole,
    areaAt: ({ x, y }) => {
      if (!(x >= 0 && x <= width && y >= 0 && y <= height)) return undefined;
      const column = Math.min(columns - 1, Math.floor((x / width) * columns));
      const row = Math.min(rows - 1, Math.floor((y / height) * rows));
      return labels[row]?.[column];
    },
  };
}

const keptRuns = new WeakMap<readonly Ring[], CanvasSize & { readonly runs: Int32Array }>();

/** The runs of what is seen of an area, kept as long as that: the number of cells follows from the size of the canvas. */
function runsOf(visible: readonly Ring[], grid: Grid, memory: Memory): Int32Array {
  const { width, height } = grid;
  const known = keptRuns.get(visible);
  if (known?.width === width && known.height === height) return known.runs;
  const runs = cellRuns(visible, grid);
  keptRuns.set(visible, { width, height, runs });
  memory.count('label runs');
  return runs;
}

/** The runs of cells of an object, or of `GROUND`. */
interface Runs {
  readonly object: number;
  readonly visible: readonly Ring[];
  readonly runs: Int32Array;
}

/** A map and the runs that it was laid of, from back to front. */
interface Mapped {
  readonly grid: Grid;
  readonly laid: readonly Runs[];
  readonly map: LabelMap;
}

/** The labels of all runs laid over each other: only in those rows anew in which a run is another than last time. */
function labelsOf(
  laid: readonly Runs[],
  { columns, rows }: Grid,
  last: Mapped | undefined,
): Pick<LabelMap, 'labels' | 'isWhole'> {
  const isAlike =
    last?.map.isWhole === true &&
    last.map.columns === columns &&
    last.map.rows === rows &&
    last.laid.length === laid.length &&
    laid.every(({ object }, index) => object === last.laid[index]?.object);
  if (isAlike) {
    const [from, to] = cellsChanged(laid, last.laid, columns);
    const changed = new Int32Array(to - from).fill(UNSET);
    for (const { object, runs } of laid) {
      for (let i = 0; i + 1 < runs.length; i += 2) {
        const start = runs[i] as number;
        if (start >= from && start < to) changed.fill(object, start - from, (runs[i + 1] as number) - from);
      }
    }
    // What closes a gap may lie in the row above.
    if (!changed.includes(UNSET)) {
      const labels = last.map.labels.slice();
      labels.splice(from / columns, (to - from) / columns, ...inRows(changed, columns));
      return { labels, isWhole: true };
    }
  }
  const labels = new Int32Array(columns * rows).fill(UNSET);
  for (const { object, runs } of laid) lay(labels, runs, object);
  return { isWhole: !closeGaps(labels, columns), labels: inRows(labels, columns) };
}

/** Each row for itself, so that none keeps the memory of others. */
function inRows(labels: Int32Array, columns: number): readonly Int32Array[] {
  return Array.from({ length: labels.length / columns }, (_, row) =>
    labels.slice(row * columns, (row + 1) * columns),
  );
}

/** The first cell of the rows in which runs differ, and the one behind their last. */
function cellsChanged(
  laid: readonly Runs[],
  before: readonly Runs[],
  columns: number,
): readonly [from: number, to: number] {
  let [first, last] = [Infinity, -1];
  const take = (runs: Int32Array, from: number, to: number): void => {
    for (let i = from; i < to; i += 2) {
      first = Math.min(first, runs[i] as number);
      last = Math.max(last, runs[i] as number);
    }
  };
  laid.forEach(({ runs }, index) => {
    const earlier = before[index]?.runs ?? new Int32Array(0);
    if (earlier === runs) return;
    const alike = (one: number, other: number): boolean =>
      runs[one] === earlier[other] && runs[one + 1] === earlier[other + 1];
    let start = 0;
    let [end, endBefore] = [runs.length, earlier.length];
    while (start < end && start < endBefore && alike(start, start)) start += 2;
    while (end > start && endBefore > start && alike(end - 2, endBefore - 2)) {
      end -= 2;
      endBefore -= 2;
    }
    take(runs, start, end);
    take(earlier, start, endBefore);
  });
  if (last < 0) return [0, 0];
  return [Math.floor(first / columns) * columns, (Math.floor(last / columns) + 1) * columns];
}

interface Grid extends CanvasSize {
  readonly columns: number;
  readonly rows: number;
}

/** The cells whose middles lie in the rings, as runs: index of the first cell, index behind the last, and so on. */
export function cellRuns(rings: readonly Ring[], grid: Grid): Int32Array {
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

/** Where borders cross the middle line of each row, in cells from the left. */
function crossingsByRow(
  rings: readonly Ring[],
  { width, height, columns, rows }: Grid,
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

/**
 * A cell whose middle lies on a border to the last digit can be missed by both sides: it goes to its neighbour.
 * @returns whether there was any
 */
function closeGaps(labels: Int32Array, columns: number): boolean {
  let gap = labels.indexOf(UNSET);
  const isAny = gap >= 0;
  while (gap >= 0) {
    const before = gap % columns > 0 ? labels[gap - 1] : undefined;
    const after = labels.subarray(gap + 1, gap + columns - (gap % columns)).find((label) => label !== UNSET);
    labels[gap] = before ?? after ?? (gap >= columns ? (labels[gap - columns] as number) : GROUND);
    gap = labels.indexOf(UNSET, gap + 1);
  }
  return isAny;
}
