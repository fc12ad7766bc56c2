import { t } from '../../../grammar/index.js';
import type { Coat } from '../../measure/sittings/schedule.js';
import { THIN_FILM } from '../../measure/sittings/layers.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { type Meeting, meetings } from '../seen/meetings.js';
import { daysInWords, sittingName } from '../words/days.js';
import { binderWords, objectsNamed } from '../words/layers.js';
import { quoted } from '../words/words.js';
import { relatedTo } from './over-wet-paint.js';

const ID = 'fast over slow';

export const fastOverSlow: Rule = {
  id: ID,
  severity: 'hint',
  chapter: 'sittings',
  perObject: true,
  summary: 'Paint that dries fast goes over paint that dries slowly.',
  explanation:
    'What dries first is stiff while the layer below still moves, and cracks over it. Umbers, cobalt blues and lead white are fast and belong below; alizarin, quinacridones and arylides are slow and belong above. Alkyd is faster than any oil. The slowest paint of a mixture counts. A toned ground, rubbed on thin and lean, is passed over.',
  formula:
    'days of the slowest paint above, in a thin film < days of the slowest paint next below on the same object',
  source:
    'a large paint maker’s drying guide, “slow drying over fast drying”; M. Saitzyk, Art Hardware (1987): a faster-drying paint should never go over a slower-drying one',
  check: (plan, measures) =>
    meetings(plan, measures, ID, 'faster over slower').map((meeting): RuleFinding => {
      const { above, below, worst, objects, coatAbove, coatBelow } = meeting;
      const [slow, fast] = worst.thinFilmDays ?? [0, 0];
      return {
        message: t(
          '{0} lays what dries in {1} over {2}, which takes {3}, on {4}: in thin films of {5} mm, {6} against {7}.',
          sittingName(plan, above.sitting),
          daysInWords(fast),
          sittingName(plan, below.sitting),
          daysInWords(slow),
          objectsNamed(plan, objects),
          THIN_FILM,
          whose(plan, coatAbove),
          whose(plan, coatBelow),
        ),
        advice: advice(plan, meeting),
        location: plan.sittings[above.sitting]?.location ?? { line: 0, start: 0, end: 0 },
        related: relatedTo(plan, below.sitting, t('{0} lies below.', sittingName(plan, below.sitting))),
        objects,
        excess: slow - fast,
      };
    }),
};

function whose(plan: Plan, { restsOn, slowest, laid }: Coat): string {
  if (restsOn === 'binder') return binderWords(laid.binder);
  const paint = plan.palette?.paints[slowest?.paint ?? -1];
  return paint ? quoted(paint.name) : t('a usual oil paint');
}

function advice(plan: Plan, { below, coatAbove, coatBelow }: Meeting): string {
  if (coatAbove.laid.binder === 'alkyd') {
    return t('Keep the alkyd for the layers below, and lay this one in oil.');
  }
  const paint = plan.palette?.paints[coatBelow.slowest?.paint ?? -1];
  const lower = sittingName(plan, below.sitting);
  return paint
    ? t('Lay {0} with an alkyd medium, or mix what it lays there without {1}.', lower, quoted(paint.name))
    : t('Lay {0} with an alkyd medium, or mix it of paints that dry faster.', lower);
}
