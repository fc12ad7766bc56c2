import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(text: string): Finding | undefined {
  return checked(text).findings.find(({ rule }) => rule === 'dominant outweighed');
}

const scene = (barrel: string, more = '') => `canvas  50 x 40 cm
focus   lower left
object  yard
  plane   background
  shape   rectangle (0, 0) to (50, 40)
  value   3
object  goose, dominant
  shape   ellipse 12 x 9 at (18, 25)
  value   5
object  barrel, secondary
  shape   ${barrel}
  value   1${more}`;

const LARGE = 'rectangle (33, 14) to (44, 31)';

describe('dominant outweighed', () => {
  it('names both with the multiple, and takes one a step on', () => {
    const text = scene(LARGE);
    const finding = told(text);
    // 11 x 17 of 2,000 against pi x 6 x 4.5, 4 steps of value from the yard each: 187 : 84.8 but for the mean.
    expect(finding?.message).toContain('`barrel` weighs twice as much as `goose`, which is dominant');
    expect(finding?.advice).toContain('Take `barrel` from step 1 to step 2');
    if (finding?.fix) expect(told(mended(text, finding.fix))).toBeUndefined();
    expect(finding?.fix).toBeDefined();
  });

  it('makes it smaller where the value is the budget’s', () => {
    const text = `${scene(LARGE)}\nbudget  value 1 9% within 1%`;
    const finding = told(text);
    expect(finding?.advice).toMatch(/^Make `barrel` smaller, [67]\d % as wide and as high/);
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(text, finding.fix))).toBeUndefined();
  });

  it('counts what lies on the dominant', () => {
    const wing = '\nobject  wing\n  shape   ellipse 11 x 8 at (18, 25)\n  value   1';
    const small = 'rectangle (33, 18) to (40, 31)';
    expect(told(scene(small, wing))).toBeUndefined();
    // Without it little is seen of the goose: 15.7 square centimetres to 91.
    expect(told(scene(small, wing.replace('object  wing', 'object  wing, secondary')))).toBeDefined();
  });

  describe('where the focal point is to win', () => {
    /** A dark barrel frames the goose, its edges given up to hers. */
    const framed = (winBy: string, barrel = 'lost', goose = 'hard', at = '(18, 25)') =>
      scene(LARGE, `\n  edges   ${barrel}`)
        .replace('focus   lower left', `focus   lower left${winBy === '' ? '' : `\n  win by  ${winBy}`}`)
        .replace('(18, 25)', `${at}\n  edges   ${goose}`);
    const ranks = (text: string) => checked(text).measures.emphasis.focal?.rank;

    it('by other means than scale, and ranks first, is not told', () => {
      expect(ranks(framed('value, edges'))).toBe(1);
      expect(told(framed('value, edges'))).toBeUndefined();
    });

    it('by scale, or does not say by what, is told', () => {
      expect(told(framed('value, scale'))).toBeDefined();
      expect(told(framed(''))).toBeDefined();
    });

    it('by other means but does not rank first, is told', () => {
      expect(ranks(framed('value, edges', 'hard', 'soft'))).toBeGreaterThan(1);
      expect(told(framed('value, edges', 'hard', 'soft'))).toBeDefined();
    });

    it('by other means, but the dominant object lies elsewhere, is told', () => {
      const post = '\nobject  post\n  shape   rectangle 3 x 12 at focus\n  value   1\n  edges   hard';
      const text = `${framed('value', 'lost', 'hard', '(18, 8)').replace('value   5', 'value   4')}${post}`;
      expect(ranks(text)).toBe(1);
      expect(told(text)).toBeDefined();
    });
  });

  it('lets a fifth more pass, and what a plan allows', () => {
    expect(told(scene('rectangle (33, 20) to (41, 32)'))).toBeUndefined();
    const aside = `${scene(LARGE)}\nallow   dominant outweighed because "the goose is white, the barrel wet"`;
    expect(told(aside)?.allowed?.reason).toBe('the goose is white, the barrel wet');
  });
});
