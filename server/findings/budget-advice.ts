import type { BudgetMeasure } from '../measure/measures.js';
import type { Plan, StepGroup } from '../plan/plan.js';

/** One object taken to another step of the value scale. */
export interface StepChange {
  readonly object: number;
  readonly from: number;
  readonly to: number;
}

/** An object taken further than a quarter of the scale would be another object. */
const FURTHEST_PART_OF_SCALE = 1 / 4;

/**
 * The smallest change of one object's value that brings `entry` within its tolerance and takes no other entry of the
 * budget out of it: fewest steps first, then what comes nearest to all targets. Nothing when no single change does.
 */
export function stepChangeFor(
  plan: Plan,
  shares: readonly number[],
  budget: readonly BudgetMeasure[],
  entry: BudgetMeasure,
): StepChange | undefined {
  let best: { readonly change: StepChange; readonly size: number; readonly miss: number } | undefined;
  const furthest = Math.max(1, Math.round(plan.scale.steps * FURTHEST_PART_OF_SCALE));
  for (const [object, share] of shares.entries()) {
    const step = plan.objects[object]?.step;
    if (step === undefined || share === 0) continue;
    const from = Math.round(step);
    const last = Math.min(plan.scale.steps, from + furthest);
    for (let to = Math.max(1, from - furthest); to <= last; to++) {
      if (to === from) continue;
      const differences = budget.map(
        ({ key, difference }) =>
          difference +
          share * (Number(holds(plan.scale.groups, key, to)) - Number(holds(plan.scale.groups, key, from))),
      );
      if (!improves(budget, differences, entry)) continue;
      const size = Math.abs(to - from);
      const miss = differences.reduce((sum, difference) => sum + Math.abs(difference), 0);
      if (!best || size < best.size || (size === best.size && miss < best.miss)) {
        best = { change: { object, from, to }, size, miss };
      }
    }
  }
  return best?.change;
}

function improves(
  budget: readonly BudgetMeasure[],
  differences: readonly number[],
  entry: BudgetMeasure,
): boolean {
  return budget.every(({ key, tolerance, within }, index) => {
    const inside = Math.abs(differences[index] ?? 0) <= tolerance;
    return inside || (key !== entry.key && !within);
  });
}

/** A budget names a group or a single step. */
function holds(groups: readonly StepGroup[], key: string, step: number): boolean {
  const group = groups.find((candidate) => candidate.key === key);
  return group ? step >= group.from && step <= group.to : step === Number(key);
}
