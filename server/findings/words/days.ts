import { partsOfDay, weekdayOf } from '../../measure/sittings/days.js';
import type { Plan } from '../../plan/plan.js';
import { cueOpening } from './cues.js';
import { counted } from './words.js';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** A day as it is said: `22 January 2027`. */
export function dayInWords(day: number): string {
  const { year, month, day: ofMonth } = partsOfDay(day);
  return `${ofMonth} ${MONTHS[month - 1] ?? ''} ${year}`;
}

export function weekdayInWords(day: number): string {
  return WEEKDAYS[weekdayOf(day)] ?? '';
}

/** `Friday 22 January 2027` */
export function weekdayAndDay(day: number): string {
  return `${weekdayInWords(day)} ${dayInWords(day)}`;
}

/** So many days: `one day`, `five days`, `16 days`. */
export function daysInWords(days: number): string {
  return days === 1 ? 'one day' : `${counted(days)} days`;
}

/** A sitting by its title: `“Block in”`; by its line too when it has none. */
export function sittingName({ sittings }: Pick<Plan, 'sittings'>, index: number): string {
  const sitting = sittings[index];
  if (sitting === undefined) return '';
  const title = cueOpening(sitting.title.trim());
  return title === '' ? `“untitled, line ${sitting.location.line + 1}”` : `“${title}”`;
}
