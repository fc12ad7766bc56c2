import type { Coat, ScheduledSitting } from '../../measure/sittings/schedule.js';
import { THIN_FILM } from '../../measure/sittings/layers.js';
import { capitalised, plainNumber } from '../../plan/problems.js';
import type { Plan } from '../../plan/plan.js';
import { daysInWords, dayInWords, sittingName } from './days.js';
import { objectName, quoted, someOf } from './words.js';

/** So many objects of a sitting are named, the rest counted. */
const MOST_NAMED = 4;

/** `jug`, `wall`, `table`, `cloth` and two more */
export function objectsNamed(plan: Plan, objects: readonly number[]): string {
  return someOf(
    objects.map((object) => objectName(plan, object)),
    MOST_NAMED,
  );
}

/** `“Body colour” on 22 January 2027` */
export function sittingAndDay(
  plan: Plan,
  { sitting, day }: Pick<ScheduledSitting, 'sitting' | 'day'>,
): string {
  const name = sittingName(plan, sitting);
  return day === undefined ? name : `${name} on ${dayInWords(day)}`;
}

/** What the days of a layer rest on, as a sentence: a paint and its source, a usual paint, or the binder. */
export function restsOn(plan: Plan, { restsOn: basis, slowest, laid, days = 0 }: Coat): string {
  const film = `in a film of ${plainNumber(laid.film)} mm`;
  const thin = `in ${THIN_FILM} mm`;
  switch (basis) {
    case 'paint':
    case 'unknown paint': {
      const paint = plan.palette?.paints[slowest?.paint ?? -1];
      const name = quoted(paint?.name ?? '');
      const inFilm = laid.film === THIN_FILM ? '' : `, so ${daysInWords(days)} ${film}`;
      const taken = `takes ${daysInWords(slowest?.days ?? 0)} ${thin}`;
      return slowest?.source === undefined
        ? `Of ${name} in it no figure is known; a usual paint ${taken}${inFilm}.`
        : `${name} in it ${taken} ${sourceInWords(slowest.source)}${inFilm}.`;
    }
    case 'usual paint': {
      const why = plan.palette ? 'No mixture is known for it' : 'The plan has no palette';
      return `${why}, so a usual paint is counted: ${daysInWords(days)} ${film}.`;
    }
    case 'binder':
      return `${capitalised(laid.binder)} takes ${days === 0 ? 'less than a day' : daysInWords(days)} ${film}.`;
    case 'varnish':
      return `A varnish takes ${daysInWords(days)}.`;
    case 'unsettled':
      return 'Its mixture is still being worked out.';
  }
}

function sourceInWords(source: NonNullable<NonNullable<Coat['slowest']>['source']>): string {
  switch (source) {
    case 'maker’s drying guide':
      return 'by a maker’s drying guide';
    case 'Saitzyk 1987':
      return 'by Saitzyk, Art Hardware';
    case 'from memory':
      return '(from memory)';
  }
}
