import { sizeOf } from '../../plan/crowding.js';
import { mostCrossings } from '../../plan/geometry/crossing-bound.js';
import { boxesOverlap } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';

/**
 * Crossings that all trials of one change may have to look for. Two outlines that zigzag through each other with 340
 * points each count for 115,600 in a trial, however few there are, and take a seventh of a second.
 */
const MOST_LOOKED_FOR = 400_000;

/** How many trials of a change of an object are worth waiting for: at most so many, and none of a costly one. */
export function triesWithin(plan: Plan, object: number, most: number): number {
  return Math.min(most, Math.floor(MOST_LOOKED_FOR / Math.max(1, lookedFor(plan, object))));
}

/** How often the outline of an object can cross the others about it, at most. */
function lookedFor({ objects }: Plan, object: number): number {
  const outline = objects[object]?.outline;
  if (!outline) return 0;
  const own = sizeOf(outline);
  let crossings = 0;
  objects.forEach(({ outline: other }, index) => {
    if (index === object || !boxesOverlap(outline.box, other.box)) return;
    crossings += mostCrossings(own, sizeOf(other));
  });
  return crossings;
}
