import type { Plan } from '../../plan/plan.js';
import { cellRuns, lay } from '../areas/cell-runs.js';
import type { VisibleAreas } from '../areas/areas.js';
import type { Memory } from '../memory.js';

/** The pixels in which an object is seen, as runs: index of the first, index behind the last, and so on. */
export interface Mask {
  /** Index into `plan.objects`. */
  readonly object: number;
  readonly runs: Int32Array;
  /** Without a rim, so that a photograph that is squared up a little off does not count what lies beside. */
  readonly inner: Int32Array;
}

export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** The rim that does not count, as a part of the longer side: two pixels of 480. */
const RIM = 2 / 480;

/** The objects that are seen, from back to front, in pixels of a picture of the whole canvas. */
export function masksOf(plan: Plan, areas: VisibleAreas, size: PixelSize, memory: Memory): readonly Mask[] {
  const { width, height } = plan.canvas;
  return plan.coveringOrder.flatMap((object, position) => {
    const visible = areas.layers[position]?.visible ?? [];
    if (visible.length === 0) return [];
    const key = `${size.width} x ${size.height}\n${plan.objects[object]?.key ?? ''}`;
    return [
      memory.recall('mask', key, [visible, object, width, height], () => {
        const runs = cellRuns(visible, { width, height, columns: size.width, rows: size.height });
        return { object, runs, inner: withoutRim(runs, size) };
      }),
    ];
  });
}

/** The pixels in which no object is seen, as runs that may go over the ends of rows. */
export function bareRuns(masks: readonly Mask[], { width, height }: PixelSize, memory: Memory): Int32Array {
  return memory.recall('bare runs', `${width} x ${height}`, [...masks], () => {
    const covered = new Int32Array(width * height);
    for (const { runs } of masks) lay(covered, runs, 1);
    const bare: number[] = [];
    for (let from = covered.indexOf(0); from >= 0; from = covered.indexOf(0, bare.at(-1))) {
      const to = covered.indexOf(1, from);
      bare.push(from, to < 0 ? covered.length : to);
    }
    return Int32Array.from(bare);
  });
}

/** What is left of runs when everything nearer to another area or the edge of the picture than the rim is taken off. */
function withoutRim(runs: Int32Array, { width, height }: PixelSize): Int32Array {
  const rim = Math.max(1, Math.round(RIM * Math.max(width, height)));
  const rows = Array.from({ length: height }, (): number[] => []);
  for (let i = 0; i + 1 < runs.length; i += 2) {
    const row = Math.floor((runs[i] as number) / width);
    const from = (runs[i] as number) - row * width + rim;
    const to = (runs[i + 1] as number) - row * width - rim;
    if (from < to) rows[row]?.push(from, to);
  }
  const kept: number[] = [];
  for (let row = rim; row + rim < height; row++) {
    let left: readonly number[] = rows[row] ?? [];
    for (let beside = row - rim; beside <= row + rim && left.length > 0; beside++) {
      if (beside !== row) left = common(left, rows[beside] ?? []);
    }
    for (const column of left) kept.push(row * width + column);
  }
  return Int32Array.from(kept);
}

/** What two lists of stretches have in common; each from, to, from, to and so on, ascending. */
function common(one: readonly number[], other: readonly number[]): readonly number[] {
  const both: number[] = [];
  let [i, j] = [0, 0];
  while (i < one.length && j < other.length) {
    const from = Math.max(one[i] as number, other[j] as number);
    const to = Math.min(one[i + 1] as number, other[j + 1] as number);
    if (from < to) both.push(from, to);
    if ((one[i + 1] as number) < (other[j + 1] as number)) i += 2;
    else j += 2;
  }
  return both;
}
