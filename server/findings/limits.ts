import { isIn } from '../plan/based-on/here.js';
import type { Point } from '../plan/geometry/point.js';
import type { Canvas, Location, Plan, PlanObject } from '../plan/plan.js';

/** So that what lies exactly at a limit keeps it in spite of rounding. */
const ROUNDING = 1e-9;

/** Whether a share is above a limit; at the limit it is not. */
export function exceeds(share: number, limit: number): boolean {
  return share > limit + ROUNDING;
}

/** What is less than this is exceeded by the limit. */
export function leastAt(limit: number): number {
  return limit - 2 * ROUNDING;
}

/** Whether a place lies beyond the edges of the canvas. */
export function isOff({ x, y }: Point, { width, height }: Pick<Canvas, 'width' | 'height'>): boolean {
  return [-x, x - width, -y, y - height].some((beyond) => exceeds(beyond, 0));
}

/**
 * Whether something of an object, or of what it changes of another plan, could not be read or resolved: that is told
 * already.
 */
export function hasFault(plan: Plan, { faulty, node, waiting }: PlanObject): boolean {
  if (faulty || waiting) return true;
  return plan.problems.length > 0 && isErrorTold(plan, (place) => isIn(node, place));
}

/** Whether an error is told of one of some places, in the plan or in one that it builds on. */
export function isErrorTold({ problems }: Plan, isThere: (place: Location) => boolean): boolean {
  return problems.some(
    ({ severity, location, from, related }) =>
      severity === 'error' &&
      (from === undefined ? isThere(location) : related.some((place) => isThere(place.location))),
  );
}
