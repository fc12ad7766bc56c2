import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(text: string): Finding | undefined {
  return checked(text).findings.find(({ rule }) => rule === 'off balance');
}

/** A light room and dark things in it: `stove` far to the right. */
const scene = (things: string) => `canvas  60 x 40 cm
focus   (51, 22)
object  room
  plane   background
  shape   rectangle (0, 0) to (60, 40)
  value   5
object  stove, dominant
  shape   rectangle (44.5, 9) to (58, 35)
  value   1
${things}`;

const BASKET = 'object  basket\n  shape   ellipse 11 x 7 at (37, 33)\n  value   1';

describe('off balance', () => {
  it('tells where the weight lies and what pulls most', () => {
    const finding = told(scene(BASKET));
    expect(finding?.message).toMatch(
      /^The weight of the picture lies \d\.\d cm to the right of the middle; up to 7\.2 cm \(12 % of the width\) it hangs level\. `stove` pulls most on that side\.$/,
    );
  });

  it('moves another thing than the dominant, just far enough', () => {
    const text = scene(BASKET);
    const finding = told(text);
    expect(finding?.advice).toMatch(
      /^Move `basket` [\d.]+ cm to the left, which brings the weight to within 12 %\.$/,
    );
    expect(finding?.fix).toBeDefined();
    if (!finding?.fix) return;
    const after = checked(mended(text, finding.fix));
    const offset = after.measures.balance.offset ?? NaN;
    expect(offset).toBeLessThanOrEqual(0.12 + 1e-9);
    expect(offset).toBeGreaterThan(0.115);
  });

  it('says how much of an accent would hold the balance where nothing that is there does', () => {
    const finding = told(scene(''));
    expect(finding?.advice).toMatch(/set some dark accent near the left edge, about [\d.]+ % of the picture/);
    expect(finding?.fix).toBeUndefined();
    const share = Number(/about ([\d.]+) %/.exec(finding?.advice ?? '')?.[1]) / 100;
    // So large a block, a tenth of the width from the left edge, and the picture hangs level.
    const height = (share * 60 * 40) / 6;
    const block = `object  block\n  shape   rectangle (3, 10) to (9, ${10 + height})\n  value   1`;
    expect(told(scene(block))).toBeUndefined();
  });

  it('is the mirror image in the mirror', () => {
    const mirrored = scene(BASKET)
      .replace('(51, 22)', '(9, 22)')
      .replace('(44.5, 9) to (58, 35)', '(2, 9) to (15.5, 35)')
      .replace('(37, 33)', '(23, 33)');
    const swapped = (words = '') =>
      words.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'));
    expect(told(mirrored)?.message).toBe(swapped(told(scene(BASKET))?.message));
    expect(told(mirrored)?.advice).toBe(swapped(told(scene(BASKET))?.advice));
  });

  it('says nothing while more than a tenth of the picture has no value yet', () => {
    const curtain = (width: number) =>
      told(scene(`${BASKET}\nobject  curtain\n  shape   rectangle (0, 0) to (${width}, 40)`));
    expect(curtain(5.9)).toBeDefined();
    expect(curtain(6.1)).toBeUndefined();
  });
});
