import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

/** On Munsell's circle: 5B, at 234 degrees, rules; a quarter turn from it lie 7.5P and 7.5GY. */
function scene(discord: string): string {
  return `canvas  100 x 50 cm\nwheel   munsell\ncolour  sea 5B 5/4 dominant\ncolour  note ${discord} discord\nobject  water\n  plane   background\n  shape   rectangle (0, 0) to (100, 50)\n  colour  sea\nobject  buoy\n  shape   circle 10 at (30, 20)\n  colour  note`;
}

function found(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'discord off quarter');
}

describe('a discord', () => {
  // Half a quarter turn is 12.5 hue numbers, so from 5B to 7.5PB, and from its opposite, 5YR, to 7.5Y.
  it.each([
    ['7.5P 5/4', true],
    ['7.5GY 5/4', true],
    ['7.5PB 5/4', true],
    ['7.4PB 5/4', false],
    ['5B 5/4', false],
    ['7.5Y 5/4', true],
    ['7.4Y 5/4', false],
    ['5YR 5/4', false],
    ['N 5/', true],
  ])('to 5B may be %s: %s', (colour, may) => {
    expect(found(scene(colour)).length === 0).toBe(may);
  });

  it('is told how near it lies to the dominant hue, and the nearest place that counts', () => {
    const text = scene('5PB 5/4');
    const [finding] = found(text);
    expect(finding).toMatchObject({
      severity: 'warning',
      message:
        '`note` is to be a discord, but its hue, 5PB, lies 36° from the dominant hue, 5B, on Munsell’s circle; a discord keeps at least 45° off, near a quarter turn.',
      advice: 'Turn it to 7.5PB: `7.5PB 5.0/4.0` has the same value and chroma.',
    });
    expect(finding?.fix && found(mended(text, finding.fix))).toEqual([]);
  });

  it('that is nearly a grey is not turned but called neutral', () => {
    const [finding] = found(scene('5PB 9/1.5'));
    expect(finding?.fix).toBeUndefined();
    expect(finding?.advice).toMatch(/^With chroma 1\.[45] it is nearly a grey/);
  });

  it('is told of the opposite where that is nearer', () => {
    const text = scene('10R 5/4');
    const [finding] = found(text);
    expect(finding?.message).toContain('lies 18° from the opposite of the dominant hue, 5YR,');
    expect(finding?.advice).toContain('`2.5R 5.0/4.0`');
    expect(finding?.fix && found(mended(text, finding.fix))).toEqual([]);
  });
});
