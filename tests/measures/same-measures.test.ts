import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { otherNames, shuffled, written, type WrittenPicture } from '../findings/picture-text.js';
import { mirrored, type Picture, picture, scaled } from '../findings/pictures.js';
import { differences, type Figures, figures } from './figures.js';
import { asItIs, CASES, inMirror, timesAsLarge } from './same-cases.js';

/** Another seed and more runs from outside, to look further than every test run does. */
const seed = Number(process.env['SEED'] ?? 13);
const runs = Number(process.env['RUNS'] ?? 25);

function expectSame(writing: WrittenPicture, other: Figures): void {
  expect(differences(figures(writing.text), other).slice(0, 10), writing.text).toEqual([]);
}

function holds(test: (picture: Picture, shuffle: number) => void): void {
  fc.assert(fc.property(picture, fc.integer({ min: 1, max: 1000 }), test), { seed, numRuns: runs });
}

describe('what is measured of a picture', { timeout: 60_000 + 3_000 * runs }, () => {
  it('is the same when left and right change over', () => {
    holds((one) => expectSame(written(one), figures(written(mirrored(one)).text, true)));
  });

  it.each([0.1, 3])('is the same %f times as large', (factor) => {
    holds((one) => expectSame(written(one), figures(written(scaled(one, factor)).text)));
  });

  it('is the same under other names', () => {
    holds((one) => expectSame(written(one), figures(written(one, otherNames).text)));
  });

  it('is the same when lines stand in another order', () => {
    holds((one, shuffle) => {
      expectSame(written(one), figures(written(one, undefined, shuffled(shuffle)).text));
    });
  });
});

describe.each(CASES)('what is measured of $name', ({ width, text }) => {
  const usual = figures(text(asItIs));

  it('is the same in a mirror', () => {
    expect(differences(usual, figures(text(inMirror({ width })), true))).toEqual([]);
  });

  it.each([0.1, 3])('is the same %f times as large', (factor) => {
    expect(differences(usual, figures(text(timesAsLarge(factor))))).toEqual([]);
  });
});
