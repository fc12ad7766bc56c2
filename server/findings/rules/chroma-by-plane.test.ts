import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

/** Hills in the background over the upper half, a field in the middle ground over the lower. */
function scene(hills: string, field: string, more = ''): string {
  return `canvas  100 x 50 cm\nscale   5\n  planes  lighten with distance\ncolour  far ${hills}\nobject  hills\n  plane   background\n  shape   rectangle (0, 0) to (100, 25)\n  colour  far\nobject  field\n  shape   rectangle (0, 25) to (100, 50)\n  colour  ${field}${more}`;
}

function found(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'chroma by plane');
}

describe('a background', () => {
  it.each([
    ['5B 7/4', '5GY 5/3', false],
    ['5B 7/4', '5GY 5/2.9', true],
    ['5B 7/2', '5GY 5/6', false],
  ])('of %s before which lies %s is too strong: %s', (hills, field, tooStrong) => {
    expect(found(scene(hills, field)).length > 0).toBe(tooStrong);
  });

  it('is told with both means and how far to grey it', () => {
    const text = scene('5B 7/5', '5GY 5/2');
    const [finding] = found(text);
    expect(finding).toMatchObject({
      severity: 'hint',
      message:
        'The background has a mean chroma of 5 and the middle ground one of 2, though air takes chroma from what is far off; up to 1 more is let pass.',
      advice: 'Lower the chroma of `far`, the colour of `hills`, from 5 to 3.',
      location: { line: 2 },
    });
    expect(finding?.fix && found(mended(text, finding.fix))).toEqual([]);
  });

  it('is held against the weakest of the nearer planes that take 5 % of the picture', () => {
    const gate = (width: number): string =>
      `\nobject  gate\n  plane   foreground\n  shape   rectangle (0, 25) to (${width}, 50)\n  colour  N 3/`;
    expect(found(scene('5B 7/4', '5GY 5/4', gate(9)))).toEqual([]);
    expect(found(scene('5B 7/4', '5GY 5/4', gate(20)))[0]?.message).toContain('the foreground one of 0,');
  });

  it('is held against what has a colour: a thing with a value alone is not a grey', () => {
    const gate = (tone: string): string =>
      `\nobject  gate\n  plane   foreground\n  shape   rectangle (0, 25) to (20, 50)\n  ${tone}`;
    expect(found(scene('5B 7/4', '5GY 5/4', gate('value   2')))).toEqual([]);
    expect(found(scene('5B 7/4', '5GY 5/4', gate('colour  N 3/')))).toHaveLength(1);
  });

  it('is not asked about in a plan that says nothing of its planes', () => {
    expect(found(scene('5B 7/5', '5GY 5/2').replace('  planes  lighten with distance\n', ''))).toEqual([]);
  });
});
