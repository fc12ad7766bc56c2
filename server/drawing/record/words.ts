import { counted } from '../../findings/words/words.js';
import type { Doubt, RecordObject } from '../../measure/photograph/record.js';
import { dayOf } from '../../measure/sittings/days.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, plainNumber } from '../../plan/problems.js';
import { percent } from '../captions/words.js';
import { shortDate } from '../sittings/dates.js';

/** `2 Colour`: a sitting by its number in the text and its title. */
export function sittingName({ sittings }: Pick<Plan, 'sittings'>, index: number): string {
  return `${index + 1}\u00A0 ${sittings[index]?.title ?? ''}`.trimEnd();
}

/** `Mon 11 Jan 2027`, or that there is none. */
export function dateOfSitting({ sittings }: Pick<Plan, 'sittings'>, index: number): string {
  const day = dayOf(sittings[index]?.date ?? '');
  return day === undefined ? 'no date' : shortDate(day);
}

/** `1.2 steps too dark`; nothing where it is as light as planned. */
export function stepsInWords(stepsOff: number): string | undefined {
  const told = plainNumber(Math.abs(stepsOff), 1);
  if (told === '0') return undefined;
  return `${told} ${told === '1' ? 'step' : 'steps'} too ${stepsOff < 0 ? 'dark' : 'light'}`;
}

/** A difference of CIEDE2000 from which on it is another colour to the eye; heuristic, as in `findings/words/paints.ts`. */
export const ANOTHER_COLOUR = 5;

/** `1.2 steps too dark, its colour 8 off, and came nearer`, `as planned now` */
export function objectInWords({ against, since }: RecordObject): string {
  if (against === undefined) return 'not held to the plan yet';
  const { stepsOff, hueAndChroma = 0 } = against;
  const off = [
    ...[stepsInWords(stepsOff) ?? []].flat(),
    ...(hueAndChroma >= ANOTHER_COLOUR ? [`its colour ${plainNumber(hueAndChroma, 0)} off`] : []),
  ];
  const went = since?.went ?? 'neither';
  if (off.length === 0) return went === 'nearer' ? 'as planned now' : 'as planned';
  return [
    ...off,
    ...(went === 'neither' ? [] : [went === 'nearer' ? 'and came nearer' : 'and went away']),
  ].join(', ');
}

/** What can't be trusted in a photograph, as a sentence without its full stop. */
export function doubtInWords(doubt: Doubt, { objects, sittings }: Plan, sitting: number): string {
  switch (doubt.about) {
    case 'burnt-out lights':
      return `The lights are burnt out on ${percent(doubt.share)} of the canvas: how light it is there can’t be told`;
    case 'blocked darks':
      return `The darks are blocked on ${percent(doubt.share)} of the canvas: how dark it is there can’t be told`;
    case 'glare': {
      const name = objects[doubt.object ?? -1]?.name;
      const where = name === undefined ? '' : `, most of all on ${name}`;
      return `Light glares on ${percent(doubt.share)} of the canvas${where}: turn it away from the window, or wait for softer light`;
    }
    case 'exposure':
      return `Nearly all of it is ${doubt.stops < 0 ? 'darker' : 'lighter'} than planned by the same part, ${plainNumber(Math.abs(doubt.stops), 1)} stops: rather the exposure than the painting`;
    case 'grey patch':
      return doubt.reason.replace(/\.$/, '');
    case 'coloured light':
      return `The light was coloured; the grey patch has put right what was off by ${percent(doubt.cast - 1)}`;
    case 'no grey patch':
      return 'There is no grey patch, so light and camera are in the figures: take a grey card beside the canvas into the picture and write ‘grey’ with its place below ‘photo’';
    case 'no profile':
      return 'The file does not say which colours its numbers mean; sRGB is taken';
    case 'few pixels':
      return 'It has few pixels for what is measured: stand nearer, or save it larger';
    case 'proportions':
      return `It is ${plainNumber(doubt.photograph)} times as wide as high and the canvas ${plainNumber(doubt.canvas)}: give the corners of the canvas in it`;
    case 'corners outside':
      return `${capitalised(counted(doubt.corners.length))} of its corners ${doubt.corners.length === 1 ? 'lies' : 'lie'} outside of the photograph`;
    case 'taken earlier': {
      const [taken, day] = [dayOf(doubt.taken), dayOf(doubt.sitting)];
      return `The camera took it on ${taken === undefined ? doubt.taken : shortDate(taken)}, before ${sittingName({ sittings }, sitting)} on ${day === undefined ? doubt.sitting : shortDate(day)}`;
    }
  }
}

/** `three objects` */
export function objectsInWords(count: number): string {
  return `${counted(count)} ${count === 1 ? 'object' : 'objects'}`;
}
