import { distanceToOutline } from '../../measure/areas/areas.js';
import { measureFocus } from '../../measure/emphasis/focus.js';
import type { Measures } from '../../measure/measures.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { leavesTheRest } from './clear-of-tangents.js';
import { remembered } from './remembered.js';
import { type Shift, roundedOn, shifted } from './shift.js';

/** Part of the diagonal by which the point is to lie within the border. */
const WITHIN = 0.01;
/** Even, so that a mirrored picture is asked for the same directions. */
const DIRECTIONS = 64;

/**
 * The shortest move that brings what is seen of an object over the focal point, by a hundredth of the diagonal; nothing
 * when it would then be covered there, hide something else or lay ground bare.
 *
 * @param away distance of its border from the focal point, canvas units
 */
export function ontoFocus(
  plan: Plan,
  measures: Measures,
  object: number,
  focus: Point,
  away: number,
): Shift | undefined {
  return remembered(plan, object, 'onto focus', away, () => {
    const visible = measures.areas.layers[plan.coveringOrder.indexOf(object)]?.visible ?? [];
    const { x, y } = directionTo(visible, focus, away);
    const far = away + WITHIN * plan.canvas.diagonal;
    const shift = { object, right: roundedOn(-x * far, plan.canvas), down: roundedOn(-y * far, plan.canvas) };
    const trial = shifted(plan, measures, shift);
    const held = measureFocus(trial.plan, trial.areas)?.dominants.some(
      (dominant) => dominant.object === object && dominant.holds,
    );
    return held && leavesTheRest(plan, measures, trial) ? shift : undefined;
  });
}

/** The direction in which the nearest border of a shape is seen from a point. */
function directionTo(rings: Parameters<typeof distanceToOutline>[0], from: Point, away: number): Point {
  let best = { x: 0, y: 0 };
  let least = Infinity;
  for (let step = 0; step < DIRECTIONS; step++) {
    const angle = (2 * Math.PI * step) / DIRECTIONS;
    const way = { x: Math.cos(angle), y: Math.sin(angle) };
    const left = distanceToOutline(rings, { x: from.x + away * way.x, y: from.y + away * way.y });
    if (left < least - 1e-9 * away) [best, least] = [way, left];
  }
  return best;
}
