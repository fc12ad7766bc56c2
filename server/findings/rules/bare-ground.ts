import { t } from '../../../grammar/index.js';
import type { Rule } from '../finding.js';
import { exceeds } from '../limits.js';
import { placeWithin } from '../seen/seen.js';
import { heading, percent } from '../words/words.js';

export const bareGround: Rule = {
  id: 'bare ground',
  severity: 'hint',
  chapter: 'values',
  limit: { value: 0.02, unit: 'part', of: 'the picture' },
  perObject: false,
  summary: 'Nothing is planned for a part of the canvas.',
  explanation:
    'Where no object lies, the ground shows. That can be a fine thing to plan; left unplanned it is a hole in the value scale and in the colours.',
  formula: 'area that no object covers / area of the canvas > limit',
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    const { bareShare } = measures.areas;
    // An object without a shape is told on its own, and may be what is to lie there.
    const unshaped = measures.areas.layers.some(({ ownArea }) => ownArea === 0);
    if (plan.objects.length === 0 || unshaped || !exceeds(bareShare, limit)) return [];
    const at = placeWithin(measures.areas.bare, plan.canvas);
    return [
      {
        message: t(
          'Bare ground shows on {0} of the picture, where no object lies; up to {1} is let pass.',
          percent(bareShare),
          percent(limit),
        ),
        advice: t(
          'Lay an object behind it, in the background; or, when the ground is meant to show, set this aside with the reason.',
        ),
        location: plan.canvas.ground.location ?? heading(plan),
        ...(at ? { at } : {}),
      },
    ];
  },
};
