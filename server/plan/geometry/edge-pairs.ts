import { EdgeCells } from './edge-cells.js';
import type { Outline } from './outline.js';
import type { CanvasSize } from './sheet.js';

type Shape = Pick<Outline, 'rings'>;

/** Edges kept in cells, in all. */
const MOST_ENTRIES = 1_000_000;

/**
 * How many pairs of edges of different outlines pass a cell of the canvas together. Outlines cross each other there or
 * nowhere, so there are no more crossings, whatever lies over what; and an outline can be taken out and another put in.
 */
export interface EdgePairs {
  readonly canvas: CanvasSize;
  readonly outlines: readonly Shape[];
  /** For each cell how often edges pass it. */
  readonly passed: Int32Array;
  readonly entries: number;
  readonly pairs: number;
}

/** With more outlines that are others, all are looked at. */
const FEW_OTHERS = 64;

/**
 * The pairs of all outlines with each other.
 *
 * @param last those of outlines of which most may be the same ones, in the same order
 * @returns nothing where there are more than `most`, or too many edges to tell
 */
export function edgePairs(
  canvas: CanvasSize,
  outlines: readonly Shape[],
  most: number,
  last?: EdgePairs,
): EdgePairs | undefined {
  const cells = new EdgeCells(canvas);
  const others = last && othersThan(last, canvas, outlines);
  const passed = others ? last.passed.slice() : new Int32Array(cells.columns * cells.rows);
  let [pairs, entries] = others ? [last.pairs, last.entries] : [0, 0];
  for (const index of others ?? []) {
    gather(cells, last?.outlines[index] as Shape);
    addTo(passed, cells, -1);
    pairs -= pairsWith(cells, passed);
    entries -= cells.count;
  }
  for (const index of others ?? outlines.keys()) {
    gather(cells, outlines[index] as Shape);
    pairs += pairsWith(cells, passed);
    entries += cells.count;
    if (pairs > most || entries > MOST_ENTRIES) return undefined;
    addTo(passed, cells, 1);
  }
  const { width, height } = canvas;
  return { canvas: { width, height }, outlines, passed, entries, pairs };
}

/** The places of those that are others; nothing where they are many. */
function othersThan(
  { canvas, outlines: before }: EdgePairs,
  { width, height }: CanvasSize,
  outlines: readonly Shape[],
): readonly number[] | undefined {
  if (canvas.width !== width || canvas.height !== height || before.length !== outlines.length)
    return undefined;
  const others: number[] = [];
  for (let index = 0; index < outlines.length; index++) {
    if (outlines[index] === before[index]) continue;
    if (others.length === FEW_OTHERS) return undefined;
    others.push(index);
  }
  return others;
}

function gather(cells: EdgeCells, { rings }: Shape): void {
  cells.clear();
  for (const ring of rings) {
    const { length } = ring;
    for (let i = 0; i + 1 < length; i += 2) {
      const next = (i + 2) % length;
      cells.pass(
        (ring[i] as number) / cells.side,
        (ring[i + 1] as number) / cells.side,
        (ring[next] as number) / cells.side,
        (ring[next + 1] as number) / cells.side,
      );
      if (cells.count > MOST_ENTRIES) return;
    }
  }
}

function pairsWith({ cells, count }: EdgeCells, passed: Int32Array): number {
  let pairs = 0;
  for (let at = 0; at < count; at++) pairs += passed[cells[at] as number] as number;
  return pairs;
}

function addTo(passed: Int32Array, { cells, count }: EdgeCells, times: 1 | -1): void {
  for (let at = 0; at < count; at++) {
    const cell = cells[at] as number;
    passed[cell] = (passed[cell] as number) + times;
  }
}
