import type { Rule } from '../finding.js';
import { heading } from '../words.js';

export const noFocus: Rule = {
  id: 'no focus',
  severity: 'hint',
  chapter: 'centre of interest',
  perObject: false,
  summary: 'The plan names no centre of interest.',
  explanation:
    'A picture is designed around the place where the eye is to rest. Everything else is measured from it.',
  formula: 'no `focus` in a plan with objects',
  source: 'common practice, no source',
  check: (plan) =>
    plan.focus || plan.objects.length === 0 || plan.focusUnplaced
      ? []
      : [
          {
            message: 'The plan names no centre of interest.',
            advice: 'Pick a crossing: `focus upper right`, say.',
            location: heading(plan),
          },
        ],
};
