import type { Plan, PlanObject } from '../plan/plan.js';
import { type Memory, sameInputs } from './memory.js';

/** The covering order of a plan, the same list as long as the same indices follow each other. */
export function keptOrder({ coveringOrder }: Plan, memory: Memory): readonly number[] {
  return memory.recall('covering order', '', coveringOrder, () => coveringOrder);
}

/** The objects of a plan, the same list as long as each of them is the same one. */
export function keptObjects({ objects }: Plan, memory: Memory): readonly PlanObject[] {
  return memory.recall('objects', '', objects, () => objects);
}

/** One figure of each object, the same list as long as all of them are the same; `what` says which figure it is. */
export function keptOfObjects<Figure>(
  what: string,
  plan: Plan,
  memory: Memory,
  figure: (object: PlanObject) => Figure,
): readonly Figure[] {
  const objects = keptObjects(plan, memory);
  return memory.recall(`${what} of objects`, '', [objects], (last: readonly Figure[] | undefined) => {
    const figures = objects.map(figure);
    return last && sameInputs(figures, last) ? last : figures;
  });
}
