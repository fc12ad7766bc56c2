import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { CanvasSize, VisibleAreas } from './areas.js';
import { type CellGrid, keptCellRuns, lay } from './cell-runs.js';
import { fromBack, type OfSeen } from './seen-from-back.js';
import { ringPieces } from './ring-pieces.js';
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
  /** The cells that all areas missed by rounding, counted row by row: each is given to its neighbour. */
  readonly gaps: readonly number[];
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
  grid: CellGrid,
  memory: Memory,
  last: Mapped | undefined,
): Mapped {
  const { width, height } = grid;
  const before = last?.grid.width === width && last.grid.height === height ? last : undefined;
  const laid = fromBack(areas, order, before?.laid, (area, visible): Runs => {
    if (area !== GROUND) memory.count('label runs');
    const parts = area === GROUND ? ringPieces(visible).map(({ rings }) => rings) : [visible];
    return { area, visible, parts: parts.map((rings) => keptCellRuns(rings, grid)) };
  });
  if (before?.laid === laid) return before;
  return { grid, laid, map: asMap(labelsOf(laid, grid, before), grid) };
}

/** By itself, so that it keeps nothing of an earlier map. */
function asMap({ labels, gaps }: Pick<LabelMap, 'labels' | 'gaps'>, grid: CellGrid): LabelMap {
  const { width, height, columns, rows } = grid;
  return {
    columns,
    rows,
    labels,
    gaps,
    areaAt: ({ x, y }) => {
      if (!(x >= 0 && x <= width && y >= 0 && y <= height)) return undefined;
      const column = Math.min(columns - 1, Math.floor((x / width) * columns));
      const row = Math.min(rows - 1, Math.floor((y / height) * rows));
      return labels[row]?.[column];
    },
  };
}

/** The cells of an object, or of `GROUND`. */
interface Runs extends OfSeen {
  /** Runs of cells; of the ground those of each part by itself, as most of them stay when an object moves. */
  readonly parts: readonly Int32Array[];
}

/** A map and the runs that it was laid of, from back to front. */
interface Mapped {
  readonly grid: CellGrid;
  readonly laid: readonly Runs[];
  readonly map: LabelMap;
}

/** The labels of all runs laid over each other: only in those rows anew in which a run is another than last time. */
function labelsOf(
  laid: readonly Runs[],
  { columns, rows }: CellGrid,
  last: Mapped | undefined,
): Pick<LabelMap, 'labels' | 'gaps'> {
  const isAlike =
    last?.map.columns === columns &&
    last.map.rows === rows &&
    last.laid.length === laid.length &&
    laid.every(({ area }, index) => area === last.laid[index]?.area);
  if (isAlike) {
    const [from, to] = cellsChanged(laid, last.laid, columns);
    const changed = new Int32Array(to - from).fill(UNSET);
    for (const { area, parts } of laid) {
      for (const runs of parts) {
        for (let i = 0; i + 1 < runs.length; i += 2) {
          const start = runs[i] as number;
          if (start >= from && start < to) changed.fill(area, start - from, (runs[i + 1] as number) - from);
        }
      }
    }
    // What closes a gap may lie in the row above.
    const { labels, gaps } = last.map;
    const isGapNear = gaps.some((gap) => gap >= from && gap < to + columns);
    if (!isGapNear && !changed.includes(UNSET)) {
      const rowsNow = labels.slice();
      rowsNow.splice(from / columns, (to - from) / columns, ...inRows(changed, columns));
      return { labels: rowsNow, gaps };
    }
  }
  const labels = new Int32Array(columns * rows).fill(UNSET);
  for (const { area, parts } of laid) for (const runs of parts) lay(labels, runs, area);
  const gaps = closedGaps(labels, columns);
  return { labels: inRows(labels, columns), gaps };
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
  laid.forEach(({ parts }, index) => {
    const earlier = before[index]?.parts ?? [];
    if (earlier === parts) return;
    const [come, gone] = [without(parts, earlier), without(earlier, parts)];
    const [now, was] = [come[0], gone[0]];
    if (now && was && come.length === 1 && gone.length === 1) {
      const { start, end, endBefore } = whereOther(now, was);
      take(now, start, end);
      take(was, start, endBefore);
      return;
    }
    for (const runs of [...come, ...gone]) take(runs, 0, runs.length);
  });
  if (last < 0) return [0, 0];
  return [Math.floor(first / columns) * columns, (Math.floor(last / columns) + 1) * columns];
}

function without(parts: readonly Int32Array[], others: readonly Int32Array[]): readonly Int32Array[] {
  const left = new Set(parts);
  for (const part of others) left.delete(part);
  return [...left];
}

/** Where runs are others than before: they begin and end alike. */
function whereOther(
  runs: Int32Array,
  before: Int32Array,
): { readonly start: number; readonly end: number; readonly endBefore: number } {
  const alike = (one: number, other: number): boolean =>
    runs[one] === before[other] && runs[one + 1] === before[other + 1];
  let start = 0;
  let [end, endBefore] = [runs.length, before.length];
  while (start < end && start < endBefore && alike(start, start)) start += 2;
  while (end > start && endBefore > start && alike(end - 2, endBefore - 2)) {
    end -= 2;
    endBefore -= 2;
  }
  return { start, end, endBefore };
}

/**
 * A cell whose middle lies on a border to the last digit can be missed by both sides: it goes to its neighbour.
 * @returns those cells
 */
function closedGaps(labels: Int32Array, columns: number): readonly number[] {
  const gaps: number[] = [];
  for (let gap = labels.indexOf(UNSET); gap >= 0; gap = labels.indexOf(UNSET, gap + 1)) {
    const before = gap % columns > 0 ? labels[gap - 1] : undefined;
    const after = labels.subarray(gap + 1, gap + columns - (gap % columns)).find((label) => label !== UNSET);
    labels[gap] = before ?? after ?? (gap >= columns ? (labels[gap - columns] as number) : GROUND);
    gaps.push(gap);
  }
  return gaps;
}
