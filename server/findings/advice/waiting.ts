import type { Coat, ScheduleMeasure } from '../../measure/sittings/schedule.js';
import { ALKYD_DAYS, dryingOf } from '../../measure/sittings/drying.js';
import { THIN_FILM } from '../../measure/sittings/layers.js';
import { plainNumber } from '../../plan/problems.js';
import type { Plan } from '../../plan/plan.js';
import { keepsDueDate, type Move, moveEdits, putOff } from '../edits/sittings.js';
import type { Remedy } from '../finding.js';
import type { Meeting } from '../seen/meetings.js';
import { dayInWords, sittingName } from '../words/days.js';
import { counted, quoted } from '../words/words.js';

/** Hundredths of a millimetre: the finest film that is worth asking for. */
const FINEST_FILM = 3;

/**
 * What to do about a layer that comes too soon: to hold its sitting on the first day that is safe, and those after it as
 * much later. Where that goes past the due date, to let what is below it dry sooner.
 */
export function waitRemedy(plan: Plan, schedule: ScheduleMeasure, meeting: Meeting): Remedy {
  const { from } = meeting.worst;
  const { above } = meeting;
  if (from === undefined) return {};
  const moves = putOff(schedule, schedule.sittings.indexOf(above), from);
  const day = dayInWords(from);
  if (!moves) return { advice: `Hold it on ${day} or later.` };
  const others = othersMoved(moves);
  if (!keepsDueDate(schedule, moves)) {
    return {
      advice: `Put off to ${day}${others} it would be late for the due date, ${dayInWords(schedule.due?.day ?? 0)}; ${sooner(plan, meeting)}.`,
    };
  }
  return {
    advice: `Hold it on ${day} or later${others}.`,
    fix: {
      title: `Move ${sittingName(plan, above.sitting)} to ${day}${others}`,
      edits: moveEdits(plan, moves),
    },
  };
}

/** `, and the two sittings after it as much later`, behind the day of the first that is moved. */
export function othersMoved(moves: readonly Move[]): string {
  const others = moves.length - 1;
  if (others < 1) return '';
  return others === 1
    ? ', and the sitting after it as much later'
    : `, and the ${counted(others)} sittings after it as much later`;
}

function sooner(plan: Plan, { below, coatBelow, above, worst }: Meeting): string {
  const title = sittingName(plan, below.sitting);
  if (above.varnish === 'final') return 'let the picture go without it, or give it a retouch varnish';
  const days = (above.day ?? 0) - (below.day ?? 0);
  const film = filmThatDries(coatBelow, days);
  if (film !== undefined)
    return `lay ${title} no thicker than ${plainNumber(film)} mm, \`film ${plainNumber(film)} mm\``;
  if (days >= ALKYD_DAYS) return `lay ${title} with an alkyd medium, which dries in a day: \`medium alkyd\``;
  return `leave ${quoted(plan.objects[worst.object]?.name ?? '')} to one of the two sittings`;
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
