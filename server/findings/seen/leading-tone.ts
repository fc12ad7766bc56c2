import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';

/** Part of the picture by which one tone has to lead. */
export const LEADING_BY = 0.05;
/** Part of the picture above which two groups are all that counts. */
const NEARLY_ALL = 0.8;

/** Two groups, by their index, the larger first, of which neither leads. */
export interface ContestedTones {
  readonly larger: number;
  readonly smaller: number;
}

/**
 * The pairs of groups that together hold more than 80 % of the picture and are less than `leadingBy` apart. Two that
 * the plan's own budget sets so near each other are meant, and two that share a step are no pair.
 */
export function contestedTones(
  plan: Pick<Plan, 'scale' | 'valueBudget'>,
  shares: readonly number[],
  leadingBy: number,
): readonly ContestedTones[] {
  const { groups } = plan.scale;
  return groups.flatMap((one, first) =>
    groups.flatMap((other, second): ContestedTones[] => {
      const a = shares[first] ?? 0;
      const b = shares[second] ?? 0;
      if (second <= first || (one.from <= other.to && other.from <= one.to)) return [];
      if (!exceeds(a + b, NEARLY_ALL) || !exceeds(leadingBy, Math.abs(a - b))) return [];
      if (isMeant(plan, one.key, other.key, leadingBy)) return [];
      return [a >= b ? { larger: first, smaller: second } : { larger: second, smaller: first }];
    }),
  );
}

function isMeant(
  { valueBudget }: Pick<Plan, 'valueBudget'>,
  one: string,
  other: string,
  by: number,
): boolean {
  const targetOf = (key: string): number | undefined =>
    valueBudget?.shares.find((entry) => entry.key === key)?.target;
  const first = targetOf(one);
  const second = targetOf(other);
  return first !== undefined && second !== undefined && exceeds(by, Math.abs(first - second));
}
