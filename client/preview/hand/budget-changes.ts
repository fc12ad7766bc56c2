import { t } from '../../../grammar/localised.js';
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
      const name = of === 'colour' ? t('{0} colour', bar.name.toLowerCase()) : bar.name;
      const change = `${name} ${percent(was.share)} → ${percent(bar.share)}`;
      if (bar.within === was.within) return [change];
      return [bar.within ? t('{0}, as wanted now', change) : t('{0}, not as wanted now', change)];
    });
  });
}
