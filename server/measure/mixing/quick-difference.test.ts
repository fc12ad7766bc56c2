import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readReference } from '../../../tests/references/read.js';
import { labDifference } from '../../plan/colour/difference.js';
import type { Lab } from '../../plan/colour/model.js';
import { leastDifference, mayBeWithin } from './quick-difference.js';

const along = fc.double({ min: -128, max: 128, noNaN: true });
const lightness = fc.double({ min: 0, max: 100, noNaN: true });
const anyLab = fc.tuple(lightness, along, along) as fc.Arbitrary<Lab>;
/** A colour and another near it, where rounding and the rotation of blues tell. */
const near = fc.double({ min: -6, max: 6, noNaN: true });
const pair = fc.oneof(
  fc.tuple(anyLab, anyLab),
  fc
    .tuple(anyLab, near, near, near)
    .map(([lab, l, a, b]): [Lab, Lab] => [
      lab,
      [Math.min(100, Math.max(0, lab[0] + l)), lab[1] + a, lab[2] + b],
    ]),
);

const published = readReference('ciede2000-pairs.txt').map((row) => {
  const lab = (at: number): Lab => [Number(row[at]), Number(row[at + 1]), Number(row[at + 2])];
  return { number: Number(row[0]), one: lab(2), other: lab(17), expected: Number(row[15]) };
});

describe('the quick judgement of a difference', () => {
  it('never refuses a pair that is within the limit', () => {
    fc.assert(
      fc.property(pair, ([one, other]) => {
        expect(mayBeWithin(labDifference(one, other), one, ...other)).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  it('refuses what is farther by a hundredth, but for opposite hues', () => {
    fc.assert(
      fc.property(pair, ([one, other]) => {
        fc.pre(one[1] * other[1] + one[2] * other[2] > 0);
        const difference = labDifference(one, other);
        fc.pre(difference > 0.1);
        expect(mayBeWithin(0.99 * difference, one, ...other)).toBe(false);
      }),
      { numRuns: 5000 },
    );
  });

  // Sharma, Wu, Dalal 2005, table 1; the hues of pairs 9 to 16 lie opposite, where it leaves the answer to the
  // whole formula.
  it.each(published)('pair $number differs by $expected', ({ number, one, other, expected }) => {
    expect(mayBeWithin(expected + 1e-4, one, ...other)).toBe(true);
    if (number < 9 || number > 16) expect(mayBeWithin(0.995 * expected, one, ...other)).toBe(false);
  });
});

describe('the least difference of two lightnesses', () => {
  it('is never more than the difference of two colours', () => {
    fc.assert(
      fc.property(pair, ([one, other]) => {
        expect(leastDifference(one[0], other[0])).toBeLessThanOrEqual(labDifference(one, other) + 1e-9);
      }),
      { numRuns: 5000 },
    );
  });

  it('grows with the distance', () => {
    fc.assert(
      fc.property(lightness, lightness, lightness, (from, one, other) => {
        fc.pre((one - from) * (other - from) > 0);
        const [nearer, farther] = Math.abs(one - from) < Math.abs(other - from) ? [one, other] : [other, one];
        expect(leastDifference(from, nearer)).toBeLessThanOrEqual(leastDifference(from, farther) + 1e-12);
      }),
      { numRuns: 2000 },
    );
  });
});
