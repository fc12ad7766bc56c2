import Flatbush from 'flatbush';
import { pointsOf } from '../../plan/build-outline.js';
import { EMPTY_OUTLINE, type Outline } from '../../plan/geometry/outline.js';
import { type Box, NO_BOX, between, boxCentre, boxDiagonal } from '../../plan/geometry/point.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import { type Memory, sameInputs } from '../memory.js';
import { containsPoint } from './areas.js';

/** Of the corners of a shape, so many have to lie inside another for it to lie on it. */
const MOST_OF_IT = 0.75;
/** A part may end with the thing it lies on, as a door does with its wall: its corners are drawn in by so much. */
const DRAWN_IN = 0.06;
const MOST_CORNERS_LOOKED_AT = 48;
/** Part of the diagonal by which a box may stand out and still end where the other does. */
const SLACK = 0.02;
const EDGE_SLACK = 1e-6;

/**
 * For every object, in the order of `plan.objects`, those that lie on it: minor objects of the same plane, in
 * front of it, of whose corners three quarters lie inside its outline, as a wing on a bird or the shine on a jug. A
 * painter takes them for one thing with it. What lies on several is told of the frontmost of them only, `wholeOf` puts
 * them together. Nothing lies on a ground that runs to two sides of the canvas: that is where things stand.
 */
export function partsOf(plan: Plan): readonly (readonly number[])[] {
  const { canvas, coveringOrder, objects } = plan;
  const parts = objects.map((): number[] => []);
  if (coveringOrder.length === 0) return parts;
  const slack = SLACK * canvas.diagonal;
  const shapes = coveringOrder.map((object) => objects[object]?.outline);
  const planes = coveringOrder.map((object) => objects[object]?.plane);
  const boxes = new Flatbush(shapes.length);
  for (const shape of shapes) {
    const { left, top, right, bottom } = shape?.box ?? NO_BOX;
    boxes.add(left, top, right, bottom);
  }
  boxes.finish();
  coveringOrder.forEach((object, position) => {
    const shape = shapes[position];
    const role = objects[object]?.role;
    if (!shape || shape.rings.length === 0 || role === 'dominant' || role === 'secondary') return;
    if (runsAcross(shape.box, canvas)) return;
    const { x, y } = boxCentre(shape.box);
    const behind = boxes
      .search(x, y, x, y, (other) => other < position && planes[other] === planes[position])
      .filter((other) => {
        const box = shapes[other]?.box ?? NO_BOX;
        return fits(shape.box, box, slack) && !runsAcross(box, canvas) && !isTexture(shapes[other]);
      })
      .sort((one, other) => other - one);
    const whole = behind.find((other) => liesOn(shape, shapes[other] ?? EMPTY_OUTLINE));
    parts[coveringOrder[whole ?? -1] ?? -1]?.push(object);
  });
  return parts;
}

/** `partsOf`, kept in the memory as long as all that it hangs on, and the same one as long as it comes out the same. */
export function keptParts(plan: Plan, memory: Memory): readonly (readonly number[])[] {
  const { canvas, coveringOrder, objects } = plan;
  const inputs: unknown[] = [canvas.width, canvas.height, ...coveringOrder];
  for (const { outline, plane, role } of objects) inputs.push(outline, plane, role);
  return memory.recall('parts', '', inputs, (last: readonly (readonly number[])[] | undefined) => {
    const parts = partsOf(plan);
    return last && areAlike(parts, last) ? last : parts;
  });
}

function areAlike(one: readonly (readonly number[])[], other: readonly (readonly number[])[]): boolean {
  return one.length === other.length && one.every((own, object) => sameInputs(own, other[object] ?? []));
}

/** An object with all that lies on it, and on what lies on it; the object comes first. */
export function wholeOf(parts: readonly (readonly number[])[], object: number): readonly number[] {
  const whole = [object];
  // What is added is gone through in its turn; an object lies on one other only, so none comes twice.
  for (const one of whole) for (const part of parts[one] ?? []) whole.push(part);
  return whole;
}

/** Whether a shape reaches two sides of the canvas, as grounds, walls and skies do. */
export function runsAcross({ left, top, right, bottom }: Box, { width, height, diagonal }: Canvas): boolean {
  const slack = EDGE_SLACK * diagonal;
  const across = Number(left <= slack) + Number(right >= width - slack);
  return across + Number(top <= slack) + Number(bottom >= height - slack) >= 2;
}

/** Nothing is looked for on a texture of thousands of corners: it is no thing. */
const MOST_CORNERS_OF_A_WHOLE = 4000;

function isTexture(shape: Outline | undefined): boolean {
  return shape !== undefined && pointsOf(shape) > MOST_CORNERS_OF_A_WHOLE;
}

function fits(inner: Box, outer: Box, slack: number): boolean {
  return (
    inner.left >= outer.left - slack &&
    inner.right <= outer.right + slack &&
    inner.top >= outer.top - slack &&
    inner.bottom <= outer.bottom + slack &&
    boxDiagonal(inner) < boxDiagonal(outer)
  );
}

const known = new WeakMap<Outline, WeakMap<Outline, boolean>>();

function liesOn(part: Outline, whole: Outline): boolean {
  const ofPart = known.get(part) ?? new WeakMap<Outline, boolean>();
  known.set(part, ofPart);
  const answer = ofPart.get(whole) ?? mostlyInside(part, whole);
  ofPart.set(whole, answer);
  return answer;
}

function mostlyInside({ rings, box }: Outline, whole: Outline): boolean {
  const middle = boxCentre(box);
  let inside = 0;
  let looked = 0;
  for (const ring of rings) {
    const corners = ring.length / 2;
    const each = Math.max(1, Math.ceil((corners * rings.length) / MOST_CORNERS_LOOKED_AT));
    for (let corner = 0; corner < corners; corner += each) {
      const point = between(
        { x: ring[2 * corner] as number, y: ring[2 * corner + 1] as number },
        middle,
        DRAWN_IN,
      );
      looked++;
      if (containsPoint(whole.rings, point, whole.fillRule)) inside++;
    }
  }
  return looked > 0 && inside >= MOST_OF_IT * looked;
}
