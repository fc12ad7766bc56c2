import { outOfColourBudget } from '../seen/colour-shares.js';
import type { Rule } from '../finding.js';

export const colourBudget: Rule = {
  id: 'colour budget',
  severity: 'warning',
  chapter: 'colour',
  perObject: false,
  summary: 'A colour role covers more or less of the picture than the budget that the plan states.',
  explanation:
    'Colours are budgeted by the area they cover. Each share is measured from what is seen of the shapes that carry a colour of that role.',
  formula: '|visible area of the role / area of the canvas - target| > tolerance',
  source: 'the plan states it',
  check: (plan, measures) =>
    plan.colourBudget?.location
      ? measures.colours.budget
          .filter(({ within }) => !within)
          .map((entry) => outOfColourBudget(plan, measures, entry))
      : [],
};
