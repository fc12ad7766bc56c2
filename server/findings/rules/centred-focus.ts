import type { Rule } from '../finding.js';
import { exceeds } from '../limits.js';
import { percent } from '../words.js';

export const centredFocus: Rule = {
  id: 'centred focus',
  severity: 'hint',
  chapter: 'centre of interest',
  limit: { value: 0.04, unit: 'part', of: 'the diagonal' },
  perObject: false,
  summary: 'The focal point lies in the very middle of the canvas.',
  explanation:
    'The middle, and any place equally far from two sides, is weak: nothing pulls the eye one way or the other.',
  formula: 'distance to the middle of the canvas / diagonal <= limit',
  source:
    'H. R. Poore, Pictorial Composition (1903), on the weakness of the centre; the limit is common practice',
  check: (plan, { focus }, limit) => {
    if (!plan.focus || !focus || exceeds(focus.fromCentre, limit)) return [];
    return [
      {
        message: `The focal point lies in the middle of the canvas (${percent(focus.fromCentre)} of the diagonal off it).`,
        advice: 'Move it to a crossing, or set this aside if the stillness is meant.',
        location: plan.focus.location,
      },
    ];
  },
};
