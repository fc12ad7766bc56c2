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
      message: message(plan, meeting),
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

function message(plan: Plan, { above, below, worst, coatBelow, objects }: Meeting): string {
  const missing = worst.missing ?? 0;
  const tooSoon = [sittingAndDay(plan, above), daysInWords(missing), objectsNamed(plan, objects)] as const;
  const from = dayInWords((above.day ?? 0) + missing);
  if (above.varnish === 'final' && isDryingOil(below.binder)) {
    return t(
      '{0} comes {1} too soon for {2}: a final varnish waits {3} months for oil paint, and the last of it is laid in {4}, so until {5}.',
      ...tooSoon,
      counted(VARNISH_AFTER_MONTHS),
      sittingAndDay(plan, below),
      from,
    );
  }
  return `${t(
    '{0} comes {1} too soon for {2}: it waits until {3} is dry to the touch, on {4}.',
    ...tooSoon,
    sittingName(plan, below.sitting),
    from,
  )} ${restsOn(plan, coatBelow)}`;
}
