import { isoOf, LAST_DAY } from '../../measure/sittings/days.js';
import type { ScheduleMeasure } from '../../measure/sittings/schedule.js';
import type { Plan } from '../../plan/plan.js';
import type { FixEdit } from '../finding.js';
import { replace } from './edit.js';

/** A sitting, as an index into `plan.sittings`, on another day. */
export interface Move {
  readonly sitting: number;
  readonly day: number;
}

/**
 * A sitting put off to a day and all that come after it as much later; where one would fall on a day that is taken it
 * goes to the next free one, and what is behind it as much later again, so that no two come nearer to each other.
 * Undefined for one without a day, and where the calendar ends.
 *
 * @param place the index of the sitting in `schedule.sittings`
 */
export function putOff(schedule: ScheduleMeasure, place: number, day: number): readonly Move[] | undefined {
  const own = schedule.sittings[place]?.day;
  if (own === undefined) return undefined;
  let later = day - own;
  const moves = schedule.sittings.slice(place).flatMap(({ sitting, day: held }): Move[] => {
    if (held === undefined) return [];
    const moved = schedule.taken.nextFree(held + later);
    later = moved - held;
    return [{ sitting, day: moved }];
  });
  return moves.some((move) => move.day > LAST_DAY) ? undefined : moves;
}

/** Sittings on other days: edits of their dates alone. */
export function moveEdits({ sittings }: Plan, moves: readonly Move[]): readonly FixEdit[] {
  return moves.flatMap(({ sitting, day }) => {
    const location = sittings[sitting]?.dateLocation;
    return location ? [replace(location, isoOf(day))] : [];
  });
}

/** Whether sittings on other days make nothing late, and nothing as late as what is late already. */
export function keepsDueDate(schedule: ScheduleMeasure, moves: readonly Move[]): boolean {
  const last = lastDayToEnd(schedule);
  const drying = new Map(schedule.sittings.map(({ sitting, dryingDays = 0 }) => [sitting, dryingDays]));
  return moves.every(({ sitting, day }) => day + (drying.get(sitting) ?? 0) <= last);
}

/** The day by which all that is moved has to be dry, so that no more is told about the due date. */
export function lastDayToEnd({ due }: ScheduleMeasure): number {
  if (due?.readyOn === undefined) return Infinity;
  return due.readyOn > due.day ? due.readyOn - 1 : due.day;
}
