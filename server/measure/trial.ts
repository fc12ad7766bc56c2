import type { Outline } from '../plan/geometry/outline.js';
import type { Plan } from '../plan/plan.js';
import { type VisibleAreas, visibleAreas } from './areas.js';

/** A plan that is only tried, and what is seen in it. */
export interface Trial {
  readonly plan: Plan;
  readonly areas: VisibleAreas;
}

const doubles = new WeakMap<Outline, Outline>();

/**
 * The plan with other shapes for some objects, by their indices, and what is then seen. Every other shape is taken as
 * its double, which is kept as long as it: what is worked out for a trial then pushes out nothing of what is kept about
 * the picture itself, and the next trial works out only what it moves.
 */
export function trialOf(
  plan: Plan,
  shapes: ReadonlyMap<number, Outline>,
  coveringOrder: readonly number[] = plan.coveringOrder,
): Trial {
  const objects = plan.objects.map((object, index) => ({
    ...object,
    outline: shapes.get(index) ?? doubleOf(object.outline),
  }));
  const layers = coveringOrder.flatMap((index) => objects[index] ?? []);
  return { plan: { ...plan, objects, coveringOrder }, areas: visibleAreas(plan.canvas, layers) };
}

function doubleOf(outline: Outline): Outline {
  const double = doubles.get(outline) ?? { ...outline };
  doubles.set(outline, double);
  return double;
}
