import { crossingOffMiddle, IN_THE_MIDDLE } from '../seen/crossings.js';
import { focusEdit } from '../edits.js';
import type { Rule } from '../finding.js';
import { exceeds } from '../limits.js';
import { againstLimit, length } from '../words/words.js';

export const centredFocus: Rule = {
  id: 'centred focus',
  severity: 'hint',
  chapter: 'centre of interest',
  limit: { value: IN_THE_MIDDLE, unit: 'part', of: 'the diagonal' },
  perObject: false,
  summary: 'The focal point lies in the very middle of the canvas.',
  explanation:
    'The middle, and any place equally far from two sides, is weak: nothing pulls the eye one way or the other.',
  formula: 'distance to the middle of the canvas / diagonal <= limit',
  source:
    'H. R. Poore, Pictorial Composition (1903), on the weakness of the centre; the limit is common practice',
  check: (plan, measures, limit) => {
    const { focus } = measures;
    if (!plan.focus || !focus || exceeds(focus.fromCentre, limit)) return [];
    const crossing = crossingOffMiddle(plan, measures, limit);
    const edits = crossing && focusEdit(plan, crossing.words);
    const { measured, wanted } = againstLimit(focus.fromCentre, limit, plan.canvas);
    const where = exceeds(focus.fromCentre, 0)
      ? `in the middle of the canvas, ${measured} off`
      : 'in the very middle of the canvas';
    return [
      {
        message: `The focal point lies ${where}; more than ${wanted} off counts as clear of it.`,
        advice: crossing
          ? `Move it to ${crossing.words}, ${length(crossing.distance, plan.canvas)} away, or set this aside if the stillness is meant.`
          : 'Move it towards one side, or set this aside if the stillness is meant.',
        location: plan.focus.location,
        at: plan.focus.at,
        ...(crossing && edits ? { fix: { title: `Move the focal point to ${crossing.words}`, edits } } : {}),
      },
    ];
  },
};
