import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'kissed edge');
}

/** A canvas with a diagonal of 100 cm. */
const scene = (x: number, more = '') => `canvas  80 x 60 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (80, 60)
  value   4
object  pear
  shape   circle 10 at (${x}, 30)
  value   2${more}`;

describe('kissed edge', () => {
  it.each([
    [
      5.5,
      '`pear` ends only 0.5 cm short of the left edge of the canvas; more than 0.8 cm (0.8 % of the diagonal) is clear.',
    ],
    [
      5,
      '`pear` just touches the left edge of the canvas; more than 0.8 cm (0.8 % of the diagonal) off it is clear.',
    ],
    [
      4.5,
      '`pear` runs over the left edge of the canvas by only 0.5 cm; more than 0.8 cm (0.8 % of the diagonal) is plain.',
    ],
  ])('is told at %d cm', (x, message) => {
    expect(told(scene(x)).map((finding) => finding.message)).toEqual([message]);
  });

  it.each([5.81, 4.19])('is none at %d cm', (x) => {
    expect(told(scene(x))).toEqual([]);
  });

  it.each([
    ['in from the edge', 5.5, 'Move `pear` 0.4 cm to the right, which takes it clear of the edge.'],
    ['out over it', 4.5, 'Move `pear` 0.4 cm to the left, which lets it run off plainly.'],
  ])('goes by the shortest way %s', (_, x, advice) => {
    const text = scene(x);
    const [finding] = told(text);
    expect(finding?.advice).toBe(advice);
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(text, finding.fix))).toEqual([]);
  });

  it.each([
    [0.05, undefined, undefined],
    [
      0.2,
      '`box` runs along the left edge of the canvas only 0.2 cm inside it; more than 0.8 cm (0.8 % of the diagonal) is clear.',
      'Move `box` 0.3 cm to the left, which lets the edge cut it off.',
    ],
    [
      0.6,
      '`box` runs along the left edge of the canvas only 0.6 cm inside it; more than 0.8 cm (0.8 % of the diagonal) is clear.',
      'Move `box` 0.3 cm to the right, which takes it clear of the edge.',
    ],
    [0.81, undefined, undefined],
  ])('is a straight side %d cm inside it', (left, message, advice) => {
    const text = scene(30, `\nobject  box\n  shape   rectangle (${left}, 20) to (15, 40)\n  value   1`);
    const [finding] = told(text);
    expect(finding?.message).toBe(message);
    expect(finding?.advice).toBe(advice);
    if (finding?.fix) expect(told(mended(text, finding.fix))).toEqual([]);
  });

  it('lets a ground that can’t be moved reach the edge', () => {
    const [finding] = told(
      `canvas  80 x 60 cm\nobject  wall\n  plane   background\n  shape   rectangle (0, 0) to (79.6, 60)\n  value   4`,
    );
    expect(finding?.advice).toBe(
      'Let `wall` reach the edge, 0.4 cm farther out, or end there 0.5 cm or more farther in; moving it as a whole does not do it cleanly.',
    );
  });

  it('is drawn anew by what is missing and never by nothing, where it can’t be moved as a whole', () => {
    // Built onto the post, and at the limit to the hundredth of a millimetre.
    const text = (x: number): string =>
      scene(
        40,
        `\nobject  flag\n  shape   outline (${x}, 20) (30, 12) (30, 28)\n  value   1\nobject  post\n  shape   rectangle (30, 5) to (32, 60)\n  value   1`,
      );
    expect(told(text(0.799))[0]?.advice).toBe(
      'Draw the outline of `flag` there 0.1 cm or more farther in, or 1.6 cm farther out; moving it as a whole does not do it cleanly.',
    );
    expect(told(text(0.79999)).map(({ message }) => message)).toEqual([
      '`flag` ends only 0.79999 cm short of the left edge of the canvas; more than 0.8 cm (0.8 % of the diagonal) is clear.',
    ]);
  });

  it('goes the other way where the short one would make a near tangent', () => {
    const [finding] = told(
      scene(5.5, '\nobject  jar\n  shape   rectangle (11.2, 10) to (20, 50)\n  value   1'),
    );
    expect(finding?.advice).toContain('to the left, which lets it run off plainly');
  });

  it('is told of the three nearest, when those that are set aside are left out', () => {
    const leaf = (at: number, gap: number, aside: boolean) =>
      `\nobject  leaf-${at}\n  shape   circle 6 at (${at}, ${57 - gap})\n  value   1${aside ? '\n  allow   kissed edge because "it fell there"' : ''}`;
    const leaves = (...aside: readonly number[]) =>
      told(scene(40, [10, 22, 34, 46, 58].map((at, i) => leaf(at, (i + 1) / 10, aside.includes(i))).join('')))
        .filter(({ allowed }) => !allowed)
        .map(({ objects }) => objects);
    expect(leaves()).toEqual([[2], [3], [4, 5, 6]]);
    expect(leaves(0, 2)).toEqual([[3], [5], [6]]);
  });
});
