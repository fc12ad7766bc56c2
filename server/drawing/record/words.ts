import type { RecordObject } from '../../measure/photograph/record.js';
import { dayOf } from '../../measure/sittings/days.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { shortDate } from '../sittings/dates.js';

/** `2 Colour`: a sitting by its number in the text and its title. */
export function sittingName({ sittings }: Pick<Plan, 'sittings'>, index: number): string {
  return `${index + 1}\u00A0${sittings[index]?.title ?? ''}`;
}

/** `Mon 11 Jan 2027`, or that there is none. */
export function dateOfSitting({ sittings }: Pick<Plan, 'sittings'>, index: number): string {
  const day = dayOf(sittings[index]?.date ?? '');
  return day === undefined ? 'no date' : shortDate(day);
}

/** `1.2 steps too dark`; nothing where it is as light as planned. */
function stepsInWords(stepsOff: number): string | undefined {
  const told = plainNumber(Math.abs(stepsOff), 1);
  if (told === '0') return undefined;
  return `${told} ${told === '1' ? 'step' : 'steps'} too ${stepsOff < 0 ? 'dark' : 'light'}`;
}

/**
 * A difference of CIEDE2000 from which on it is another colour to the eye; heuristic, as in `findings/words/paints.ts`.
 */
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
