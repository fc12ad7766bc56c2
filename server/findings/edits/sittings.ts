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
 * A sitting put off to a day and all that come after it as much later; where one would fall on a day that is taken it goes
 * to the next free one, and what is behind it as much later again, so that no two come nearer to each other. Undefined
 * for one without a day, and where the calendar ends.
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

/** Whether what is ready by the due date stays so with sittings on other days; what is late already is no better or worse. */
export function keepsDueDate({ sittings, due }: ScheduleMeasure, moves: readonly Move[]): boolean {
  if (due?.readyOn === undefined || due.readyOn > due.day) return true;
  const days = new Map(moves.map(({ sitting, day }) => [sitting, day]));
  return sittings.every(({ sitting, dryingDays = 0 }) => {
    const day = days.get(sitting);
    return day === undefined || day + dryingDays <= due.day;
  });
}
