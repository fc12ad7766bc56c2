import type { Plan } from './plan.js';

/** What resolving a plan complains of. */
export function toldBy(plan: Plan): readonly string[] {
  return plan.problems.map(({ message }) => message);
}
