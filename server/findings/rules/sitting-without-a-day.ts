import { t } from '../../../grammar/index.js';
import { isoOf, monthsOn } from '../../measure/sittings/days.js';
import { isDryingOil } from '../../measure/sittings/layers.js';
import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { VARNISH_AFTER_MONTHS } from '../../measure/sittings/working-back.js';
import type { Plan } from '../../plan/plan.js';
import { replace, rightBehind } from '../edits/edit.js';
import { lastDayToEnd } from '../edits/sittings.js';
import type { Remedy, Rule, RuleFinding } from '../finding.js';
import { dayInWords, sittingName } from '../words/days.js';
import { sittingAndDay } from '../words/layers.js';

export const sittingWithoutADay: Rule = {
  id: 'sitting without a day',
  severity: 'hint',
  chapter: 'sittings',
  perObject: false,
  summary: 'A sitting has no day, and others have.',
  explanation:
    'Of a sitting without a day nothing tells when its paint is dry, nor whether what is below it is. It is taken to come behind the sitting that it follows in the text.',
  formula: 'no date, where another sitting has one',
  source: 'common practice, no source',
  check: (plan, { schedule }) => {
    if (!schedule?.sittings.some(({ day }) => day !== undefined)) return [];
    return schedule.sittings.flatMap(({ sitting, day }, place): RuleFinding[] => {
      const stated = plan.sittings[sitting];
      if (day !== undefined || !stated || stated.faulty) return [];
      return [
        {
          message: t(
            '{0} has no day, so nothing tells whether what it lays is laid on dry paint.',
            sittingName(plan, sitting),
          ),
          location: stated.location,
          remedy: () => remedy(plan, schedule, place),
        },
      ];
    });
  },
};

/** The first free day from which on it goes over nothing wet, if it is dry itself before the next sitting. */
function remedy(plan: Plan, schedule: ScheduleMeasure, place: number): Remedy {
  const { sittings, taken, isSettled } = schedule;
  const own = sittings[place];
  const stated = plan.sittings[own?.sitting ?? -1];
  const before = sittings.slice(0, place).findLast(({ day }) => day !== undefined)?.day;
  const after = sittings.slice(place + 1).find(({ day }) => day !== undefined)?.day;
  const { dryingDays = 0, readyFrom = -Infinity } = own ?? {};
  const first = Math.max(readyFrom, before === undefined ? (after ?? 0) - dryingDays : before + 1);
  const day = before === undefined ? taken.previousFree(first) : taken.nextFree(first);
  if (!stated || !isSettled) return { advice: t('Give it one: `on YYYY-MM-DD` behind its title.') };
  const isRoom = (after === undefined || day + dryingDays <= after) && leavesTime(schedule, place, day);
  if (!isRoom || day < readyFrom) {
    return {
      advice: t(
        'Give it one; it goes over nothing wet from {0} on, but what comes after it has to be put off then.',
        dayInWords(day),
      ),
    };
  }
  return {
    advice: t('Give it one, such as `on {0}`, when everything below it is dry.', isoOf(day)),
    fix: {
      title: t('Hold {0}', sittingAndDay(plan, { sitting: own?.sitting ?? 0, day })),
      edits: [replace(rightBehind(stated.location), ` on ${isoOf(day)}`)],
    },
  };
}

/** Whether on a day it is dry by the due date, and no final varnish after it comes too soon. */
function leavesTime(schedule: ScheduleMeasure, place: number, day: number): boolean {
  const { sittings } = schedule;
  const { dryingDays = 0, layer, binder } = sittings[place] ?? {};
  if (day + dryingDays > lastDayToEnd(schedule)) return false;
  if (layer === 'varnish' || binder === undefined || !isDryingOil(binder)) return true;
  const hard = monthsOn(day, VARNISH_AFTER_MONTHS);
  return !sittings.slice(place + 1).some((later) => later.varnish === 'final' && (later.day ?? hard) < hard);
}
