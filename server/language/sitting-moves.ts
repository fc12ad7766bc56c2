import { t } from '../../grammar/index.js';
import type { ScheduleMeasure } from '../measure/sittings/schedule.js';
import { type Move, moveEdits, putOff } from '../findings/edits/sittings.js';
import type { Fix } from '../findings/finding.js';
import { dayInWords, sittingName } from '../findings/words/days.js';
import { counted } from '../findings/words/words.js';
import type { Plan } from '../plan/plan.js';
import type { Snapshot } from './snapshot.js';

/**
 * The sitting on a line and all that come after it on other days: a day later, a week later, on the first day on which
 * everything below it is dry. Days that are taken are gone past, and nothing but dates changes.
 */
export function sittingMoves({ plan, measures: { schedule } }: Snapshot, line: number): readonly Fix[] {
  const index = plan.sittings.findIndex(({ lines }) => lines?.first === line);
  const place = schedule?.sittings.findIndex(({ sitting }) => sitting === index) ?? -1;
  const day = schedule?.sittings[place]?.day;
  if (!schedule || day === undefined) return [];
  const dry = firstDryDay(schedule, place);
  return [
    ...moved(plan, schedule, place, day + 1, (sittings) => t('Move {0} by a day', sittings)),
    ...moved(plan, schedule, place, day + 7, (sittings) => t('Move {0} by a week', sittings)),
    ...(dry === undefined || dry === day
      ? []
      : moved(plan, schedule, place, dry, (sittings, first) =>
          t('Move {0} to the first day on which everything below is dry, {1}', sittings, first),
        )),
  ];
}

/**
 * Behind the sitting before it, and with everything below it dry; undefined where nothing lies below, or not all is
 * known.
 */
function firstDryDay({ sittings, taken, isSettled }: ScheduleMeasure, place: number): number | undefined {
  const readyFrom = sittings[place]?.readyFrom;
  if (readyFrom === undefined || !isSettled) return undefined;
  const before = sittings.slice(0, place).findLast(({ day }) => day !== undefined)?.day ?? -Infinity;
  return taken.nextFree(Math.max(readyFrom, before + 1));
}

function moved(
  plan: Plan,
  schedule: ScheduleMeasure,
  place: number,
  day: number,
  titled: (sittings: string, first: string) => string,
): readonly Fix[] {
  const moves = putOff(schedule, place, day);
  const [first] = moves ?? [];
  if (!moves || !first) return [];
  const title = titled(withOthers(sittingName(plan, first.sitting), moves), dayInWords(first.day));
  return [
    {
      title: goesPastTaken(schedule, place, moves, day)
        ? t('{0}, past the days that are taken', title)
        : title,
      edits: moveEdits(plan, moves),
    },
  ];
}

function withOthers(name: string, { length }: readonly Move[]): string {
  if (length < 2) return name;
  return length === 2
    ? t('{0} and the sitting after it', name)
    : t('{0} and the {1} sittings after it', name, counted(length - 1));
}

/** Whether some come farther than the first was to be moved. */
function goesPastTaken(
  { sittings }: ScheduleMeasure,
  place: number,
  moves: readonly Move[],
  wanted: number,
): boolean {
  const by = wanted - (sittings[place]?.day ?? 0);
  const held = new Map(sittings.map(({ sitting, day = 0 }) => [sitting, day]));
  return moves.some(({ sitting, day }) => day - (held.get(sitting) ?? 0) !== by);
}
