import { pointsOf } from './build-outline.js';
import { clipped } from './geometry/clipped.js';
import { CrossingCount } from './geometry/crossing-count.js';
import { boxOfRings, EMPTY_OUTLINE, type Outline } from './geometry/outline.js';
import { boxesOverlap } from './geometry/point.js';
import { ringsOf } from './geometry/polygons.js';
import { type CanvasSize, sheetsOver } from './geometry/sheet.js';

/** Crossings of the outlines of a plan with each other: so many are cut in about a second. */
export const MOST_MUTUAL_CROSSINGS = 100_000;
const NONE: ReadonlySet<number> = new Set();
/** In a larger crowd it costs less to count than to compare each with each. */
const MOST_COMPARED = 300;
/** Points of shapes in parts that are put together to see which of their borders are seen. */
const MOST_UNITED = 40_000;

/** Shapes and the order in which they are laid over each other, as of a plan. */
export interface Layers {
  readonly canvas: CanvasSize;
  readonly objects: readonly { readonly outline: Outline }[];
  readonly coveringOrder: readonly number[];
}

/**
 * The objects, by their indices, that cross what is seen under them so often that the picture can't be cut while
 * somebody waits. Without them it has no more than `MOST_MUTUAL_CROSSINGS`.
 */
export function crowdingObjects({ canvas, objects, coveringOrder }: Layers): ReadonlySet<number> {
  const layers: { readonly index: number; readonly outline: Outline }[] = [];
  for (const index of coveringOrder) {
    const outline = objects[index]?.outline ?? EMPTY_OUTLINE;
    if (outline.rings.length > 0) layers.push({ index, outline });
  }
  if (plainlyFew(layers)) return NONE;
  const refused = refusedOf(canvas, layers);
  const inParts = layers.filter(({ outline }) => outline.rings.length > 1);
  const points = inParts.reduce((sum, { outline }) => sum + pointsOf(outline), 0);
  if (refused.size === 0 || points === 0 || points > MOST_UNITED) return refused;
  return refusedOf(
    canvas,
    layers.map(({ index, outline }) => ({ index, outline: asOne(outline, canvas) })),
  );
}

type Shape = Pick<Outline, 'rings' | 'box' | 'fillRule'>;
type Layer = { readonly index: number; readonly outline: Shape };

function refusedOf(canvas: CanvasSize, layers: readonly Layer[]): ReadonlySet<number> {
  const points = layers.reduce((sum, { outline }) => sum + pointsOf(outline), 0);
  const count = new CrossingCount(canvas, MOST_MUTUAL_CROSSINGS, points);
  return new Set(layers.filter(({ outline }) => !count.lay(outline)).map(({ index }) => index));
}

/** Parts that lie over each other, as of a shape that is repeated, cross others only where they all end. */
function asOne(outline: Outline, canvas: CanvasSize): Shape {
  const sheet = outline.rings.length > 1 ? sheetsOver(canvas)?.plain : undefined;
  if (!sheet) return outline;
  const rings = ringsOf(clipped(outline, sheet).polygons, sheet.grid);
  return { rings, box: boxOfRings(rings) };
}

/** The objects, those that crowd the picture without their shapes. */
export function withoutShapes<Item extends { readonly outline: Outline }>(
  objects: readonly Item[],
  refused: ReadonlySet<number>,
): readonly Item[] {
  if (refused.size === 0) return objects;
  return objects.map((object, index) =>
    refused.has(index) ? { ...object, outline: EMPTY_OUTLINE } : object,
  );
}

/** Whether a look at boxes and numbers of points shows that there can't be too many. */
function plainlyFew(layers: readonly Layer[]): boolean {
  if (layers.length > MOST_COMPARED) return false;
  const sizes: Size[] = [];
  let most = 0;
  for (const { outline } of layers) {
    const size = sizeOf(outline);
    for (let other = 0; other < sizes.length; other++) {
      const below = layers[other] as Layer;
      if (boxesOverlap(below.outline.box, outline.box)) most += mostCrossings(size, sizes[other] as Size);
    }
    if (most > MOST_MUTUAL_CROSSINGS) return false;
    sizes.push(size);
  }
  return true;
}

interface Size {
  readonly points: number;
  /** Runs of edges that all go up or all go down. */
  readonly runs: number;
}

/** Two edges cross once at most, and two runs as often as they have edges together, as each next crossing is higher. */
function mostCrossings(one: Size, other: Size): number {
  return Math.min(one.points * other.points, other.runs * one.points + one.runs * other.points);
}

/** With fewer points it costs less to look at them again. */
const KEPT_POINTS = 500;

const sizes = new WeakMap<Shape, Size>();

function sizeOf(outline: Shape): Size {
  const points = pointsOf(outline);
  const known = points < KEPT_POINTS ? undefined : sizes.get(outline);
  if (known) return known;
  const size = { points, runs: runsOf(outline) };
  if (points >= KEPT_POINTS) sizes.set(outline, size);
  return size;
}

function runsOf({ rings }: Shape): number {
  let runs = 0;
  for (const ring of rings) {
    let last = 0;
    let from = ring[1] as number;
    for (let i = 1; i < ring.length; i += 2) {
      const to = ring[i + 2 < ring.length ? i + 2 : 1] as number;
      const way = to > from ? 1 : to < from ? -1 : 0;
      from = to;
      if (way !== 0 && way !== last) runs++;
      if (way !== 0) last = way;
    }
    // A run that goes on across the seam is counted as two, and a ring that is level all along has one.
    runs += last === 0 ? 1 : 0;
  }
  return runs;
}
