import { t } from '../../../grammar/index.js';
import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import type { Plan } from '../../plan/plan.js';
import { waitRemedy } from '../advice/waiting.js';
import type { Rule, RuleFinding } from '../finding.js';
import { type Meeting, meetings } from '../seen/meetings.js';
import { dayInWords, daysInWords, sittingName } from '../words/days.js';
import { objectsNamed, restsOn, sittingAndDay } from '../words/layers.js';

const ID = 'over wet paint';

export const overWetPaint: Rule = {
  id: ID,
  severity: 'hint',
  chapter: 'sittings',
  perObject: true,
  summary: 'A layer goes over paint that is not dry to the touch yet.',
  explanation:
    'Paint over paint that is still wet picks it up, and the colour below gets into the one above. Oil that is shut in while it is soft goes on moving under a skin that does not, and wrinkles or cracks it. Painting wet in wet on purpose is another way of working: then set this aside for the objects that are painted so.',
  formula:
    'day of the layer < day of the layer below + days to dry; days to dry = days of the slowest paint of the mixture x film / 0.15 mm, rounded up; alkyd one day, water paints and tempera none',
  source:
    'days of paints as the drying guide of a large paint maker and Saitzyk, Art Hardware (1987) give them, the slower where they disagree; what the film and the medium make of them is common practice, no source',
  check: (plan, measures) =>
    meetings(plan, measures, ID, 'not dry').map((meeting) =>
      waitingFinding(plan, measures.schedule, meeting),
    ),
};

/** A layer that comes before the one below it is dry to the touch. */
export function waitingFinding(
  plan: Plan,
  schedule: ScheduleMeasure | undefined,
  meeting: Meeting,
): RuleFinding {
  const { below, above, objects, worst, coatBelow } = meeting;
  const { missing = 0 } = worst;
  const dry = dayInWords((above.day ?? 0) + missing);
  const under = sittingName(plan, below.sitting);
  return {
    message: `${t(
      '{0} goes over {1}, which is not dry to the touch before {2}, {3} later: on {4}.',
      sittingAndDay(plan, above),
      under,
      dry,
      daysInWords(missing),
      objectsNamed(plan, objects),
    )} ${restsOn(plan, coatBelow)}`,
    location: plan.sittings[above.sitting]?.location ?? { line: 0, start: 0, end: 0 },
    related: relatedTo(plan, below.sitting, t('{0} lies below.', sittingAndDay(plan, below))),
    objects,
    excess: missing,
    ...(schedule ? { remedy: () => waitRemedy(plan, schedule, meeting) } : {}),
  };
}

/** Where the sitting stands that a finding is about as well. */
export function relatedTo(
  { sittings }: Plan,
  sitting: number,
  message: string,
): NonNullable<RuleFinding['related']> {
  const location = sittings[sitting]?.location;
  return location ? [{ location, message }] : [];
}
