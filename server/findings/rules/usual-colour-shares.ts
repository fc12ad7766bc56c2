import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { outOfColourBudget } from '../colour-shares.js';
import { aboveObjects } from '../edits.js';
import type { Fix, Rule } from '../finding.js';

export const usualColourShares: Rule = {
  id: 'usual colour shares',
  severity: 'hint',
  chapter: 'colour',
  perObject: false,
  summary: 'The colours are not shared out as 70 : 20 : 10, and the plan states no budget of its own.',
  explanation:
    'About 70 % of one dominant colour, 20 % of its complement and 10 % of discords is how many painters share colours out. A plan that means something else states `budget colour`.',
  formula: '|visible area of the role / area of the canvas - 70, 20 or 10 %| > 5 %',
  source: 'common practice, no source',
  check: (plan, measures) => {
    if (!plan.colourBudget || plan.colourBudget.location) return [];
    const fix = asMeasured(plan, measures);
    return outOfColourBudget(plan, measures, 'the usual share is').map((found) => ({
      ...found,
      ...(fix ? { fix } : {}),
    }));
  },
};

/** The shares as they are, for the plan that means them: whole percent, rounded down so that they add up to no more than all. */
function asMeasured(plan: Plan, { colours }: Measures): Fix | undefined {
  const shares = colours.roles
    .map(({ role, share }) => ({ role, share: Math.floor(share * 100) }))
    .filter(({ share }) => share > 0)
    .map(({ role, share }) => `${role} ${share}%`);
  if (shares.length === 0) return undefined;
  const edits = aboveObjects(plan, `budget  colour ${shares.join(', ')} within 5%`);
  return edits && { title: 'State these shares as the colour budget', edits };
}
