import { stepValue } from '../../plan/colour/value.js';
import type { Plan } from '../../plan/plan.js';
import { measureBudget } from '../budget.js';
import type { ValueMeasure } from '../measures.js';
import { allLargestFirst, largestFirst, totalShare } from '../objects/objects.js';
import { measureSpread } from './spread.js';

/**
 * How light and dark are shared out. `shares` are the visible shares in the order of `plan.objects`; bare ground
 * counts at the step nearest to the ground's own value.
 */
export function measureValues(plan: Plan, shares: readonly number[], bareShare: number): ValueMeasure {
  const { steps } = plan.scale;
  const { ground } = plan.canvas;
  const stepOf = (object: number): number | undefined => {
    const step = plan.objects[object]?.step;
    return step === undefined ? undefined : Math.round(step);
  };
  const sums = new Float64Array(steps + 1);
  for (const { object, share } of allLargestFirst(shares)) {
    const step = stepOf(object);
    if (step !== undefined && step >= 1 && step <= steps) sums[step] = (sums[step] as number) + share;
  }
  const stepShares = Array.from({ length: steps }, (_, index) => {
    const step = index + 1;
    return { step, value: stepValue(step, steps), share: (sums[step] as number) + bareAt(step) };
  });
  const groups = plan.scale.groups.map(({ name, key, from, to }) => {
    const inGroup = stepShares.filter(({ step }) => step >= from && step <= to);
    return {
      name,
      key,
      from,
      to,
      share: inGroup.reduce((sum, { share }) => sum + share, 0),
      objects: largestFirst(shares, (object) => {
        const step = stepOf(object);
        return step !== undefined && step >= from && step <= to;
      }),
    };
  });
  return {
    steps: stepShares,
    groups,
    budget: measureBudget(
      plan.valueBudget,
      (key) => groups.find((group) => group.key === key)?.share ?? stepShares[Number(key) - 1]?.share ?? 0,
    ),
    bareShare,
    unplannedShare: totalShare(largestFirst(shares, (object) => stepOf(object) === undefined)),
    ...measureSpread(plan, shares, bareShare),
  };

  function bareAt(step: number): number {
    return step === ground.step ? bareShare : 0;
  }
}
