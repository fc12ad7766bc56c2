import { outOfColourBudget } from '../colour-shares.js';
import type { Rule } from '../finding.js';

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
  check: (plan, measures) =>
    plan.colourBudget && !plan.colourBudget.location
      ? outOfColourBudget(plan, measures, 'the usual share is')
      : [],
};
