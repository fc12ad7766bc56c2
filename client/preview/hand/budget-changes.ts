import type { BudgetBars } from '../../../server/drawing/scene.js';

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What a change does to the budgets, in words: `dark 30 % → 34 %`; only what can be read off the bars. */
export function budgetChanges(
  before: readonly BudgetBars[],
  after: readonly BudgetBars[],
): readonly string[] {
  return after.flatMap(({ of, bars }) => {
    const earlier = before.find((each) => each.of === of)?.bars ?? [];
    return bars.flatMap((bar) => {
      const was = earlier.find(({ key }) => key === bar.key);
      if (was === undefined || percent(was.share) === percent(bar.share)) return [];
      const missed = bar.within === was.within ? '' : bar.within ? ', as wanted now' : ', not as wanted now';
      const name = of === 'colour' ? `${bar.name.toLowerCase()} colour` : bar.name;
      return [`${name} ${percent(was.share)} → ${percent(bar.share)}${missed}`];
    });
  });
}
