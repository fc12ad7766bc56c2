import { t } from '../../../grammar/index.js';
import { crossingOffMiddle, IN_THE_MIDDLE } from '../seen/crossings.js';
import { focusFix } from '../advice/focus.js';
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
    const fix = focusFix(plan, crossing?.words);
    const { measured, wanted } = againstLimit(focus.fromCentre, limit, plan.canvas);
    return [
      {
        message: exceeds(focus.fromCentre, 0)
          ? t(
              'The focal point lies in the middle of the canvas, {0} off; more than {1} off counts as clear of it.',
              measured,
              wanted,
            )
          : t(
              'The focal point lies in the very middle of the canvas; more than {0} off counts as clear of it.',
              wanted,
            ),
        advice: crossing
          ? t(
              'Move it to {0}, {1} away, or set this aside if the stillness is meant.',
              crossing.words,
              length(crossing.distance, plan.canvas),
            )
          : t('Move it towards one side, or set this aside if the stillness is meant.'),
        location: plan.focus.location,
        at: plan.focus.at,
        ...(fix ? { fix } : {}),
      },
    ];
  },
};
