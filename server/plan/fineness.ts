import { pointsOf } from './build-outline.js';
import type { Layers } from './crowding.js';
import type { Outline } from './geometry/outline.js';
import { boxHeight, boxWidth } from './geometry/point.js';
import type { CanvasSize } from './geometry/sheet.js';

/** What takes time to cut and measure in a shape, however little it crosses others. */
export interface Fineness {
  /** Closed lines. */
  readonly parts: number;
  /** Of all its lines within the canvas, in diagonals of the canvas. */
  readonly length: number;
  /** Pairs of one of its points and one of its lines that passes the height of that point. */
  readonly level: number;
}

/**
 * So fine may all shapes of a plan be together. Each is measured in two to six seconds where the picture is as
 * unfavourable as it can be: all parts along one edge, lines as close as they can lie, shapes within each other.
 */
export const FINEST: Fineness = { parts: 10_000, length: 1_000, level: 10_000_000 };

/**
 * The objects, by their indices, whose shapes are so fine that they can't be measured with those under them while
 * somebody waits, and what there is too much of.
 */
export function tooFineObjects(all: Layers): ReadonlyMap<number, keyof Fineness> {
  return isPlainlyCoarse(all) ? NONE : refusedOf(all);
}

const NONE: ReadonlyMap<number, keyof Fineness> = new Map();

/** Whether a look at boxes and numbers of points shows that nothing can be too fine. */
function isPlainlyCoarse({ canvas, objects }: Layers): boolean {
  const diagonal = diagonalOf(canvas.width, canvas.height);
  let [parts, length, level] = [0, 0, 0];
  for (const { outline } of objects) {
    const { rings, box } = outline;
    const points = pointsOf(outline);
    parts += rings.length;
    // No line is longer than its shape or the canvas.
    length += points * Math.min(1, diagonalOf(boxWidth(box), boxHeight(box)) / diagonal);
    level += levelAtMost(points);
  }
  return parts <= FINEST.parts && length <= PLAINLY_SHORT && level <= FINEST.level;
}

/** What is less by more than rounding can take away. */
const PLAINLY_SHORT = 0.999 * FINEST.length;

function diagonalOf(width: number, height: number): number {
  return Math.sqrt(width * width + height * height);
}

function refusedOf({ canvas, objects, coveringOrder }: Layers): ReadonlyMap<number, keyof Fineness> {
  const refused = new Map<number, keyof Fineness>();
  let [parts, length, level] = [0, 0, 0];
  for (const index of coveringOrder) {
    const outline = objects[index]?.outline;
    if (!outline || outline.rings.length === 0) continue;
    const own = finenessOf(outline, canvas);
    if (parts + own.parts > FINEST.parts) refused.set(index, 'parts');
    else if (length + own.length > FINEST.length) refused.set(index, 'length');
    else if (level + own.level > FINEST.level) refused.set(index, 'level');
    else {
      parts += own.parts;
      length += own.length;
      level += own.level;
    }
  }
  return refused;
}

const kept = new WeakMap<Outline, { readonly of: CanvasSize; readonly fineness: Fineness }>();

function finenessOf(outline: Outline, { width, height }: CanvasSize): Fineness {
  const known = kept.get(outline);
  if (known?.of.width === width && known.of.height === height) return known.fineness;
  const fineness = {
    parts: outline.rings.length,
    length: lengthWithin(outline, width, height) / Math.hypot(width, height),
    level: levelWith(outline),
  };
  kept.set(outline, { of: { width, height }, fineness });
  return fineness;
}

/** Of a line that leaves the canvas, as long as the box of what is within allows. */
function lengthWithin({ rings }: Outline, width: number, height: number): number {
  let length = 0;
  for (const ring of rings) {
    let x = ring[ring.length - 2] as number;
    let y = ring[ring.length - 1] as number;
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const [fromX, fromY] = [x, y];
      x = ring[i] as number;
      y = ring[i + 1] as number;
      const across = Math.min(width, Math.max(fromX, x)) - Math.max(0, Math.min(fromX, x));
      const down = Math.min(height, Math.max(fromY, y)) - Math.max(0, Math.min(fromY, y));
      if (across >= 0 && down >= 0) length += Math.sqrt(across * across + down * down);
    }
  }
  return length;
}

/**
 * What a line that sweeps down over the shape has to look at: at each height at which there are points, the lines
 * there.
 */
function levelWith(outline: Outline): number {
  const { rings } = outline;
  const points = pointsOf(outline);
  if (levelAtMost(points) === 0) return 0;
  const heights = heightsOf(rings, points);
  let level = 0;
  for (const ring of rings) {
    let last = placeOf(heights, ring[ring.length - 1] as number);
    for (let i = 1; i < ring.length; i += 2) {
      const place = placeOf(heights, ring[i] as number);
      level += Math.abs(place - last);
      last = place;
    }
  }
  return level;
}

function levelAtMost(points: number): number {
  const pairs = points * points;
  return pairs <= FINEST.level / MANY_SHAPES ? 0 : pairs;
}

/** So many shapes with so few points each are within the limit together; that of others is counted. */
const MANY_SHAPES = 1_000;

/** Each height at which there is a point, once, from the top down. */
function heightsOf(rings: Outline['rings'], points: number): Float64Array {
  const all = new Float64Array(points);
  let at = 0;
  for (const ring of rings) for (let i = 1; i < ring.length; i += 2) all[at++] = ring[i] as number;
  all.sort();
  let count = 0;
  for (const height of all) if (count === 0 || height !== all[count - 1]) all[count++] = height;
  return all.subarray(0, count);
}

function placeOf(heights: Float64Array, height: number): number {
  let [first, behind] = [0, heights.length];
  while (first < behind) {
    const middle = (first + behind) >> 1;
    if ((heights[middle] as number) < height) first = middle + 1;
    else behind = middle;
  }
  return first;
}
