import { pointsOf } from './build-outline.js';
import { type Fineness, tooFineObjects } from './fineness.js';
import { clipped } from './geometry/clipped.js';
import {
  type BorderSize,
  borderSizeOf,
  MOST_MUTUAL_CROSSINGS,
  mostCrossings,
} from './geometry/crossing-bound.js';
import { CrossingCount } from './geometry/crossing-count.js';
import { type EdgePairs, edgePairs } from './geometry/edge-pairs.js';
import { boxOfRings, EMPTY_OUTLINE, type Outline } from './geometry/outline.js';
import { ringsOf } from './geometry/polygons.js';
import { type CanvasSize, sheetsOver } from './geometry/sheet.js';

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

type Shape = Pick<Outline, 'rings' | 'box' | 'fillRule'>;
type Layer<Of = Outline> = { readonly index: number; readonly outline: Of };

/** What there is too much of. */
export type Crowding = 'crossings' | keyof Fineness;

/**
 * The objects, by their indices, with which the picture can't be cut and measured while somebody waits: those that are
 * too fine, and those that cross what is seen under them too often. Without them it is within `FINEST` and has no more
 * crossings than `MOST_MUTUAL_CROSSINGS`.
 */
export function crowdingObjects(all: Layers): ReadonlyMap<number, Crowding> {
  const tooFine = tooFineObjects(all);
  const layers = layersOf(all, tooFine);
  if (plainlyFew(layers) || fewEdgesMeet(all.canvas, layers)) return tooFine;
  const crossing = crossingObjects(all.canvas, layers);
  if (crossing.size === 0) return tooFine;
  const crowding = new Map<number, Crowding>(tooFine);
  for (const index of crossing) crowding.set(index, 'crossings');
  return crowding;
}

/** From back to front, without those that are left out already. */
function layersOf(
  { objects, coveringOrder }: Layers,
  leftOut: ReadonlyMap<number, unknown>,
): readonly Layer[] {
  const layers: Layer[] = [];
  for (const index of coveringOrder) {
    const outline = objects[index]?.outline ?? EMPTY_OUTLINE;
    if (outline.rings.length > 0 && !leftOut.has(index)) layers.push({ index, outline });
  }
  return layers;
}

/** Those that cross what is seen under them too often. */
function crossingObjects(canvas: CanvasSize, layers: readonly Layer[]): ReadonlySet<number> {
  const refused = refusedOf(canvas, layers);
  const inParts = layers.filter(({ outline }) => outline.rings.length > 1);
  const points = inParts.reduce((sum, { outline }) => sum + pointsOf(outline), 0);
  if (refused.size === 0 || points === 0 || points > MOST_UNITED) return refused;
  return refusedOf(
    canvas,
    layers.map(({ index, outline }) => ({ index, outline: asOne(outline, canvas) })),
  );
}

function refusedOf(canvas: CanvasSize, layers: readonly Layer<Shape>[]): ReadonlySet<number> {
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
  refused: ReadonlyMap<number, Crowding>,
): readonly Item[] {
  if (refused.size === 0) return objects;
  return objects.map((object, index) =>
    refused.has(index) ? { ...object, outline: EMPTY_OUTLINE } : object,
  );
}

/** Whether a look at boxes and numbers of points shows that there can't be too many. */
function plainlyFew(layers: readonly Layer[]): boolean {
  if (layers.length > MOST_COMPARED) return false;
  const sizes: BorderSize[] = [];
  /** Four numbers a layer: each is compared with all below it. */
  const boxes = new Float64Array(4 * layers.length);
  let most = 0;
  for (const { outline } of layers) {
    const size = sizeOf(outline);
    const { left, top, right, bottom } = outline.box;
    const end = 4 * sizes.length;
    for (let at = 0; at < end; at += 4) {
      const isApart =
        (boxes[at] as number) >= right ||
        (boxes[at + 1] as number) >= bottom ||
        (boxes[at + 2] as number) <= left ||
        (boxes[at + 3] as number) <= top;
      if (!isApart) most += mostCrossings(size, sizes[at / 4] as BorderSize);
    }
    if (most > MOST_MUTUAL_CROSSINGS) return false;
    sizes.push(size);
    boxes[end] = left;
    boxes[end + 1] = top;
    boxes[end + 2] = right;
    boxes[end + 3] = bottom;
  }
  return true;
}

/** Of the picture that was looked at last: most outlines are the same ones after an edit, and in what is only tried. */
let lately: EdgePairs | undefined;

/** Whether edges pass so few cells of the canvas together that there can't be too many crossings. */
function fewEdgesMeet(canvas: CanvasSize, layers: readonly Layer[]): boolean {
  const outlines = layers.map(({ outline }) => outline);
  const pairs = edgePairs(canvas, outlines, MOST_MUTUAL_CROSSINGS, lately);
  if (pairs) lately = pairs;
  return pairs !== undefined;
}

/** With fewer points it costs less to look at them again. */
const KEPT_POINTS = 500;

const sizes = new WeakMap<Shape, BorderSize>();

/** What tells how often an outline crosses others at most, kept as long as it. */
export function sizeOf(outline: Shape): BorderSize {
  const points = pointsOf(outline);
  const known = points < KEPT_POINTS ? undefined : sizes.get(outline);
  if (known) return known;
  const size = borderSizeOf(outline.rings);
  if (points >= KEPT_POINTS) sizes.set(outline, size);
  return size;
}
