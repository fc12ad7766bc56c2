import { said, t } from '../../../grammar/index.js';
import type { Doubt } from '../../measure/photograph/record.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, inWords, plainNumber } from '../../plan/problems.js';
import { dayInWords } from './days.js';
import { cornerWords } from './sides.js';
import { stepsInWords } from './tones.js';
import { objectName, percent, type Subject } from './words.js';
import { dayOf } from '../../measure/sittings/days.js';

/** So many stops of light, with one place: `1.2 stops`, `one stop`. */
function stopsInWords(stops: number): string {
  const told = plainNumber(Math.abs(stops), 1);
  return told === '1' ? t('one stop') : t('{0} stops', told);
}

/** `1.2 steps darker` */
export function offInSteps(steps: number): string {
  return steps < 0 ? t('{0} darker', stepsInWords(steps)) : t('{0} lighter', stepsInWords(steps));
}

/** ` The middle values miss theirs too.`, or nothing. */
export function missedToo(others: readonly Subject[]): string {
  const [first] = others;
  if (!first) return '';
  const isMany = others.length > 1 || first.many;
  const missing = capitalised(inWords(others.map(({ words }) => words)));
  return ` ${isMany ? t('{0} miss theirs too.', missing) : t('{0} misses its own too.', missing)}`;
}

/** What can't be trusted in a photograph, as a sentence. */
export function doubtInWords(plan: Plan, doubt: Doubt): string {
  switch (doubt.about) {
    case 'burnt-out lights':
      return t(
        'On {0} of the canvas it is burnt out, so how light that is can’t be told.',
        percent(doubt.share),
      );
    case 'blocked darks':
      return t('On {0} of the canvas it is black, so how dark that is can’t be told.', percent(doubt.share));
    case 'glare':
      return doubt.object === undefined
        ? t(
            'On {0} of the canvas there is nearly white on what is to be darker: it looks like glare.',
            percent(doubt.share),
          )
        : t(
            'On {0} of the canvas there is nearly white on what is to be darker, most of it on {1}: it looks like glare.',
            percent(doubt.share),
            objectName(plan, doubt.object),
          );
    case 'exposure': {
      const stops = stopsInWords(doubt.stops);
      return doubt.stops < 0
        ? t(
            'Nearly all of it is darker than planned by about {0}: rather the exposure than the painting.',
            stops,
          )
        : t(
            'Nearly all of it is lighter than planned by about {0}: rather the exposure than the painting.',
            stops,
          );
    }
    case 'grey patch':
      return t('Its grey patch could not be used: {0}', said(doubt.reason));
    case 'coloured light':
      return t(
        'The light was strongly coloured: the grey patch is {0} times as strong in one channel as in another.',
        plainNumber(doubt.cast, 1),
      );
    case 'no grey patch':
      return t('It has no grey patch, so colours are as the camera balanced them.');
    case 'no profile':
      return t('It does not say what colours it is in; sRGB is taken.');
    case 'few pixels':
      return t('It is coarse: {0} pixels across for one that is measured.', plainNumber(doubt.sharpness, 1));
    case 'proportions':
      return t(
        'It is {0} times as wide as high, the canvas {1} times, and no corners say where in it the canvas lies.',
        plainNumber(doubt.photograph),
        plainNumber(doubt.canvas),
      );
    case 'corners outside': {
      const corners = inWords(doubt.corners.map((corner) => cornerWords(CORNERS[corner] ?? 'upper left')));
      return doubt.corners.length > 1
        ? t('Of the corners of the canvas, the {0} lie outside it.', corners)
        : t('Of the corners of the canvas, the {0} lies outside it.', corners);
    }
    case 'taken earlier':
      return t(
        'The camera says that it was taken on {0}, before the sitting on {1}.',
        dayInWords(dayOf(doubt.taken) ?? 0),
        dayInWords(dayOf(doubt.sitting) ?? 0),
      );
  }
}

const CORNERS = ['upper left', 'upper right', 'lower right', 'lower left'] as const;

/** What can be done about it. */
export function againstDoubt(doubt: Doubt): string {
  switch (doubt.about) {
    case 'exposure': {
      const stops = stopsInWords(doubt.stops);
      return doubt.stops < 0
        ? t(
            'Photograph it again about {0} lighter, or, if your eye says that the painting is so, set this aside.',
            stops,
          )
        : t(
            'Photograph it again about {0} darker, or, if your eye says that the painting is so, set this aside.',
            stops,
          );
    }
    case 'burnt-out lights':
      return t('Photograph it again a stop darker.');
    case 'blocked darks':
      return t('Photograph it again a stop lighter.');
    case 'glare':
      return t(
        'Photograph it again with the light from the side, so that no window is mirrored in wet paint.',
      );
    case 'grey patch':
      return t(
        'Point `grey` at the middle of a card that is neither white nor black, in the same light as the canvas.',
      );
    case 'coloured light':
      return t('Photograph it again in daylight.');
    case 'no grey patch':
      return t('Hold a grey card beside the canvas, and say with `grey` where it lies.');
    case 'no profile':
      return t('Take the file from the camera rather than a copy that was sent.');
    case 'few pixels':
      return t('Take the photograph from nearer, or the file itself rather than a small copy.');
    case 'proportions':
      return t('Say where the canvas lies in it: `corners` with its four corners.');
    case 'corners outside':
      return t('Move them onto the photograph, or take one that holds the whole canvas.');
    case 'taken earlier':
      return t('Name the photograph that was taken after the sitting.');
  }
}
