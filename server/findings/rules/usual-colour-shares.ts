import { t } from '../../../grammar/index.js';
import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import { outOfColourBudget } from '../seen/colour-shares.js';
import { aboveObjects } from '../edits.js';
import type { Fix, Remedy, Rule } from '../finding.js';
import { exceeds } from '../limits.js';
import { percent } from '../words/words.js';

export const usualColourShares: Rule = {
  id: 'usual colour shares',
  severity: 'hint',
  chapter: 'colour',
  limit: { value: 0.05, unit: 'part', of: 'the picture, from the usual share of a role' },
  perObject: false,
  summary: 'The colours are not shared out as 70 : 20 : 10, and the plan states no budget of its own.',
  explanation:
    'About 70 % of one dominant colour, 20 % of its complement and 10 % of discords is how many painters share colours out. A plan that means something else states `budget colour`.',
  formula: '|visible area of the role / area of the canvas - 70, 20 or 10 %| > limit',
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    if (!plan.colourBudget || plan.colourBudget.location) return [];
    const { budget } = measures.colours;
    const [worst] = budget
      .filter(({ difference }) => exceeds(Math.abs(difference), limit))
      .toSorted((one, other) => Math.abs(other.difference) - Math.abs(one.difference));
    // What one role has too much of the others lack: it is told once, with what to try for the farthest off.
    if (!worst) return [];
    const found = outOfColourBudget(plan, measures, { ...worst, tolerance: limit, within: false });
    return [
      {
        ...found,
        message: `${covered(budget, limit)} ${farthestOff(worst.name)}`,
        remedy: () => orAsMeasured(plan, measures, found.remedy?.() ?? {}),
      },
    ];
  },
};

/** What to try for the one role, or the shares as they are as a budget. */
function orAsMeasured(plan: Plan, measures: Measures, other: Remedy): Remedy {
  const own = asMeasured(plan, measures);
  if (!own) return other;
  return {
    advice: `${other.advice ?? ''} ${t('Or mean it so, and write `{0}`.', own.line)}`,
    fix: own.fix,
  };
}

function covered(budget: readonly BudgetMeasure[], limit: number): string {
  const shareOf = (role: string): string => percent(budget.find(({ name }) => name === role)?.share ?? 0);
  return t(
    'The dominant colour covers {0} of the picture, the complement {1} and the discords {2}; the usual shares are {3}, each within {4}.',
    shareOf('dominant'),
    shareOf('complement'),
    shareOf('discord'),
    inWords(budget.map(({ target }) => percent(target))),
    percent(limit),
  );
}

function farthestOff(role: string): string {
  switch (role) {
    case 'dominant':
      return t('The dominant colour is farthest off.');
    case 'complement':
      return t('The complement is farthest off.');
    default:
      return t('The discords are farthest off.');
  }
}

/**
 * The shares as they are, for the plan that means them: whole percent, rounded down so that they add up to no more than
 * all.
 */
function asMeasured(
  plan: Plan,
  { colours }: Measures,
): { readonly line: string; readonly fix: Fix } | undefined {
  const shares = colours.roles
    .map(({ role, share }) => ({ role, share: Math.floor(share * 100 + 1e-6) }))
    .filter(({ share }) => share > 0)
    .map(({ role, share }) => `${role} ${share}%`);
  if (shares.length === 0) return undefined;
  const line = `budget  colour ${shares.join(', ')} within 5%`;
  const edits = aboveObjects(plan, line);
  return edits && { line, fix: { title: t('State these shares as the colour budget'), edits } };
}
