import { labDifference } from '../../plan/colour/difference.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import { quoted } from '../words/words.js';
import { type Change, type Compared, calledIn, changeOf, nowCalled, otherNow, places } from './change.js';
import { colourChange, colourText, LEAST_DIFFERENCE, stepsInWords } from './wording.js';

/** Makes a change of one object. */
export type Make = (kind: Change['kind'], message: string, more?: Partial<Change>) => Change;

/** Steps by which a stated value must differ, and one that follows from the colour. */
const LEAST_STEPS = { stated: 0.05, followed: 0.5 } as const;
const LEAST_VALUE = 0.1;

/** Lighter or darker: in steps, or in Munsell value where the scales have other steps. */
export function valueChanges(
  before: PlanObject,
  now: PlanObject,
  { earlier, later }: Compared,
  name: string,
  change: Make,
): readonly Change[] {
  const where = places(before.valueLocation ?? before.location, now.valueLocation ?? now.location);
  if (now.step === undefined || before.step === undefined) {
    if (now.step === before.step) return [];
    return now.step === undefined
      ? [change('changed', `${name} has no value any more.`, where)]
      : [change('changed', `${name} has a value now: ${plainNumber(now.step, 1)}.`, where)];
  }
  if (earlier.plan.scale.steps !== later.plan.scale.steps) {
    const [from, to] = [before.value ?? 0, now.value ?? 0];
    if (Math.abs(to - from) < LEAST_VALUE) return [];
    return [
      change(
        to > from ? 'lighter' : 'darker',
        `${name} is ${to > from ? 'lighter' : 'darker'}: Munsell value ${plainNumber(to, 1)} instead of ${plainNumber(from, 1)}.`,
        { figure: { from, to, unit: 'Munsell value' }, ...where },
      ),
    ];
  }
  const [from, to] = [before.step, now.step];
  const least = now.stepStated || before.stepStated ? LEAST_STEPS.stated : LEAST_STEPS.followed;
  if (Math.abs(to - from) < least) return [];
  const way = to > from ? 'lighter' : 'darker';
  return [
    change(
      way,
      `${name} is ${stepsInWords(Math.abs(to - from))} ${way}: ${plainNumber(to, 1)} instead of ${plainNumber(from, 1)}.`,
      { figure: { from, to, unit: 'step' }, ...where },
    ),
  ];
}

/** Another colour or another glaze; a named colour that is another itself is told once, of the colour. */
export function colourChanges(
  before: PlanObject,
  now: PlanObject,
  compared: Compared,
  name: string,
  change: Make,
): readonly Change[] {
  return [
    ...paintChanges(before.colour, now.colour, compared, name, 'colour', change),
    ...paintChanges(before.glaze, now.glaze, compared, name, 'glaze', change),
  ];
}

function paintChanges(
  before: PlanObject['colour'],
  now: PlanObject['colour'],
  { earlier, later }: Compared,
  name: string,
  what: 'colour' | 'glaze',
  change: Make,
): readonly Change[] {
  const where = places(before?.location, now?.location);
  if (before === undefined && now === undefined) return [];
  if (before === undefined)
    return [change('colour', `${name} has a ${what} now: ${now ? colourName(now, later.plan) : ''}.`, where)];
  if (now === undefined)
    return [
      change('colour', `${name} has no ${what} any more; it was ${colourName(before, earlier.plan)}.`, where),
    ];
  const far = labDifference(before.colour.lab, now.colour.lab);
  // A named colour that was changed itself is told once, of the colour.
  const [was, is] = [colourName(before, earlier.plan), colourName(now, later.plan)];
  if (far < LEAST_DIFFERENCE || (was === is && now.named !== undefined)) return [];
  const said = what === 'colour' ? 'is painted in' : 'is glazed with';
  return [
    change('colour', `${name} ${said} ${is} instead of ${was}: ${colourChange(before.colour, now.colour)}.`, {
      figure: { from: 0, to: far, unit: 'CIEDE2000' },
      ...where,
    }),
  ];
}

/** A colour by its name where it has one, else as it is written. */
function colourName({ colour, named }: NonNullable<PlanObject['colour']>, { colours }: Plan): string {
  const name = named === undefined ? undefined : colours[named]?.name;
  return name === undefined ? colourText(colour) : quoted(name);
}

/** Edges and detail. */
export function lookChanges(
  before: PlanObject,
  now: PlanObject,
  compared: Compared,
  name: string,
  about: Pick<Change, 'object' | 'earlier' | 'later'>,
): readonly Change[] {
  const against = (object: PlanObject, nameOf: (other: number) => string): string | undefined => {
    const told = object.edgesAgainst.map(
      ({ edges, objects }) => `${edges} against ${inWords(objects.map((other) => quoted(nameOf(other))))}`,
    );
    return told.length === 0 ? undefined : inWords(told);
  };
  return [
    ...otherNow(
      'objects',
      [before.edges, now.edges],
      (edges, old) => `${name} has ${edges} edges now; they were ${old}.`,
      about,
    ),
    ...changeOf(
      'objects',
      [against(before, nowCalled(compared)), against(now, calledIn(compared.later.plan))],
      {
        new: (edges) => `The edges of ${name} are ${edges} now.`,
        gone: (edges) => `The edges of ${name} are the same all round; they were ${edges}.`,
        changed: (edges, old) => `The edges of ${name} are ${edges} now; they were ${old}.`,
      },
      about,
    ),
    ...otherNow(
      'objects',
      [before.detail, now.detail],
      (detail, old) => `${name} has ${detail} detail now; it had ${old}.`,
      about,
    ),
  ];
}
