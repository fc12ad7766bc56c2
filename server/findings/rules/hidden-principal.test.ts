import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(text: string): Finding | undefined {
  return checked(text).findings.find(({ rule }) => rule === 'hidden principal');
}

const scene = (top: number, plane = 'middle', more = '') => `canvas  40 x 30 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (40, 30)
  value   4
object  kitten, secondary
  plane   ${plane}
  shape   rectangle (18, 10) to (24, 20)
  value   5${more}
object  sofa
  shape   rectangle (6, ${top}) to (28, 28)
  value   1`;

describe('hidden principal', () => {
  it('tells how much is hidden by what, at more than 60 %', () => {
    expect(told(scene(14))).toBeUndefined();
    expect(told(scene(13.9))?.message).toBe(
      '`kitten`, which is secondary, is 61 % hidden by `sofa`; up to 60 % it still plays its part.',
    );
  });

  it('leaves what is not seen at all to the rule on hidden objects', () => {
    expect(told(scene(10))).toBeUndefined();
    expect(checked(scene(10)).findings.map(({ rule }) => rule)).toContain('hidden object');
  });

  it('brings it into a nearer plane', () => {
    const text = scene(12, 'background');
    const finding = told(text);
    expect(finding?.advice).toBe(
      'Write `plane foreground` under `kitten`, which brings it in front, or move it.',
    );
    if (finding?.fix) expect(told(mended(text, finding.fix))).toBeUndefined();
    expect(finding?.fix).toBeDefined();
  });

  it('does not count what lies on it as hiding it', () => {
    const coat = '\nobject  coat\n  shape   rectangle (18.4, 10.4) to (23.6, 19.6)\n  value   4';
    expect(told(scene(19, 'middle', coat))).toBeUndefined();
  });

  it('moves a thing with parts into sight, as it has no plane of its own to take', () => {
    const eye = '\nobject  ear\n  shape   circle 1 at (20, 11)\n  value   2';
    const text = scene(12.5, 'middle', eye);
    const finding = told(text);
    expect(finding?.advice).toMatch(
      /^Move `kitten`, with what lies on it, [\d.]+ cm up, which shows enough of it\.$/,
    );
    if (finding?.fix) expect(told(mended(text, finding.fix))).toBeUndefined();
    expect(finding?.fix).toBeDefined();
  });
});
