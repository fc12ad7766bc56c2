import type { Doubt } from '../../measure/photograph/record.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, inWords, plainNumber } from '../../plan/problems.js';
import { dayInWords, sittingName } from './days.js';
import { objectName, percent, type Subject } from './words.js';
import { dayOf } from '../../measure/sittings/days.js';

/** `After “Body colour”` */
export function afterSitting(plan: Plan, index: number): string {
  return `After ${sittingName(plan, index)}`;
}

/** So many steps, with one place: `1.2 steps`, `one step`. */
export function stepsInWords(steps: number): string {
  const told = plainNumber(Math.abs(steps), 1);
  return told === '1' ? 'one step' : `${told} steps`;
}

/** `1.2 steps darker` */
export function offInSteps(steps: number): string {
  return `${stepsInWords(steps)} ${steps < 0 ? 'darker' : 'lighter'}`;
}

/** ` The middle values miss theirs too.`, or nothing. */
export function missedToo(others: readonly Subject[]): string {
  const [first] = others;
  if (!first) return '';
  const isMany = others.length > 1 || first.many;
  return ` ${capitalised(inWords(others.map(({ words }) => words)))} ${isMany ? 'miss theirs' : 'misses its own'} too.`;
}

/** What can't be trusted in a photograph, as a sentence. */
export function doubtInWords(plan: Plan, doubt: Doubt): string {
  switch (doubt.about) {
    case 'burnt-out lights':
      return `On ${percent(doubt.share)} of the canvas it is burnt out, so how light that is can’t be told.`;
    case 'blocked darks':
      return `On ${percent(doubt.share)} of the canvas it is black, so how dark that is can’t be told.`;
    case 'glare': {
      const where = doubt.object === undefined ? '' : `, most of it on ${objectName(plan, doubt.object)}`;
      return `On ${percent(doubt.share)} of the canvas there is nearly white on what is to be darker${where}: it looks like glare.`;
    }
    case 'exposure':
      return `Nearly all of it is ${doubt.stops < 0 ? 'darker' : 'lighter'} than planned by about ${plainNumber(Math.abs(doubt.stops), 1)} stops: rather the exposure than the painting.`;
    case 'grey patch':
      return `Its grey patch could not be used: ${doubt.reason}`;
    case 'coloured light':
      return `The light was strongly coloured: the grey patch is ${plainNumber(doubt.cast, 1)} times as strong in one channel as in another.`;
    case 'no grey patch':
      return 'It has no grey patch, so colours are as the camera balanced them.';
    case 'no profile':
      return 'It does not say what colours it is in; sRGB is taken.';
    case 'few pixels':
      return `It is coarse: ${plainNumber(doubt.sharpness, 1)} pixels across for one that is measured.`;
    case 'proportions':
      return `It is ${plainNumber(doubt.photograph)} times as wide as high, the canvas ${plainNumber(doubt.canvas)} times, and no corners say where in it the canvas lies.`;
    case 'corners outside':
      return `Of the corners of the canvas, the ${inWords(doubt.corners.map((corner) => CORNERS[corner] ?? ''))} ${doubt.corners.length > 1 ? 'lie' : 'lies'} outside it.`;
    case 'taken earlier':
      return `The camera says that it was taken on ${dayInWords(dayOf(doubt.taken) ?? 0)}, before the sitting on ${dayInWords(dayOf(doubt.sitting) ?? 0)}.`;
  }
}

const CORNERS = ['upper left', 'upper right', 'lower right', 'lower left'] as const;

/** What can be done about it. */
export function againstDoubt(doubt: Doubt): string {
  switch (doubt.about) {
    case 'exposure':
      return `Photograph it again about ${plainNumber(Math.abs(doubt.stops), 1)} stops ${doubt.stops < 0 ? 'lighter' : 'darker'}, or, if your eye says that the painting is so, set this aside.`;
    case 'burnt-out lights':
      return 'Photograph it again a stop darker.';
    case 'blocked darks':
      return 'Photograph it again a stop lighter.';
    case 'glare':
      return 'Photograph it again with the light from the side, so that no window is mirrored in wet paint.';
    case 'grey patch':
      return 'Point `grey` at the middle of a card that is neither white nor black, in the same light as the canvas.';
    case 'coloured light':
      return 'Photograph it again in daylight.';
    case 'no grey patch':
      return 'Hold a grey card beside the canvas, and say with `grey` where it lies.';
    case 'no profile':
      return 'Take the file from the camera rather than a copy that was sent.';
    case 'few pixels':
      return 'Take the photograph from nearer, or the file itself rather than a small copy.';
    case 'proportions':
      return 'Say where the canvas lies in it: `corners` with its four corners.';
    case 'corners outside':
      return 'Move them onto the photograph, or take one that holds the whole canvas.';
    case 'taken earlier':
      return 'Name the photograph that was taken after the sitting.';
  }
}
