import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'like sizes');
}

const scene = (one: string, other: string, more = '') => `canvas  80 x 60 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (80, 60)
  value   4
object  jug, dominant
  shape   rectangle ${one} at (20, 30)
  value   1
object  bowl, secondary
  shape   rectangle ${other} at (55, 30)
  value   2${more}`;

describe('like sizes', () => {
  it('tells two areas within the limit', () => {
    // 400 and 380 of 4,800 square centimetres.
    const [finding] = told(scene('20 x 20', '20 x 19'));
    expect(finding?.message).toBe(
      '`jug` and `bowl` are of almost the same size, 8.3 % and 7.9 % of the picture, 5 % apart; more than 8 % apart they read as two sizes.',
    );
  });

  it('keeps quiet beyond it', () => {
    expect(told(scene('20 x 20', '20 x 18.4'))).toHaveLength(1);
    expect(told(scene('20 x 20', '20 x 18.39'))).toEqual([]);
  });

  it.each([
    ['the secondary one smaller', '20 x 20', '20 x 19', '`bowl` 91 %'],
    // 95.0 % of the length would do for the limit; 20 % of the area apart is plain.
    ['also when it is the larger', '20 x 19', '20 x 20', '`bowl` 87 %'],
  ])('makes %s', (_, jug, bowl, expected) => {
    const text = scene(jug, bowl);
    const [finding] = told(text);
    expect(finding?.advice).toContain(`Make ${expected} as wide and as high`);
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(text, finding.fix))).toEqual([]);
  });

  it('gives no edits that would leave behind what lies on a thing', () => {
    const [finding] = told(
      scene('20 x 20', '20 x 19', '\nobject  rim\n  shape   rectangle 10 x 4 at (55, 24)\n  value   4'),
    );
    expect(finding?.advice).toContain('Make `bowl` 91 %');
    expect(finding?.fix).toBeUndefined();
  });

  it('tells the three most alike, when those that are set aside are left out', () => {
    const cup = (index: number, aside: boolean) =>
      `object  cup-${index}, secondary\n  shape   rectangle 8 x ${10 - index / 20 - index ** 2 / 100} at (${8 + 12 * index}, 30)\n  value   2${aside ? '\n  allow   like sizes because "a set of cups"' : ''}\n`;
    const cups = (aside: number) =>
      told(`canvas  80 x 60 cm\n${[0, 1, 2, 3, 4, 5].map((index) => cup(index, index === aside)).join('')}`)
        .filter(({ allowed }) => !allowed)
        .map(({ objects }) => objects);
    expect(cups(-1)).toEqual([
      [0, 1],
      [1, 2],
      [2, 3, 4, 5],
    ]);
    expect(cups(1)).toEqual([
      [2, 3],
      [3, 4],
      [4, 5],
    ]);
  });
});
