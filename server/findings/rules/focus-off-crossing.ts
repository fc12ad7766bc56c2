import { t } from '../../../grammar/index.js';
import { crossingOffMiddle, IN_THE_MIDDLE } from '../seen/crossings.js';
import { focusFix } from '../advice/focus.js';
import type { Rule } from '../finding.js';
import { exceeds, isOff } from '../limits.js';
import { againstLimit, percent } from '../words/words.js';

export const focusOffCrossing: Rule = {
  id: 'focus off crossing',
  severity: 'hint',
  chapter: 'division',
  limit: { value: 0.02, unit: 'part', of: 'the diagonal' },
  perObject: false,
  summary: 'The focal point lies on no crossing of the division.',
  explanation:
    'The canvas is divided so that the centre of interest can sit on a crossing. A point beside all of them wants a reason; one in the very middle of the canvas is told as such.',
  formula: `distance to the nearest place where lines of one division meet, crossings with a name or without / diagonal > limit, and the point farther than ${percent(IN_THE_MIDDLE)} of it from the middle of the canvas`,
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    const { focus } = measures;
    if (!plan.focus || !focus?.nearest || isOff(plan.focus.at, plan.canvas)) return [];
    // Where lines meet without a name is a crossing too, but none that words could send a focal point to.
    if (!exceeds(focus.fromMeeting ?? focus.nearest.distanceShare, limit)) return [];
    // A focal point in the very middle is told as such, with the crossing to go to.
    if (!exceeds(focus.fromCentre, IN_THE_MIDDLE)) return [];
    const { crossing, system, distanceShare } = focus.nearest;
    const { measured, wanted } = againstLimit(distanceShare, limit, plan.canvas);
    // The middle is a crossing of some divisions, but no place to send a focal point to.
    const words = crossingOffMiddle(plan, measures, IN_THE_MIDDLE)?.words;
    const fix = focusFix(plan, words);
    return [
      {
        message: t(
          'The focal point lies on no crossing: the nearest, {0} of {1}, is {2} away; up to {3} counts as on it.',
          crossing.name,
          system,
          measured,
          wanted,
        ),
        advice:
          words === undefined
            ? t('Divide the canvas so that a crossing falls there.')
            : t('Write `focus {0}`, or divide the canvas so that a crossing falls there.', words),
        location: plan.focus.location,
        at: plan.focus.at,
        ...(fix ? { fix } : {}),
      },
    ];
  },
};
