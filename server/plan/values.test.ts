import { describe, expect, it } from 'vitest';
import { planOf } from '../../tests/support/plan.js';
import { stepValue } from './colour/value.js';
import { usualGroups } from './values.js';

describe('a scale of nine steps', () => {
  it('is one of repeated halving, as Ross builds his nine values (A Theory of Pure Design, 1907, section 128)', () => {
    const values = Array.from({ length: 9 }, (_, index) => stepValue(index + 1, 9));
    const at = (step: number): number => values[step - 1] ?? NaN;
    // Middle between black and white, then between each of these, then between each of those.
    for (const half of [4, 2, 1]) {
      for (let step = 1 + half; step < 9; step += 2 * half) {
        expect(at(step)).toBeCloseTo((at(step - half) + at(step + half)) / 2, 12);
      }
    }
    expect(at(5)).toBe(5);
  });
});

describe('three values', () => {
  it('have grey midway between dark and light (Dow, Composition, 9th ed. 1914)', () => {
    expect([1, 2, 3].map((step) => stepValue(step, 3)).map((value) => value - 5)).toEqual([
      expect.closeTo(-10 / 3, 12),
      0,
      expect.closeTo(10 / 3, 12),
    ]);
    expect(usualGroups(3).map(({ key, from, to }) => [key, from, to])).toEqual([
      ['dark', 1, 1],
      ['middle', 2, 2],
      ['light', 3, 3],
    ]);
  });
});

describe('the chroma of an object', () => {
  const chromaOf = (lines: string) =>
    planOf(`canvas 40 x 30 cm\nobject bowl\n  shape circle 9\n${lines}`).objects[0]?.chroma;

  it('is told as its colour has it and as its value lets it be', () => {
    expect(chromaOf('  colour 5PB 4/12\n  value 5')).toEqual({
      wanted: 12,
      reached: expect.closeTo(3.9, 1),
    });
    expect(chromaOf('  colour 5PB 3/8\n  value 2')).toEqual({ wanted: 8, reached: 8 });
    expect(chromaOf('  colour 5PB 3/8')).toEqual({ wanted: 8, reached: 8 });
  });

  it('is not there without a colour', () => {
    expect(chromaOf('  value 2')).toBeUndefined();
  });
});
