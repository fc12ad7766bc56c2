import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../server/plan/geometry/point.js';
import { otherNames, shuffled, usualNames, written } from './picture-text.js';
import { mirrored, type Picture, picture, scaled } from './pictures.js';
import { read, sentences, told, type Told, toldApart } from './told.js';

/** Another seed and more runs from outside, to look further than every test run does. */
const seed = Number(process.env['SEED'] ?? 11);
const runs = Number(process.env['RUNS'] ?? 30);
/** Always the same pictures, so that it is certain that they break most rules. */
const ALWAYS = { seed: 11, numRuns: 30 };

function expectSame(picture: string, one: readonly Told[], other: readonly Told[]): void {
  expect(toldApart(one, other), picture).toEqual({ missing: [], added: [] });
}

function holds(test: (picture: Picture, shuffle: number) => void): void {
  fc.assert(fc.property(picture, fc.integer({ min: 1, max: 1000 }), test), { seed, numRuns: runs });
}

describe('the findings of a picture', { timeout: 60_000 + 3_000 * runs }, () => {
  it('are those of most rules, among many pictures', () => {
    const rules = new Set<string>();
    fc.assert(
      fc.property(picture, (one) => {
        const { plan, findings } = read(written(one));
        // A shape may be so flat that it has no edge for a lead.
        expect(
          plan.problems.filter(({ severity, code }) => severity === 'error' && code !== 'unreadable shape'),
        ).toEqual([]);
        findings.forEach(({ rule }) => rules.add(rule));
      }),
      ALWAYS,
    );
    expect(rules.size).toBeGreaterThan(20);
  });

  it('are the same when left and right change over', () => {
    holds((one) => {
      const writing = written(one);
      const over = read(written(mirrored(one)));
      const back = ({ x, y }: Point): Point => ({ x: one.width - x, y });
      expectSame(writing.text, told(read(writing)), told(over, back));
    });
  });

  it.each([0.1, 3])('are the same %f times as large', (factor) => {
    holds((one) => {
      const writing = written(one);
      expectSame(writing.text, told(read(writing)), told(read(written(scaled(one, factor)))));
    });
  });

  it('are told in the same words under other names', () => {
    holds((one) => {
      const renamed = sentences(read(written(one, otherNames)), otherNames);
      const usual = read(written(one));
      expect(renamed, usual.written.text).toEqual(sentences(usual, usualNames));
    });
  });

  it('are told in the same words when lines stand in another order', () => {
    holds((one, shuffle) => {
      const reordered = sentences(read(written(one, usualNames, shuffled(shuffle))), usualNames);
      const usual = read(written(one));
      expect(reordered, usual.written.text).toEqual(sentences(usual, usualNames));
    });
  });
});
