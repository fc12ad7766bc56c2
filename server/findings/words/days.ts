import { marked, said, t } from '../../../grammar/index.js';
import { partsOfDay, weekdayOf } from '../../measure/sittings/days.js';
import type { Plan } from '../../plan/plan.js';
import { cueOpening } from './cues.js';
import { counted } from './words.js';

/** A day of each month. */
const DAYS = [
  marked('{0} January {1}'),
  marked('{0} February {1}'),
  marked('{0} March {1}'),
  marked('{0} April {1}'),
  marked('{0} May {1}'),
  marked('{0} June {1}'),
  marked('{0} July {1}'),
  marked('{0} August {1}'),
  marked('{0} September {1}'),
  marked('{0} October {1}'),
  marked('{0} November {1}'),
  marked('{0} December {1}'),
];

const WEEKDAYS = [
  marked('Sunday'),
  marked('Monday'),
  marked('Tuesday'),
  marked('Wednesday'),
  marked('Thursday'),
  marked('Friday'),
  marked('Saturday'),
];

/** A day as it is said: `22 January 2027`. */
export function dayInWords(day: number): string {
  const { year, month, day: ofMonth } = partsOfDay(day);
  return said(DAYS[month - 1] ?? '{0} {1}', ofMonth, year);
}

export function weekdayInWords(day: number): string {
  return said(WEEKDAYS[weekdayOf(day)] ?? '');
}

/** `Friday 22 January 2027` */
export function weekdayAndDay(day: number): string {
  return t('{0} {1}', weekdayInWords(day), dayInWords(day));
}

/** So many days: `one day`, `five days`, `16 days`. */
export function daysInWords(days: number): string {
  return days === 1 ? t('one day') : t('{0} days', counted(days));
}

/** A sitting by its title: `“Block in”`; by its line too when it has none. */
export function sittingName({ sittings }: Pick<Plan, 'sittings'>, index: number): string {
  const sitting = sittings[index];
  if (sitting === undefined) return '';
  const title = cueOpening(sitting.title.trim());
  return title === '' ? t('“untitled, line {0}”', sitting.location.line + 1) : t('“{0}”', title);
}
