import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

/** A pot at the focal point, a drape 40 cm from it, on a grey wall of 100 x 50 cm. */
function scene(pot: string, drape: string, winBy = ''): string {
  return `canvas  100 x 50 cm\nfocus   (20, 25)${winBy && `\n  win by  ${winBy}`}\ncolour  clay ${pot}\ncolour  silk ${drape}\nobject  wall\n  plane   background\n  shape   rectangle (0, 0) to (100, 50)\n  colour  5B 6/1\nobject  pot, dominant\n  shape   circle 10 at focus\n  colour  clay\nobject  drape\n  shape   rectangle (60, 0) to (80, 50)\n  colour  silk`;
}

function found(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'chroma off focus');
}

describe('the strongest chroma', () => {
  it.each([
    ['5R 4/8', '5YR 4/6', '', false],
    ['5R 4/6', '5YR 4/7.9', '', false],
    ['5R 4/5', '5YR 4/7', '', true],
    ['5R 4/6', '5YR 4/6.5', 'colour', false],
    ['5R 4/6', '5YR 4/6.6', 'value, colour', true],
    ['5R 4/2', '5YR 4/7', 'value', false],
  ])(
    'of %s at the focal point and %s elsewhere, to win by “%s”, is away from it: %s',
    (pot, drape, by, away) => {
      expect(found(scene(pot, drape, by)).length > 0).toBe(away);
    },
  );

  it('is told with its distance, and how far it has to come down or the other up', () => {
    const text = scene('5R 4/5', '5YR 4/7');
    const [finding] = found(text);
    expect(finding).toMatchObject({
      severity: 'hint',
      message:
        'The strongest chroma, 7 in `drape`, lies 40 cm from the focal point. Within 8.9 cm (8 % of the diagonal) of it the strongest is 5, in `pot`; less than 2 weaker is let pass.',
      advice: 'Lower the chroma of `silk` from 7 to 6.5, or raise `pot` to 5.5.',
      objects: [2],
    });
    expect(finding?.fix && found(mended(text, finding.fix))).toEqual([]);
    expect(found(text.replace('5R 4/5', '5R 4/5.5'))).toEqual([]);
  });

  it('may be far from a place where nothing has a colour yet', () => {
    const text = scene('5R 4/5', '5YR 4/7')
      .replace('  colour  5B 6/1', '  value   3')
      .replace('  colour  clay', '  value   2');
    expect(found(text)).toEqual([]);
  });

  it('is not asked for without a focal point on the canvas', () => {
    const text = scene('5R 4/2', '5YR 4/7');
    expect(found(text.replace('focus   (20, 25)', 'focus   (-20, 25)'))).toEqual([]);
  });
});
