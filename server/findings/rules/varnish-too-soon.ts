import { t } from '../../../grammar/index.js';
import { isDryingOil } from '../../measure/sittings/layers.js';
import { VARNISH_AFTER_MONTHS } from '../../measure/sittings/working-back.js';
import type { Plan } from '../../plan/plan.js';
import { waitRemedy } from '../advice/waiting.js';
import type { Rule, RuleFinding } from '../finding.js';
import { type Meeting, meetings } from '../seen/meetings.js';
import { dayInWords, daysInWords, sittingName } from '../words/days.js';
import { objectsNamed, restsOn, sittingAndDay } from '../words/layers.js';
import { counted } from '../words/words.js';
import { relatedTo } from './over-wet-paint.js';

const ID = 'varnish too soon';

export const varnishTooSoon: Rule = {
  id: ID,
  severity: 'warning',
  chapter: 'sittings',
  perObject: true,
  summary: 'A varnish goes on before the paint below is ready for it.',
  explanation:
    'Oil paint that is dry to the touch is soft below for months. A final varnish shuts it in, sinks into it and can’t be taken off again without it. A retouch varnish is thinner and lets it breathe: a sitting with the layer varnish whose title, task or medium says “retouch” may be held as soon as everything is dry to the touch. Over paint that does not dry as oil does, a varnish may go on when it is dry. Makers of some modern varnishes say otherwise: then set this aside with what they say.',
  formula: `day of the varnish < day of the last oil or alkyd layer + ${VARNISH_AFTER_MONTHS} months; of a retouch varnish, and over other paint: < the day on which all below it is dry to the touch`,
  source: 'common practice, no source',
  check: (plan, measures) => {
    const { schedule } = measures;
    return meetings(plan, measures, ID, 'varnish too soon').map((meeting): RuleFinding => ({
      message: t(
        '{0} comes {1} too soon for {2}: {3}',
        sittingAndDay(plan, meeting.above),
        daysInWords(meeting.worst.missing ?? 0),
        objectsNamed(plan, meeting.objects),
        why(plan, meeting),
      ),
      location: plan.sittings[meeting.above.sitting]?.location ?? { line: 0, start: 0, end: 0 },
      related: relatedTo(
        plan,
        meeting.below.sitting,
        t('{0} lies below.', sittingAndDay(plan, meeting.below)),
      ),
      objects: meeting.objects,
      excess: meeting.worst.missing ?? 0,
      ...(schedule ? { remedy: () => waitRemedy(plan, schedule, meeting) } : {}),
    }));
  },
};

function why(plan: Plan, { above, below, worst, coatBelow }: Meeting): string {
  const from = dayInWords((above.day ?? 0) + (worst.missing ?? 0));
  if (above.varnish === 'final' && isDryingOil(below.binder)) {
    return t(
      'a final varnish waits {0} months for oil paint, and the last of it is laid in {1}, so until {2}.',
      counted(VARNISH_AFTER_MONTHS),
      sittingAndDay(plan, below),
      from,
    );
  }
  const name = sittingName(plan, below.sitting);
  return `${t('it waits until {0} is dry to the touch, on {1}.', name, from)} ${restsOn(plan, coatBelow)}`;
}
