import { partsOfDay, weekdayOf } from '../../measure/sittings/days.js';

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** `Mon 11 Jan 2027` */
export function shortDate(day: number): string {
  return `${WEEKDAYS[weekdayOf(day)] ?? ''} ${dayAndMonth(day)} ${partsOfDay(day).year}`;
}

/** `11 Jan` */
export function dayAndMonth(day: number): string {
  const { day: ofMonth, month } = partsOfDay(day);
  return `${ofMonth} ${MONTHS[month - 1] ?? ''}`;
}

/** A day at which a scale of time has a tick. */
export interface Tick {
  readonly day: number;
  readonly label: string;
  /** Where it is the first of its year. */
  readonly year?: string;
}

type Step = { readonly unit: 'day' | 'month' | 'year'; readonly count: number };

/** Steps of a scale of time, the finest first; a week begins on a Monday. */
const STEPS: readonly Step[] = [
  { unit: 'day', count: 1 },
  { unit: 'day', count: 7 },
  { unit: 'day', count: 14 },
  { unit: 'month', count: 1 },
  { unit: 'month', count: 3 },
  ...[1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 5000].map((count) => ({ unit: 'year' as const, count })),
];
const DAYS_IN: Readonly<Record<Step['unit'], number>> = { day: 1, month: 30.4, year: 365.2 };

/** Ticks from one day to another, no nearer together than `least` days. */
export function ticksBetween(from: number, to: number, least: number): readonly Tick[] {
  const step = STEPS.find(({ unit, count }) => DAYS_IN[unit] * count >= least) ?? STEPS.at(-1);
  if (step === undefined) return [];
  let year: number | undefined;
  return daysOf(step, from, to).map((day) => {
    const at = partsOfDay(day);
    const isFirst = at.year !== year;
    year = at.year;
    if (step.unit === 'year') return { day, label: String(at.year) };
    const label = step.unit === 'month' ? (MONTHS[at.month - 1] ?? '') : dayAndMonth(day);
    return { day, label, ...(isFirst ? { year: String(at.year) } : {}) };
  });
}

function daysOf({ unit, count }: Step, from: number, to: number): readonly number[] {
  const first = partsOfDay(from);
  const at = (index: number): number => {
    switch (unit) {
      case 'day': {
        // Weeks begin on Mondays: 1970-01-05 was one.
        const offset = count === 1 ? 0 : (((4 - from) % 7) + 7) % 7;
        return from + offset + index * count;
      }
      case 'month':
        return monthDay(first.year, Math.ceil((first.month - 1) / count) * count + index * count);
      case 'year':
        return monthDay(Math.ceil(first.year / count) * count + index * count, 0);
    }
  };
  const days: number[] = [];
  for (let index = 0; at(index) <= to; index++) if (at(index) >= from) days.push(at(index));
  return days;
}

/** The first day of a month, 0 for January, which may be counted beyond December. */
function monthDay(year: number, month: number): number {
  const at = new Date(0);
  at.setUTCFullYear(year, month, 1);
  return at.getTime() / 86_400_000;
}
