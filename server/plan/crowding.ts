import { pointsOf } from './build-outline.js';
import { clipped } from './geometry/clipped.js';
import { CrossingCount } from './geometry/crossing-count.js';
import { boxOfRings, EMPTY_OUTLINE, type Outline } from './geometry/outline.js';
import { boxesOverlap } from './geometry/point.js';
import { ringsOf } from './geometry/polygons.js';
import { type CanvasSize, sheetsOver } from './geometry/sheet.js';

/** Crossings of the outlines of a plan with each other: so many are cut in about a second. */
export const MOST_MUTUAL_CROSSINGS = 100_000;
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
  const layers = coveringOrder.flatMap((index) => {
    const outline = objects[index]?.outline ?? EMPTY_OUTLINE;
    return outline.rings.length > 0 ? [{ index, outline }] : [];
  });
  if (plainlyFew(layers.map(({ outline }) => outline))) return new Set();
  const refused = refusedOf(canvas, layers);
  const inParts = layers.filter(({ outline }) => outline.rings.length > 1);
  const points = inParts.reduce((sum, { outline }) => sum + pointsOf(outline), 0);
  if (refused.size === 0 || points === 0 || points > MOST_UNITED) return refused;
  return refusedOf(
    canvas,
    layers.map(({ index, outline }) => ({ index, outline: asOne(outline, canvas) })),
  );
}

type Layer = { readonly index: number; readonly outline: Pick<Outline, 'rings' | 'box' | 'fillRule'> };

function refusedOf(canvas: CanvasSize, layers: readonly Layer[]): ReadonlySet<number> {
  const points = layers.reduce((sum, { outline }) => sum + pointsOf(outline), 0);
  const count = new CrossingCount(canvas, MOST_MUTUAL_CROSSINGS, points);
  return new Set(layers.filter(({ outline }) => !count.lay(outline)).map(({ index }) => index));
}

/** Parts that lie over each other, as of a shape that is repeated, cross others only where they all end. */
function asOne(outline: Outline, canvas: CanvasSize): Layer['outline'] {
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
function plainlyFew(outlines: readonly Outline[]): boolean {
  if (outlines.length > MOST_COMPARED) return false;
  const sizes = outlines.map(sizeOf);
  let most = 0;
  return outlines.every((outline, at) => {
    for (let other = 0; other < at; other++) {
      const box = outlines[other]?.box;
      if (box && boxesOverlap(box, outline.box)) most += mostCrossings(sizes[at], sizes[other]);
    }
    return most <= MOST_MUTUAL_CROSSINGS;
  });
}

interface Size {
  readonly points: number;
  /** Runs of edges that all go up or all go down. */
  readonly runs: number;
}

/** Two edges cross once at most, and two runs as often as they have edges together, as each next crossing is higher. */
function mostCrossings(one?: Size, other?: Size): number {
  if (!one || !other) return 0;
  return Math.min(one.points * other.points, other.runs * one.points + one.runs * other.points);
}

const sizes = new WeakMap<Outline, Size>();

function sizeOf(outline: Outline): Size {
  const known = sizes.get(outline) ?? { points: pointsOf(outline), runs: runsOf(outline) };
  sizes.set(outline, known);
  return known;
}

function runsOf({ rings }: Outline): number {
  let runs = 0;
  for (const ring of rings) {
    let last = 0;
    for (let i = 1; i < ring.length; i += 2) {
      const way = Math.sign((ring[(i + 2) % ring.length] as number) - (ring[i] as number));
      if (way !== 0 && way !== last) runs++;
      if (way !== 0) last = way;
    }
    // A run that goes on across the seam is counted as two, and a ring that is level all along has one.
    runs += last === 0 ? 1 : 0;
  }
  return runs;
}
