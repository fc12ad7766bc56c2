import { describe, expect, it } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { measureProportion, type NamedProportion } from './proportion.js';

function named(canvas: string): readonly NamedProportion[] {
  return measureProportion(planOf(`canvas  ${canvas}`).canvas).named;
}

/** The names, those of the canvas's very size marked. */
function names(canvas: string): readonly string[] {
  return named(canvas).map(({ name, sameSize }) => (sameSize ? `= ${name}` : name));
}

describe('the proportion of a canvas', () => {
  it.each([
    ['40 x 40 cm', 'square'],
    ['60 x 40 cm', '2 : 3'],
    ['18 x 24 in', '3 : 4'],
    ['1309 x 809 mm', 'golden section'],
    ['100 x 173.2 cm', 'root 3'],
    ['89.44 x 40 cm', 'root 5'],
  ])('%s is called %s', (canvas, name) => {
    expect(names(canvas)).toContain(name);
  });

  it('of Hambidge’s rectangles is his', () => {
    // J. Hambidge, The Elements of Dynamic Symmetry: root 2 = 1.4142, root 3 = 1.732, root 4 = 2, root 5 = 2.236.
    const ratios = [1.4142, 1.732, 2, 2.236];
    for (const [index, ratio] of ratios.entries()) {
      const root = measureProportion({ width: ratio, height: 1, millimetresPerUnit: 1 }).named.find(
        ({ kind }) => kind === 'root',
      );
      expect(root?.name).toBe(`root ${index + 2}`);
      expect(root?.ratio).toBeCloseTo(ratio, 3);
    }
  });

  it('is not root 2 where the sides do not make it so', () => {
    // H. R. Poore, Pictorial Composition (1903), calls 28 x 36 and 18 x 24 in as long as the diagonal of the square on
    // their breadth; by arithmetic they are 1.286 and 1.333.
    for (const canvas of ['28 x 36 in', '18 x 24 in']) expect(names(canvas)).not.toContain('root 2');
    expect(measureProportion({ width: 28, height: 36, millimetresPerUnit: 25.4 }).ratio).toBeCloseTo(
      1.286,
      3,
    );
  });

  it('has a name within 1 % and none beyond', () => {
    const within = named('100.9 x 200 cm').find(({ name }) => name === '1 : 2');
    expect(within?.difference).toBeCloseTo(-0.0089, 4);
    expect(names('101.1 x 200 cm')).not.toContain('1 : 2');
  });

  it('is the same whichever side is up and whatever the unit', () => {
    const lying = measureProportion({ width: 730, height: 600, millimetresPerUnit: 1 });
    expect(measureProportion({ width: 60, height: 73, millimetresPerUnit: 10 })).toEqual(lying);
  });
});

describe('stock sizes', () => {
  it.each([
    ['73 x 60 cm', '= figure 20'],
    ['59.9 x 73.1 cm', '= figure 20'],
    ['297 x 210 mm', '= A4'],
    ['16 x 20 in', '= 16 x 20 in'],
    ['18 x 14 in', '= 14 x 18 in'],
    ['24 x 48 in', '= 24 x 48 in'],
    ['30.5 x 30.5 cm', '= 12 x 12 in'],
    ['406 x 508 mm', '= 16 x 20 in'],
    ['60 x 90 cm', '24 x 36 in'],
    ['100 x 141.4 cm', '= B0'],
    ['30 x 42.4 cm', 'ISO 216 paper'],
  ])('%s: %s', (canvas, name) => {
    expect(names(canvas)).toContain(name);
  });

  it('in inches are kept within a sixteenth', () => {
    expect(names('16.06 x 20 in')).toContain('= 16 x 20 in');
    expect(names('16.07 x 20 in')).not.toContain('= 16 x 20 in');
  });

  it('of one proportion give the one nearest in size', () => {
    expect(names('32 x 40 in')).toContain('24 x 30 in');
    expect(names('9 x 11.25 in')).toContain('8 x 10 in');
  });
});

it('names no more than one of a kind, the nearest first', () => {
  for (let width = 40; width <= 130; width += 0.5) {
    const all = named(`${width} x 40 cm`);
    expect(new Set(all.map(({ kind }) => kind)).size).toBe(all.length);
    const misses = all.map(({ difference }) => Math.abs(difference));
    expect(misses).toEqual(misses.toSorted((one, other) => one - other));
  }
});
