import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checked } from '../../tests/support/plan.js';
import { plainNumber } from '../plan/problems.js';

const ABOUT_OBJECTS = new Set([
  'dominant outweighed',
  'off balance',
  'hidden principal',
  'even count',
  'like sizes',
  'like gaps',
  'near tangent',
  'kissed edge',
]);

const thing = fc.record({
  form: fc.constantFrom('rectangle', 'ellipse'),
  x: fc.integer({ min: 0, max: 160 }).map((half) => half / 2),
  y: fc.integer({ min: 0, max: 120 }).map((half) => half / 2),
  width: fc.integer({ min: 3, max: 30 }),
  height: fc.integer({ min: 3, max: 30 }),
  value: fc.integer({ min: 1, max: 5 }),
  role: fc.constantFrom('', ', secondary'),
});
const scene = fc.array(thing, { minLength: 2, maxLength: 7 });
type Thing = typeof thing extends fc.Arbitrary<infer One> ? One : never;

function told(things: readonly Thing[], size: number, across: (x: number) => number): readonly string[] {
  const number = (value: number) => plainNumber(value * size, 6);
  const text = things.map(
    ({ form, x, y, width, height, value, role }, index) =>
      `object  thing-${index}${index === 0 ? ', dominant' : role}\n  shape   ${form} ${number(width)} x ${number(height)} at (${number(across(x))}, ${number(y)})\n  value   ${value}`,
  );
  const { findings } = checked(
    `canvas  ${number(80)} x ${number(60)} cm\n  ground  #b9a17c\nfocus   (${number(across(50))}, ${number(25)})\n${text.join('\n')}`,
  );
  return findings
    .filter(({ rule }) => ABOUT_OBJECTS.has(rule))
    .map(({ rule, objects }) => `${rule}: ${[...objects].sort((a, b) => a - b).join(' ')}`)
    .sort();
}

describe('what is found about the objects of any picture', () => {
  it('is the same in the mirror and at another size', () => {
    fc.assert(
      fc.property(scene, fc.constantFrom(2, 0.5), (things, size) => {
        const here = told(things, 1, (x) => x);
        expect(told(things, 1, (x) => 80 - x)).toEqual(here);
        expect(told(things, size, (x) => x)).toEqual(here);
      }),
      { numRuns: 25, seed: 41 },
    );
  });
});
