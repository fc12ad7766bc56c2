import { containsPoint } from '../measure/areas.js';
import type { Measures } from '../measure/measures.js';
import { boxCentre, type Point } from '../plan/geometry/point.js';
import type { Plan, PlanObject } from '../plan/plan.js';

/** The object that is seen at a place in the picture; nothing on bare ground. */
export function seenAt(plan: Plan, { areas }: Measures, place: Point): PlanObject | undefined {
  const position = areas.layers.findIndex(({ visible }) => containsPoint(visible, place));
  const index = plan.coveringOrder[position];
  return index === undefined ? undefined : plan.objects[index];
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
