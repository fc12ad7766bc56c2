import { t } from '../../../grammar/index.js';
import type { Coat, ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { ALKYD_DAYS, dryingOf } from '../../measure/sittings/drying.js';
import { THIN_FILM } from '../../measure/sittings/layers.js';
import { plainNumber } from '../../plan/problems.js';
import type { Plan } from '../../plan/plan.js';
import { keepsDueDate, type Move, moveEdits, putOff } from '../edits/sittings.js';
import type { Remedy } from '../finding.js';
import type { Meeting } from '../seen/meetings.js';
import { dayInWords, sittingName } from '../words/days.js';
import { counted, objectName } from '../words/words.js';

/** Hundredths of a millimetre: the finest film that is worth asking for. */
const FINEST_FILM = 3;

/**
 * What to do about a layer that comes too soon: to hold its sitting on the first day that is safe, and those after it
 * as much later. Where that goes past the due date, to let what is below it dry sooner.
 */
export function waitRemedy(plan: Plan, schedule: ScheduleMeasure, meeting: Meeting): Remedy {
  const { from } = meeting.worst;
  const { above } = meeting;
  if (from === undefined) return {};
  const moves = putOff(schedule, schedule.sittings.indexOf(above), from);
  const day = dayInWords(from);
  if (!moves) return { advice: t('Hold it on {0} or later.', day) };
  if (!keepsDueDate(schedule, moves)) {
    return {
      advice: `${tooLate(moves, day, dayInWords(schedule.due?.day ?? 0))} ${sooner(plan, meeting)}`,
    };
  }
  return {
    advice: holdOrLater(moves, day),
    fix: {
      title: moveTitle(sittingName(plan, above.sitting), from, moves),
      edits: moveEdits(plan, moves),
    },
  };
}

function holdOrLater(moves: readonly Move[], day: string): string {
  const others = moves.length - 1;
  if (others < 1) return t('Hold it on {0} or later.', day);
  return others === 1
    ? t('Hold it on {0} or later, and the sitting after it as much later.', day)
    : t('Hold it on {0} or later, and the {1} sittings after it as much later.', day, counted(others));
}

/** `Move “Body colour” to 22 January 2027`, with the sittings after it. */
export function moveTitle(name: string, day: number, moves: readonly Move[]): string {
  const others = moves.length - 1;
  const told = [name, dayInWords(day)] as const;
  if (others < 1) return t('Move {0} to {1}', ...told);
  return others === 1
    ? t('Move {0} to {1}, and the sitting after it as much later', ...told)
    : t('Move {0} to {1}, and the {2} sittings after it as much later', ...told, counted(others));
}

function tooLate(moves: readonly Move[], day: string, due: string): string {
  const others = moves.length - 1;
  if (others < 1) return t('Put off to {0} it would be late for the due date, {1}.', day, due);
  return others === 1
    ? t(
        'Put off to {0}, and the sitting after it as much later, it would be late for the due date, {1}.',
        day,
        due,
      )
    : t(
        'Put off to {0}, and the {1} sittings after it as much later, it would be late for the due date, {2}.',
        day,
        counted(others),
        due,
      );
}

function sooner(plan: Plan, { below, coatBelow, above, worst }: Meeting): string {
  const title = sittingName(plan, below.sitting);
  if (above.varnish === 'final') return t('Let the picture go without it, or give it a retouch varnish.');
  const days = (above.day ?? 0) - (below.day ?? 0);
  const film = filmThatDries(coatBelow, days);
  if (film !== undefined)
    return t('Lay {0} no thicker than {1} mm, `film {1} mm`.', title, plainNumber(film));
  if (days >= ALKYD_DAYS)
    return t('Lay {0} with an alkyd medium, which dries in a day: `medium alkyd`.', title);
  return t('Leave {0} to one of the two sittings.', objectName(plan, worst.object));
}

/** The thickest film, in whole hundredths of a millimetre, with which a layer is dry within so many days. */
function filmThatDries({ laid, thinFilmDays = 0, slowest }: Coat, days: number): number | undefined {
  if (thinFilmDays <= 0 || days < 1) return undefined;
  const finest = Math.floor((THIN_FILM * days * 100) / thinFilmDays + 1e-9);
  if (finest < FINEST_FILM) return undefined;
  const film = finest / 100;
  const paint = slowest ? [{ paint: 0, parts: 1 }] : 'unknown';
  const paints = slowest?.pigment
    ? [{ basis: 'measured' as const, pigment: slowest.pigment }]
    : [{ basis: 'unknown' as const }];
  const { days: needed = Infinity } = dryingOf({ ...laid, film }, paint, paints);
  return needed <= days ? film : undefined;
}
