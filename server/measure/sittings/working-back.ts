import { latestMonthsBefore, type TakenDays } from './days.js';
import { isDryingOil } from './layers.js';
import type { Coat, ObjectSchedule, Ordered } from './schedule.js';

/** Months from the last layer of a drying oil to its final varnish: common practice, six or more. */
export const VARNISH_AFTER_MONTHS = 6;

interface WorkingBack {
  /** The sittings in the order of time. */
  readonly ordered: readonly Ordered[];
  readonly objects: readonly ObjectSchedule[];
  readonly due: number;
  readonly taken: TakenDays;
}

/** For one object, the latest days of what is laid on it later, as far as it has been worked back. */
interface Ahead {
  /** Of the next layer. */
  next?: number;
  /** Of the next varnish of each kind: all that is below must be ready for it. */
  retouch?: number;
  final?: number;
}

/**
 * For each sitting of the plan, the latest day on which it can be held: worked back from the due date, on which
 * everything is dry to the touch, so that every layer finds what is below it ready, sittings of different days stay in
 * their order on different days, and none falls on a day that is taken. Undefined from where drying is not known yet on
 * back to the first.
 */
export function latestDays({ ordered, objects, due, taken }: WorkingBack): readonly (number | undefined)[] {
  const coatsOf = ordered.map((): { readonly object: number; readonly coat: Coat }[] => []);
  objects.forEach(({ coats }, object) => {
    for (const coat of coats) coatsOf[coat.sitting]?.push({ object, coat });
  });
  const ahead = objects.map((): Ahead => ({}));
  const latest: (number | undefined)[] = ordered.map(() => undefined);
  let next = due;
  let nextHeld: number | undefined;
  for (const { index, day: held } of ordered.toReversed()) {
    const coats = coatsOf[index] ?? [];
    const isApart = held !== undefined && nextHeld !== undefined && held !== nextHeld;
    let day = isApart ? next - 1 : next;
    nextHeld = held ?? nextHeld;
    for (const { object, coat } of coats) {
      const last = latestOf(coat, ahead[object] ?? {}, due);
      if (last === undefined) return latest;
      day = Math.min(day, last);
    }
    day = taken.previousFree(day);
    latest[index] = day;
    next = day;
    for (const { object, coat } of coats) ahead[object] = { ...ahead[object], ...aheadOf(coat, day) };
  }
  return latest;
}

function latestOf(coat: Coat, { next, retouch, final }: Ahead, due: number): number | undefined {
  const { days } = coat;
  if (days === undefined) return undefined;
  const dryBy = Math.min(due, next ?? due, retouch ?? due, final ?? due) - days;
  const cures = final !== undefined && coat.layer !== 'varnish' && isDryingOil(coat.laid.binder);
  return cures ? Math.min(dryBy, latestMonthsBefore(final, VARNISH_AFTER_MONTHS)) : dryBy;
}

function aheadOf({ laid }: Coat, day: number): Ahead {
  return { next: day, ...(laid.varnish ? { [laid.varnish]: day } : {}) };
}
