import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';
import { keyOf } from './spread.js';

/** Upright strips on 100 x 40: each so many cm wide, on so many steps of five. */
function strips(...widths: readonly (readonly [cm: number, step: number])[]): string {
  let x = 0;
  const objects = widths.map(([cm, step], index) => {
    const from = x;
    x += cm;
    return `object  strip-${index}\n  shape   rectangle (${from}, 0) to (${x}, 40)\n  value   ${step}`;
  });
  return ['canvas  100 x 40 cm\n  ground  N 5/', ...objects].join('\n');
}

describe('mean, key and range of the values', () => {
  it('are worked by hand for four strips', () => {
    // Values 1, 3, 7 and 9 on 4, 30, 60 and 6 % of the picture: 4 % is less than the tail, so the range begins at 3.
    const { values } = checked(strips([4, 1], [30, 2], [60, 4], [6, 5])).measures;
    expect(values.mean).toBeCloseTo(0.04 * 1 + 0.3 * 3 + 0.6 * 7 + 0.06 * 9, 9);
    expect(values.key).toBe('middle');
    expect(values.range).toEqual({ from: 3, to: 9 });
  });

  it('count an end that has exactly the tail', () => {
    const { values } = checked(strips([5, 1], [90, 3], [5, 5])).measures;
    expect(values.range).toEqual({ from: 1, to: 9 });
  });

  it('count bare ground at its own value', () => {
    const { values } = checked(strips([90, 1])).measures;
    expect(values.mean).toBeCloseTo(0.9 * 1 + 0.1 * 5, 3);
    expect(values.range?.to).toBeCloseTo(5, 3);
    expect(values.key).toBe('low');
  });

  it('leave out what has neither value nor colour', () => {
    const plain = strips([50, 4], [50, 4]);
    const { values } = checked(plain.replace(/ {2}value {3}4$/u, '')).measures;
    expect([values.unplannedShare, values.mean, values.range]).toEqual([
      expect.closeTo(0.5, 9),
      expect.closeTo(7, 9),
      { from: 7, to: 7 },
    ]);
  });

  it('are not there for a plan without values', () => {
    const { values } = checked(
      'canvas 100 x 40 cm\nobject wall\n  shape rectangle (0, 0) to (100, 40)',
    ).measures;
    expect([values.mean, values.key, values.range]).toEqual([undefined, undefined, undefined]);
  });

  it('agree with a picture taken apart into 100,000 places', () => {
    const widths = [7, 3, 31, 22, 18, 1, 18] as const;
    const steps = [2, 1, 4, 3, 5, 1, 2.5];
    const { values } = checked(strips(...widths.map((cm, i) => [cm, steps[i] ?? 1] as const))).measures;
    const places = widths
      .flatMap((cm, i) => Array.from({ length: cm * 1000 }, () => 2 * ((steps[i] ?? 1) - 0.5)))
      .sort((a, b) => a - b);
    expect(values.mean).toBeCloseTo(places.reduce((sum, value) => sum + value, 0) / places.length, 6);
    expect(values.range).toEqual({ from: places[5000 - 1], to: places[95000] });
  });
});

describe('the key of a picture', () => {
  it.each([
    [3.99, 'low'],
    [4, 'middle'],
    [6, 'middle'],
    [6.01, 'high'],
  ])('with a mean value of %d is %s (common practice, no source)', (mean, key) => {
    expect(keyOf(mean)).toBe(key);
  });
});
