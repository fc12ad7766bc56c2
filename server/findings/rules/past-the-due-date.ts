import { t } from '../../../grammar/index.js';
import type { ScheduledSitting, ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { FIRST_DAY } from '../../measure/sittings/days.js';
import { inWords } from '../../plan/problems.js';
import type { Plan } from '../../plan/plan.js';
import { moveEdits } from '../edits/sittings.js';
import type { Remedy, Rule, RuleFinding } from '../finding.js';
import { dayInWords, daysInWords, sittingName } from '../words/days.js';
import { sittingAndDay } from '../words/layers.js';
import { counted } from '../words/words.js';

/** So many sittings are told with their latest days; of more the first. */
const MOST_TOLD = 3;

export const pastTheDueDate: Rule = {
  id: 'past the due date',
  severity: 'warning',
  chapter: 'sittings',
  perObject: false,
  summary: 'The picture is not dry to the touch on the day it must be ready.',
  explanation:
    'A picture that leaves the studio is dry to the touch at least. The latest day of each sitting is worked back from the due date: everything dry by then, every layer on one that is ready for it, and no sitting on a day that is taken.',
  formula:
    'greatest of (day of a sitting + days until the last of what it lays is dry to the touch) > due date',
  source: 'common practice, no source; days of paints as for over wet paint',
  check: (plan, { schedule }) => {
    const due = schedule?.due;
    if (!schedule || due?.readyOn === undefined || due.readyOn <= due.day) return [];
    const { day, readyOn } = due;
    const last = schedule.sittings.findLast((one) => (one.dryOn ?? one.day) === readyOn);
    const stated = plan.sittings[last?.sitting ?? -1];
    if (!last || !stated) return [];
    const late = daysInWords(readyOn - day);
    return [
      {
        message:
          last.dryOn === readyOn
            ? t(
                'The picture must be ready on {0}, and {1} is not dry to the touch before {2}: {3} late.',
                dayInWords(day),
                sittingAndDay(plan, last),
                dayInWords(readyOn),
                late,
              )
            : t(
                'The picture must be ready on {0}, and {1} is only on {2}: {3} late.',
                dayInWords(day),
                sittingName(plan, last.sitting),
                dayInWords(readyOn),
                late,
              ),
        location: stated.dateLocation ?? stated.location,
        related: plan.due ? [{ location: plan.due.location, message: t('The due date is here.') }] : [],
        remedy: (): Remedy => remedy(plan, schedule),
      } satisfies RuleFinding,
    ];
  },
};

/** Every sitting that comes too late on its latest day: then what dries in between has its time too. */
function remedy(plan: Plan, { sittings }: ScheduleMeasure): Remedy {
  const late = sittings.flatMap(({ sitting, day, latest, slack }): readonly Late[] =>
    day === undefined || latest === undefined || (slack ?? 0) >= 0 ? [] : [{ sitting, latest }],
  );
  const [first] = late;
  if (!first || first.latest < FIRST_DAY) return { advice: t('Give the picture a later due date.') };
  const told = late
    .slice(0, MOST_TOLD)
    .map(({ sitting, latest }) => sittingAndDay(plan, { sitting, day: latest }));
  const more = late.length - told.length;
  const all = inWords(more > 0 ? [...told, moreOnLatestDays(more)] : told);
  return {
    advice: t('Hold {0} at the latest; or lay thinner films, or use an alkyd medium.', all),
    fix: {
      title:
        late.length > 1
          ? t('Hold {0} sittings on their latest days', counted(late.length))
          : t('Hold {0}', all),
      edits: moveEdits(
        plan,
        late.map(({ sitting, latest }) => ({ sitting, day: latest })),
      ),
    },
  };
}

function moreOnLatestDays(count: number): string {
  return count === 1 ? t('one more on its latest day') : t('{0} more on their latest days', counted(count));
}

type Late = Pick<ScheduledSitting, 'sitting'> & { readonly latest: number };
