import { type Layer, t } from '../../../grammar/index.js';
import type { Coat, ScheduledSitting } from '../../measure/sittings/schedule.js';
import { THIN_FILM } from '../../measure/sittings/layers.js';
import { capitalised, plainNumber } from '../../plan/problems.js';
import type { Binder } from '../../plan/materials/mediums.js';
import type { Plan, Sitting } from '../../plan/plan.js';
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
  return day === undefined ? name : t('{0} on {1}', name, dayInWords(day));
}

/** What the days of a layer rest on, as a sentence: a paint and its source, a usual paint, or the binder. */
export function restsOn(plan: Plan, { restsOn: basis, slowest, laid, days = 0 }: Coat): string {
  const film = plainNumber(laid.film);
  switch (basis) {
    case 'paint':
    case 'unknown paint': {
      const paint = plan.palette?.paints[slowest?.paint ?? -1];
      const name = quoted(paint?.name ?? '');
      const taken = daysInWords(slowest?.days ?? 0);
      const inFilm = laid.film === THIN_FILM ? undefined : daysInWords(days);
      if (slowest?.source === undefined) {
        return inFilm === undefined
          ? t('Of {0} in it no figure is known; a usual paint takes {1} in {2} mm.', name, taken, THIN_FILM)
          : t(
              'Of {0} in it no figure is known; a usual paint takes {1} in {2} mm, so {3} in a film of {4} mm.',
              name,
              taken,
              THIN_FILM,
              inFilm,
              film,
            );
      }
      const source = sourceInWords(slowest.source);
      return inFilm === undefined
        ? t('{0} in it takes {1} in {2} mm {3}.', name, taken, THIN_FILM, source)
        : t(
            '{0} in it takes {1} in {2} mm {3}, so {4} in a film of {5} mm.',
            name,
            taken,
            THIN_FILM,
            source,
            inFilm,
            film,
          );
    }
    case 'usual paint':
      return plan.palette
        ? t(
            'No mixture is known for it, so a usual paint is counted: {0} in a film of {1} mm.',
            daysInWords(days),
            film,
          )
        : t(
            'The plan has no palette, so a usual paint is counted: {0} in a film of {1} mm.',
            daysInWords(days),
            film,
          );
    case 'binder':
      return t(
        '{0} takes {1} in a film of {2} mm.',
        capitalised(binderWords(laid.binder)),
        days === 0 ? t('less than a day') : daysInWords(days),
        film,
      );
    case 'varnish':
      return t('A varnish takes {0}.', daysInWords(days));
    case 'unsettled':
      return t('Its mixture is still being worked out.');
  }
}

/** How something is laid: `an underpainting`, `a lean block-in`. */
export function laidWords(layer: Layer, body: Sitting['body']): string {
  const words = layerWords(layer);
  switch (body) {
    case 'lean':
      return t('a lean {0}', words);
    case 'fat':
      return t('a fat {0}', words);
    case undefined:
      return /^[aeiou]/u.test(layer) ? t('an {0}', words) : t('a {0}', words);
  }
}

/** A layer by its name: `block-in`. */
export function layerWords(layer: Layer): string {
  switch (layer) {
    case 'imprimatura':
      return t('imprimatura');
    case 'underpainting':
      return t('underpainting');
    case 'block-in':
      return t('block-in');
    case 'body colour':
      return t('body colour');
    case 'scumble':
      return t('scumble');
    case 'glaze':
      return t('glaze');
    case 'detail':
      return t('detail');
    case 'varnish':
      return t('varnish');
  }
}

/** What a layer is bound with, in a sentence. */
export function binderWords(binder: Binder): string {
  switch (binder) {
    case 'oil':
      return t('oil');
    case 'alkyd':
      return t('alkyd');
    case 'tempera':
      return t('tempera');
    case 'casein':
      return t('casein');
    case 'acrylic':
      return t('acrylic');
    case 'gouache':
      return t('gouache');
    case 'watercolour':
      return t('watercolour');
    case 'encaustic':
      return t('encaustic');
    case 'pastel':
      return t('pastel');
  }
}

function sourceInWords(source: NonNullable<NonNullable<Coat['slowest']>['source']>): string {
  switch (source) {
    case 'maker’s drying guide':
      return t('by a maker’s drying guide');
    case 'Saitzyk 1987':
      return t('by Saitzyk, Art Hardware');
    case 'from memory':
      return t('(from memory)');
  }
}
