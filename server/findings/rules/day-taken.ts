import { t } from '../../../grammar/index.js';
import { dayOf } from '../../measure/sittings/days.js';
import type { ScheduledSitting, ScheduleMeasure } from '../../measure/sittings/schedule.js';
import type { Plan } from '../../plan/plan.js';
import { moveTitle } from '../advice/waiting.js';
import { keepsDueDate, type Move, moveEdits, putOff } from '../edits/sittings.js';
import type { Remedy, Rule, RuleFinding } from '../finding.js';
import { dayInWords, sittingName } from '../words/days.js';
import { sittingAndDay } from '../words/layers.js';
import { counted } from '../words/words.js';

export const dayTaken: Rule = {
  id: 'day taken',
  severity: 'warning',
  chapter: 'sittings',
  perObject: false,
  summary: 'A sitting is on a day that the plan says is taken.',
  explanation: 'The days that `away` gives are days without painting.',
  formula: 'first day away <= day of the sitting <= last day away',
  source: 'common practice, no source',
  check: (plan, { schedule }) => {
    if (!schedule) return [];
    return schedule.sittings.flatMap((sitting): RuleFinding[] => {
      const away = plan.away[sitting.away ?? -1];
      const stated = plan.sittings[sitting.sitting];
      if (!away || !stated) return [];
      return [
        {
          message: t(
            '{0} is on a day that is taken: {1}.',
            sittingAndDay(plan, sitting),
            stretch(away.value),
          ),
          location: stated.dateLocation ?? stated.location,
          related: [{ location: away.location, message: t('These days are taken.') }],
          remedy: () => remedy(plan, schedule, sitting),
        },
      ];
    });
  },
};

function stretch({ from, to }: { readonly from: string; readonly to: string }): string {
  const [first, last] = [dayOf(from) ?? 0, dayOf(to) ?? 0];
  return first === last ? dayInWords(first) : t('{0} to {1}', dayInWords(first), dayInWords(last));
}

/** On the next free day, with all that comes after as much later; or on the last one before, where that is dry. */
function remedy(plan: Plan, schedule: ScheduleMeasure, sitting: ScheduledSitting): Remedy {
  const place = schedule.sittings.indexOf(sitting);
  const { day = 0 } = sitting;
  const name = sittingName(plan, sitting.sitting);
  const moves = putOff(schedule, place, schedule.taken.nextFree(day));
  const [first] = moves ?? [];
  if (moves && first && keepsDueDate(schedule, moves)) {
    return {
      advice: onNextFree(moves, dayInWords(first.day)),
      fix: { title: moveTitle(name, first.day, moves), edits: moveEdits(plan, moves) },
    };
  }
  const before = schedule.taken.previousFree(day);
  const behind = schedule.sittings[place - 1]?.day ?? -Infinity;
  if (before >= Math.max(behind, sitting.readyFrom ?? -Infinity)) {
    const move = [{ sitting: sitting.sitting, day: before }];
    return {
      advice: t('Hold it on {0}, the last free day before.', dayInWords(before)),
      fix: { title: moveTitle(name, before, move), edits: moveEdits(plan, move) },
    };
  }
  return {
    advice: t('Hold it on another day, or paint on this one after all and take it out of `away`.'),
  };
}

function onNextFree(moves: readonly Move[], day: string): string {
  const others = moves.length - 1;
  if (others < 1) return t('The next free day is {0}: hold it then.', day);
  return others === 1
    ? t('The next free day is {0}: hold it then, and the sitting after it as much later.', day)
    : t(
        'The next free day is {0}: hold it then, and the {1} sittings after it as much later.',
        day,
        counted(others),
      );
}
