import type { Budget } from '../plan/plan.js';
import type { BudgetMeasure } from './measures.js';

/** So that a share that is exactly at its tolerance is within it in spite of rounding. */
const ROUNDING = 1e-9;

/** Each target of a budget beside what is measured; empty without a budget. */
export function measureBudget(
  budget: Budget | undefined,
  shareOf: (key: string) => number,
): readonly BudgetMeasure[] {
  if (!budget) return [];
  return budget.shares.map((entry) => {
    const share = shareOf(entry.key);
    const difference = share - entry.target;
    return {
      ...entry,
      share,
      difference,
      tolerance: budget.tolerance,
      within: Math.abs(difference) <= budget.tolerance + ROUNDING,
    };
  });
}
