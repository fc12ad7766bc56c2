import { containsPoint } from '../../measure/areas/areas.js';
import { higherFirst, inSteps } from '../../measure/areas/place-order.js';
import type { Measures } from '../../measure/measures.js';
import { type Box, boxCentre, boxHeight, type Point } from '../../plan/geometry/point.js';
import { boxOfRings, type Ring } from '../../plan/geometry/outline.js';
import type { Canvas, Plan, PlanObject } from '../../plan/plan.js';

/** Part of the diagonal by which what is seen of an object may lie beside its box: it is cut on a grid, far finer. */
const BESIDE_ITS_BOX = 0.001;

/** The object that is seen at a place in the picture; nothing on bare ground. */
export function seenAt(plan: Plan, { areas }: Measures, place: Point): PlanObject | undefined {
  const slack = BESIDE_ITS_BOX * plan.canvas.diagonal;
  for (const [position, index] of plan.coveringOrder.entries()) {
    const object = plan.objects[index];
    // Of a crowd most lie elsewhere, as their boxes tell.
    if (!object || isBeside(object.outline.box, place, slack)) continue;
    if (containsPoint(areas.layers[position]?.visible ?? [], place)) return object;
  }
  return undefined;
}

function isBeside({ left, top, right, bottom }: Box, { x, y }: Point, slack: number): boolean {
  return x < left - slack || x > right + slack || y < top - slack || y > bottom + slack;
}

/** The dominant object of which most is seen. */
export function greatestDominant(plan: Plan, { objects }: Measures): PlanObject | undefined {
  const share = ({ index }: PlanObject): number => objects[index]?.share ?? 0;
  return plan.objects
    .filter((object) => object.role === 'dominant' && share(object) > 0)
    .reduce<PlanObject | undefined>(
      (most, object) => (most && share(most) >= share(object) ? most : object),
      undefined,
    );
}

/** The middle of the box around an object, seen or not. */
export function middleOf({ outline }: PlanObject): Point {
  return boxCentre(outline.box);
}

/** The place on the canvas that is nearest to one that may lie off it. */
export function onCanvas({ x, y }: Point, { width, height }: Pick<Canvas, 'width' | 'height'>): Point {
  return { x: Math.min(width, Math.max(0, x)), y: Math.min(height, Math.max(0, y)) };
}

/** Parts of a region's height at which a place in it is looked for. */
const LEVELS: readonly number[] = [1 / 2, 1 / 4, 3 / 4];

const places = new WeakMap<readonly Ring[], { readonly canvas: Canvas; readonly at: Point | undefined }>();

/**
 * A place well within the region that is tallest: in the widest stretch of it at half its height, or at a quarter of it
 * where two are as wide. Of regions alike the highest, then the one nearest to the middle of the canvas. Kept as long
 * as the list of rings.
 */
export function placeWithin(rings: readonly Ring[], canvas: Canvas): Point | undefined {
  const known = places.get(rings);
  if (known?.canvas.width === canvas.width && known.canvas.height === canvas.height) return known.at;
  const at = findPlaceWithin(rings, canvas);
  places.set(rings, { canvas, at });
  return at;
}

function findPlaceWithin(rings: readonly Ring[], canvas: Canvas): Point | undefined {
  const higher = higherFirst(canvas);
  const steps = (length: number): number => inSteps(length, canvas.diagonal);
  const boxes = rings.map((ring) => boxOfRings([ring]));
  const height = boxes.reduce((most, box) => Math.max(most, steps(boxHeight(box))), 0);
  const [tallest] = boxes
    .filter((box) => steps(boxHeight(box)) === height)
    .sort((one, other) => higher(boxCentre(one), boxCentre(other)));
  if (!tallest) return undefined;
  const found = LEVELS.map((level) => {
    const y = tallest.top + level * boxHeight(tallest);
    const across = rings.filter((_, ring) => isAcross(boxes[ring], y));
    const [widest, next] = stretchesAt(across, y).sort(
      (one, other) => steps(other.width) - steps(one.width) || higher(one.at, other.at),
    );
    const isClear = !widest || !next || steps(widest.width) > steps(next.width);
    return { at: widest?.at, isClear };
  });
  return (found.find(({ at, isClear }) => at && isClear) ?? found[0])?.at;
}

function isAcross(box: Box | undefined, y: number): boolean {
  return box !== undefined && box.top <= y && y <= box.bottom;
}

/** The stretches of a level that lie within a region, from left to right. */
function stretchesAt(rings: readonly Ring[], y: number): { readonly width: number; readonly at: Point }[] {
  const crossed = rings.flatMap((ring) => crossingsOf(ring, y)).sort((one, other) => one - other);
  return crossed.flatMap((from, index) => {
    const to = crossed[index + 1];
    return index % 2 === 0 && to !== undefined ? [{ width: to - from, at: { x: (from + to) / 2, y } }] : [];
  });
}

/** Where a ring meets a level, by their places across. */
function crossingsOf(ring: Ring, level: number): readonly number[] {
  const across: number[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const next = (i + 2) % ring.length;
    const [ax = 0, ay = 0, bx = 0, by = 0] = [ring[i], ring[i + 1], ring[next], ring[next + 1]];
    if (ay <= level !== by <= level) across.push(ax + ((level - ay) / (by - ay)) * (bx - ax));
  }
  return across;
}
