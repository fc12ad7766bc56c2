import type { DryingSource, Pigment } from '../../plan/materials/pigments.js';
import type { Binder } from '../../plan/materials/mediums.js';
import type { MixturePart, PaletteMeasure } from '../mixing/mixing.js';
import { type LaidAs, THIN_FILM } from './layers.js';

/** What a thin film of oil paint of a medium pigment takes, and what counts where nothing says which paint is in it. */
const USUAL_DAYS = 5;
/** A thin film with alkyd in it: common practice, no source. */
export const ALKYD_DAYS = 1;
/** Picture varnish, from memory. */
const VARNISH_DAYS = 1;
/**
 * How thick a film is counts in proportion between these multiples of a thin one: one still thinner takes hardly less,
 * and one still thicker skins over and stays wet within, so that no figure means much. Heuristic.
 */
const FILMS = { least: 0.2, most: 6 };
/** What floating products leave above a whole number of days. */
const LEFT_OVER = 1e-9;

/** How long a layer takes to be dry to the touch, and what that rests on. */
export interface Drying {
  /** Days, whole, rounded up; missing while the mixture is still being worked out. */
  readonly days?: number;
  /** Days of a thin film of it, by which the faster and the slower to dry are told apart. */
  readonly thinFilmDays?: number;
  readonly restsOn: DryingBasis;
  /** The paint that it waits for. */
  readonly slowest?: SlowestPaint;
}

export type DryingBasis =
  /** The slowest paint in the mixture. */
  | 'paint'
  /** A paint of the mixture of which no figure is known: a usual one. */
  | 'unknown paint'
  /** No mixture is known for it, or the plan has no palette: a usual paint. */
  | 'usual paint'
  /** Alkyd, or what dries within the hour, whatever the paint. */
  | 'binder'
  | 'varnish'
  /** Its mixture is still being worked out. */
  | 'unsettled';

export interface SlowestPaint {
  /** Index into `plan.palette.paints`. */
  readonly paint: number;
  readonly pigment?: Pigment;
  /** Days of a thin film. */
  readonly days: number;
  /** Where they come from; missing for a paint of which nothing is known. */
  readonly source?: DryingSource;
}

/** What is laid: the paints of a mixture, nothing known of it, or nothing known yet. */
export type LaidPaint = readonly MixturePart[] | 'unknown' | 'unsettled';

/**
 * Days until a layer is dry to the touch: those of the slowest of its paints in a thin film of 0.15 mm, in proportion
 * to its own film, rounded up. Alkyd takes a day whatever the paint; water paints, tempera and the like dry within the
 * hour.
 */
export function dryingOf(laid: LaidAs, paint: LaidPaint, paints: PaletteMeasure['paints']): Drying {
  if (laid.layer === 'varnish') return { days: VARNISH_DAYS, thinFilmDays: VARNISH_DAYS, restsOn: 'varnish' };
  const ofBinder = daysOfBinder(laid.binder);
  if (ofBinder !== undefined) {
    return { days: atFilm(ofBinder, laid.film), thinFilmDays: ofBinder, restsOn: 'binder' };
  }
  if (paint === 'unsettled') return { restsOn: 'unsettled' };
  const slowest = paint === 'unknown' ? undefined : slowestOf(paint, paints);
  const thinFilmDays = slowest?.days ?? USUAL_DAYS;
  return {
    days: atFilm(thinFilmDays, laid.film),
    thinFilmDays,
    restsOn: slowest ? (slowest.pigment ? 'paint' : 'unknown paint') : 'usual paint',
    ...(slowest ? { slowest } : {}),
  };
}

/** Of a thin film, whatever the paint; undefined where it goes by the paint. */
function daysOfBinder(binder: Binder): number | undefined {
  switch (binder) {
    case 'oil':
      return undefined;
    case 'alkyd':
      return ALKYD_DAYS;
    case 'tempera':
    case 'casein':
    case 'acrylic':
    case 'gouache':
    case 'watercolour':
    case 'encaustic':
    case 'pastel':
      return 0;
  }
}

function atFilm(thinFilmDays: number, film: number): number {
  const factor = Math.min(Math.max(film / THIN_FILM, FILMS.least), FILMS.most);
  return Math.ceil(thinFilmDays * factor - LEFT_OVER);
}

/** The slowest of the paints in a mixture, of two as slow the one with more parts. */
function slowestOf(
  parts: readonly MixturePart[],
  paints: PaletteMeasure['paints'],
): SlowestPaint | undefined {
  let slowest: SlowestPaint | undefined;
  for (const { paint } of parts) {
    const one = slowestFigure(paint, paints[paint]?.pigment);
    if (slowest === undefined || one.days > slowest.days) slowest = one;
  }
  return slowest;
}

/** Where sources disagree the slower counts. */
function slowestFigure(paint: number, pigment: Pigment | undefined): SlowestPaint {
  if (pigment === undefined) return { paint, days: USUAL_DAYS };
  const [first, ...others] = pigment.drying;
  const { days, source } = others.reduce((slower, one) => (one.days > slower.days ? one : slower), first);
  return { paint, pigment, days, source };
}
