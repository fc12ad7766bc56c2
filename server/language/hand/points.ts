import { t } from '../../../grammar/index.js';
import {
  arrangement,
  firstCopyOf,
  flatnessOf,
  isArranged,
  type OutlinePoint,
} from '../../drawing/handling/outline-points.js';
import { surroundingsOf } from '../../drawing/handling/surroundings.js';
import type { Spot } from '../../drawing/scene.js';
import { movedPlace } from '../../findings/edits.js';
import { apply } from '../../plan/geometry/matrix.js';
import { distance, type Point } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { type Attempt, edits, refusal } from './attempt.js';

/** Parts of the diagonal: how near the point must come, and how far it is moved to see how it follows. */
const NEAR = 1e-5;
const TRY = 1e-4;
const MOST_STEPS = 12;
/** Of a point that does not follow, the size of the map that says how it follows. */
const FOLLOWS_NOT = 1e-6;

/**
 * A point of an outline put down at a place. A shape that is sized, turned or set down by the box round it moves as a
 * whole when one of its points changes that box, so the coordinates for which the point ends where the hand put it are
 * looked for.
 */
export function movePoint(plan: Plan, object: PlanObject, point: OutlinePoint, to: Spot): Attempt {
  const given = isArranged(object.node.children) ? givenFor(plan, object, point, to) : to;
  if (!given) {
    return refusal(
      t(
        '`{0}` is sized or set down by the box round it, and that box follows this point: change its `size` or its `at`, or move another point.',
        object.name,
      ),
    );
  }
  const right = given.x - point.given.x;
  const down = given.y - point.given.y;
  return edits(movedPlace(point.place, point.node, right, down, plan.canvas));
}

/** By Newton's steps; how the point follows is piece by piece an even map, so that few are enough. */
function givenFor(plan: Plan, object: PlanObject, point: OutlinePoint, to: Spot): Point | undefined {
  const { diagonal } = plan.canvas;
  const follow = followerOf(plan, object, point);
  let given = point.given;
  let at = follow(given);
  for (let step = 0; at && step < MOST_STEPS; step++) {
    if (distance(at, to) <= diagonal * NEAR) return given;
    const width = diagonal * TRY;
    const right = follow({ x: given.x + width, y: given.y });
    const down = follow({ x: given.x, y: given.y + width });
    if (!right || !down) return undefined;
    const [a, b] = [(right.x - at.x) / width, (right.y - at.y) / width];
    const [c, d] = [(down.x - at.x) / width, (down.y - at.y) / width];
    const size = a * d - b * c;
    if (Math.abs(size) < FOLLOWS_NOT) return undefined;
    const [x, y] = [to.x - at.x, to.y - at.y];
    given = { x: given.x + (d * x - c * y) / size, y: given.y + (a * y - b * x) / size };
    at = follow(given);
  }
  return undefined;
}

/** Where the point lies for other coordinates in the text. */
function followerOf(
  plan: Plan,
  { node }: PlanObject,
  { shapeLine, index }: OutlinePoint,
): (given: Point) => Point | undefined {
  const surroundings = surroundingsOf(plan);
  const { input, lines } = firstCopyOf(node.children, surroundings);
  const flatness = flatnessOf(surroundings);
  return (given) => {
    const shapes = input.shapes.map((shape, at) =>
      lines[at] === shapeLine && 'points' in shape
        ? { ...shape, points: shape.points.with(index, given) }
        : shape,
    );
    const matrix = arrangement({ ...input, shapes }, flatness);
    return matrix && apply(matrix, given);
  };
}
