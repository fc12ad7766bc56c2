const MILLISECONDS_A_DAY = 86_400_000;

/** A stretch of days, both ends included. */
export interface DaysTaken {
  readonly from: number;
  readonly to: number;
}

/**
 * The number of a day, counted from 1970-01-01; undefined for what is no day of the calendar. No time zone plays a
 * part.
 */
export function dayOf(iso: string): number | undefined {
  const milliseconds = Date.parse(`${iso}T00:00:00Z`);
  if (Number.isNaN(milliseconds)) return undefined;
  const day = milliseconds / MILLISECONDS_A_DAY;
  return isoOf(day) === iso ? day : undefined;
}

/** The first and the last day that can be written with a year of four figures: 0000-01-01, 9999-12-31. */
export const FIRST_DAY = -719_528;
export const LAST_DAY = 2_932_896;

/** `2027-01-22`; a day that can't be written so counts as the last one that can. */
export function isoOf(day: number): string {
  return dateOf(day).toISOString().slice(0, 10);
}

/** 0 for Sunday to 6 for Saturday. */
export function weekdayOf(day: number): number {
  return dateOf(day).getUTCDay();
}

/** Year, month from 1, and day of the month. */
export function partsOfDay(day: number): {
  readonly year: number;
  readonly month: number;
  readonly day: number;
} {
  const date = dateOf(day);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** The same day of the month so many months on, or back; where that month is too short, its last day. */
export function monthsOn(day: number, months: number): number {
  const date = dateOf(day);
  const wanted = date.getUTCDate();
  date.setUTCDate(1);
  date.setUTCMonth(date.getUTCMonth() + months);
  const lastOfMonth = new Date(date);
  lastOfMonth.setUTCMonth(lastOfMonth.getUTCMonth() + 1, 0);
  date.setUTCDate(Math.min(wanted, lastOfMonth.getUTCDate()));
  return date.getTime() / MILLISECONDS_A_DAY;
}

/** The last day from which so many months on is no later than a given day. */
export function latestMonthsBefore(day: number, months: number): number {
  let latest = monthsOn(day, -months);
  while (monthsOn(latest + 1, months) <= day) latest++;
  return latest;
}

function dateOf(day: number): Date {
  return new Date(Math.min(Math.max(day, FIRST_DAY), LAST_DAY) * MILLISECONDS_A_DAY);
}

/** The days that a painter has said are taken, to be asked about day by day. */
export class TakenDays {
  readonly #stretches: readonly (DaysTaken & { readonly index: number })[];
  /** For each of `#stretches`, the one among it and those before it that lasts longest. */
  readonly #lasting: readonly (DaysTaken & { readonly index: number })[];

  constructor(stretches: readonly DaysTaken[]) {
    this.#stretches = stretches
      .map((stretch, index) => ({ ...stretch, index }))
      .sort((one, other) => one.from - other.from || one.index - other.index);
    let longest = this.#stretches[0];
    this.#lasting = this.#stretches.map((stretch) => {
      if (longest === undefined || stretch.to > longest.to) longest = stretch;
      return longest;
    });
  }

  /** Which stretch holds the day, as an index into those given. */
  holding(day: number): number | undefined {
    return this.#around(day)?.index;
  }

  /** The day itself if it is free, or the first free one after it. */
  nextFree(day: number): number {
    let free = day;
    for (let taken = this.#around(free); taken; taken = this.#around(free)) free = taken.to + 1;
    return free;
  }

  /** The day itself if it is free, or the last free one before it. */
  previousFree(day: number): number {
    let free = day;
    for (let taken = this.#around(free); taken; taken = this.#around(free)) free = taken.from - 1;
    return free;
  }

  #around(day: number): (DaysTaken & { readonly index: number }) | undefined {
    let [low, high] = [0, this.#stretches.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#stretches[middle]?.from ?? Infinity) <= day) low = middle + 1;
      else high = middle;
    }
    const lasting = this.#lasting[low - 1];
    return lasting && lasting.to >= day ? lasting : undefined;
  }
}
