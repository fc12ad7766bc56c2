import type { Plan } from './plan.js';

/** What resolving a plan complains of; that something is not computed yet is no complaint. */
export function toldBy(plan: Plan): readonly string[] {
  return plan.problems.filter(({ code }) => code !== 'not computed yet').map(({ message }) => message);
}
