import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';

const folder = path.resolve(import.meta.dirname, '../../examples');

/** A plan with every kind of statement that is computed, for what the examples leave out. */
const everything = `plan "Everything" by "A"
canvas 24 x 7 1/2 in
  ground soot neutral
divide own, rabatment, thirds
  uprights 20%, 1/2, 31 cm
  levels 2/3
focus crossing 2 1 of own, 3 mm left
horizon 1/3
scale 7
  group night 1-3, dusk 4-5, day 6-7
budget value night 30%, 4 20%, day 50% within 5%
colour soot #2b2a2e dominant
colour coal soot
colour brick 2.5YR 4/6 complement
palette
  paint rose full #7a1030 tint #e8a0b0 at 1 to 9
object wall
  plane background
  shape rectangle (0, 0) to (100%, 100%)
  colour coal
object door, dominant
  shape smooth (2, 2) (5, 1), top edge of wall at 1/3
    (6, 6) (1, 5)
  mirror left to right
  size 50% wide
  turn 22.5 degrees
  at focus, 1 cm up by lower left
  colour rose
  value 2.5
object loaves, secondary
  shape ellipse 10% x 2
  shape path "M 3 3 h 2 v 2 z"
  resize 120% x 80%
  at right side of door at 30%
  repeat 4 every (-8%, 1) turning -6 degrees resized 95%
  value 7
object hook
  shape circle 1/2 at centre of loaves
  allow hidden object because "behind the bread"
lead rail along top edge of wall from lower left corner through (3, 4) to door
allow even count for door, loaves because "a pair"
rule bare ground warning limit 5%
`;

const plans: readonly string[] = [
  everything,
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.mahl'))
    .map((name) => readFileSync(path.join(folder, name), 'utf8')),
];

/** Numbers that break what reckons with them. */
const numbers = [
  '0',
  '-1',
  '-0.0001',
  '1e308',
  '9'.repeat(309),
  '9'.repeat(30),
  '1000000000',
  '0/0',
  '1/0',
  '0.' + '0'.repeat(320) + '1',
  '0.0000001',
  '99999 m',
  '500',
  '½',
  '7 1/2',
];
const names = ['focus', 'centre', 'wall', 'door', 'Tür', 'tür', 'thirds', 'x', 'of', 'because'];

type Spoil = (text: string) => string;

const place = fc.nat(1_000_000);

function onLine(change: (line: string, lines: readonly string[]) => readonly string[]) {
  return (at: number): Spoil =>
    (text) => {
      const lines = text.split('\n');
      const index = at % lines.length;
      return lines.flatMap((line, other) => (other === index ? change(line, lines) : [line])).join('\n');
    };
}

/** Puts `put` in the place of one of the stretches that `pattern` finds. */
function instead(pattern: RegExp, at: number, put: string): Spoil {
  return (text) => {
    const found = [...text.matchAll(pattern)];
    const one = found[at % Math.max(1, found.length)];
    if (!one) return text;
    return text.slice(0, one.index) + put + text.slice(one.index + one[0].length);
  };
}

const spoil: fc.Arbitrary<Spoil> = fc.oneof(
  place.map(onLine(() => [])),
  place.map(onLine((line) => [line, line])),
  fc
    .tuple(place, place)
    .map(([at, other]) => onLine((line, lines) => [lines[other % lines.length] ?? '', line])(at)),
  fc
    .tuple(place, fc.constantFrom('', ' ', '  ', '    ', '\t', '      ', '            '))
    .map(([at, indentation]) => onLine((line) => [indentation + line.trimStart()])(at)),
  {
    weight: 4,
    arbitrary: fc
      .tuple(place, fc.constantFrom(...numbers))
      .map(([at, number]) => instead(/\d+(?:\.\d+)?/g, at, number)),
  },
  fc
    .tuple(place, fc.constantFrom('', '%', 'mm', ' cm', ' m', ' in', '°', ' ml'))
    .map(([at, unit]) => instead(/(?<=\d) ?(?:cm|in|mm|m|%)/g, at, unit)),
  {
    weight: 2,
    arbitrary: fc
      .tuple(place, fc.constantFrom(...names))
      .map(([at, name]) => instead(/\p{L}[\p{L}\p{N}-]*/gu, at, name)),
  },
  place.map((at) => instead(/\S+/g, at, '')),
  fc
    .tuple(place, fc.string({ unit: 'binary', maxLength: 5 }))
    .map(([at, put]) => instead(/(?=[^])/g, at, put)),
);

/** One of the plans, as it is after a few slips of the hand. */
export const spoiltPlan: fc.Arbitrary<string> = fc
  .tuple(fc.constantFrom(...plans), fc.array(spoil, { maxLength: 8 }))
  .map(([text, slips]) => slips.reduce((spoilt, slip) => slip(spoilt), text));

/** A plan and what it is turned into, step by step. */
export const spoiltStepByStep: fc.Arbitrary<readonly string[]> = fc
  .tuple(
    fc.constantFrom(...plans),
    fc.array(fc.oneof(spoil, fc.constant('back' as const)), { minLength: 1, maxLength: 8 }),
  )
  .map(([text, slips]) => {
    const states = [text];
    for (const slip of slips) {
      const last = states.at(-1) ?? text;
      states.push(slip === 'back' ? (states.at(-2) ?? text) : slip(last));
    }
    return states;
  });

/** The files that the examples name; anything else is not there. */
export function readExampleFile(file: string) {
  try {
    return { ok: true, text: readFileSync(path.join(folder, path.join('/', file)), 'utf8') } as const;
  } catch {
    return { ok: false, reason: 'The file is not there.' } as const;
  }
}
