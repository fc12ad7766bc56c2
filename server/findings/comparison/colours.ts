import { labDifference } from '../../plan/colour/difference.js';
import type { NamedColour, Paint, Palette } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { roleSubject } from '../words/colours.js';
import { quoted } from '../words/words.js';
import { type Change, type Compared, byKey, changeOf, comeAndGone, otherNow, places } from './change.js';
import { colourChange, colourText, LEAST_DIFFERENCE } from './wording.js';
import { plannedChanges, roleChanges } from './values.js';

/** What differs in the colours and in the colour budget. */
export function colourChanges({ earlier, later }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan, later.plan];
  const named = byKey(before.colours, now.colours, ({ key }) => key);
  return [
    ...comeAndGone('colours', named, {
      new: ({ name, colour }) => `The colour ${quoted(name)} is new: ${colourText(colour)}.`,
      gone: ({ name, colour }) => `The colour ${quoted(name)} is gone; it was ${colourText(colour)}.`,
    }),
    ...named.both.flatMap(([old, colour]) => namedChanges(old, colour)),
    ...otherNow(
      'colours',
      [before.wheel, now.wheel],
      (wheel) => `Hues are told on ${wheel === 'munsell' ? 'Munsell’s wheel' : 'the painters’ wheel'} now.`,
    ),
    ...plannedChanges('colours', before.colourBudget, now.colourBudget, roleSubject),
    ...roleChanges(earlier.measures.colours.budget, later.measures.colours.budget),
  ];
}

function namedChanges(before: NamedColour, now: NamedColour): readonly Change[] {
  const where = places(before.colourLocation, now.colourLocation);
  const name = quoted(now.name);
  const far = labDifference(before.colour.lab, now.colour.lab);
  const changed: readonly Change[] =
    far < LEAST_DIFFERENCE
      ? []
      : [
          {
            topic: 'colours',
            kind: 'colour',
            message: `${name} is ${colourText(now.colour)} instead of ${colourText(before.colour)}: ${colourChange(before.colour, now.colour)}.`,
            figure: { from: 0, to: far, unit: 'CIEDE2000' },
            ...where,
          },
        ];
  return [
    ...changed,
    ...changeOf(
      'colours',
      [before.role, now.role],
      {
        new: (role) => `${name} has a role now: ${role}.`,
        gone: (role) => `${name} has no role any more; it was ${role}.`,
        changed: (role, old) => `${name} is ${role} now; it was ${old}.`,
      },
      where,
    ),
  ];
}

/** What differs in the palette. */
export function paletteChanges({ earlier, later }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan.palette, later.plan.palette];
  const where = places(before?.location, now?.location);
  if (before === undefined || now === undefined)
    return changeOf(
      'palette',
      [before && tubes(before), now && tubes(now)],
      {
        new: (paints) => `There is a palette now, of ${paints}.`,
        gone: (paints) => `There is no palette any more; it was of ${paints}.`,
        changed: () => '',
      },
      where,
    );
  const paints = byKey(before.paints, now.paints, ({ key }) => key);
  return [
    ...comeAndGone('palette', paints, {
      new: (paint) => `${paintName(paint)} is new on the palette.`,
      gone: (paint) => `${paintName(paint)} is off the palette.`,
    }),
    ...paints.both.flatMap(([old, paint]) =>
      otherNow(
        'palette',
        [paintText(old), paintText(paint)],
        (text, was) => `${quoted(paint.name)} is ${text} instead of ${was}.`,
        places(old.location, paint.location),
      ),
    ),
    ...changeOf(
      'palette',
      [before.mother?.value, now.mother?.value],
      {
        new: (mother) => `All mixtures have some ${quoted(mother)} now.`,
        gone: (mother) => `No mixture needs ${quoted(mother)} any more.`,
        changed: (mother, old) => `All mixtures have some ${quoted(mother)} instead of ${quoted(old)}.`,
      },
      places(before.mother?.location ?? before.location, now.mother?.location ?? now.location),
    ),
    ...changeOf(
      'palette',
      [amount(before.filmThickness?.value, 'mm'), amount(now.filmThickness?.value, 'mm')],
      {
        new: (film) => `The film is ${film} now.`,
        gone: () => 'The film is the usual one again.',
        changed: (film, old) => `The film is ${film} instead of ${old}.`,
      },
      where,
    ),
    ...changeOf(
      'palette',
      [amount(before.tube?.value, 'ml'), amount(now.tube?.value, 'ml')],
      {
        new: (tube) => `Tubes hold ${tube}.`,
        gone: () => 'It is no longer said what a tube holds.',
        changed: (tube, old) => `Tubes hold ${tube} instead of ${old}.`,
      },
      where,
    ),
  ];
}

function tubes({ paints }: Palette): string {
  return paints.length === 1 ? 'one paint' : `${paints.length} paints`;
}

function paintName({ name, index }: Paint): string {
  return index === undefined || index.toLowerCase() === name.toLowerCase()
    ? quoted(name)
    : `${quoted(name)} (${index})`;
}

function paintText({ index, full, tint, temperature }: Paint): string {
  const parts = [
    index,
    full && `full ${colourText(full)}`,
    tint && `tint ${colourText(tint.colour)} of ${tint.paint} to ${tint.white} white`,
    temperature,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? 'not described' : parts.join(', ');
}

function amount(value: number | undefined, unit: string): string | undefined {
  return value === undefined ? undefined : `${plainNumber(value, 3)} ${unit}`;
}
