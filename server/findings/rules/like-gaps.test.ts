import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

function told(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'like gaps');
}

/** Three posts of 4 cm: the first gap 10 cm, the second as given. */
const row = (gap: number, more = '') => `canvas  80 x 60 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (80, 60)
  value   4
object  post, dominant
  shape   rectangle (10, 10) to (14, 50)
  value   1
object  stake, secondary
  shape   rectangle (24, 20) to (28, 50)
  value   2
object  peg, secondary
  shape   rectangle (${28 + gap}, 30) to (${32 + gap}, 50)
  value   2${more}`;

describe('like gaps', () => {
  it.each([
    [10, 'at equal distances, 10 cm each'],
    [9.5, 'at almost equal distances, 10 cm and 9.5 cm, 5 % apart'],
  ])('tells a second gap of %d cm', (gap, words) => {
    const [finding] = told(row(gap));
    expect(finding?.message).toBe(
      `\`post\`, \`stake\` and \`peg\` stand side by side ${words}; more than 8 % apart reads as uneven.`,
    );
  });

  it('keeps quiet beyond the limit, and takes that of the plan', () => {
    expect(told(row(9.2))).toHaveLength(1);
    expect(told(row(9.1))).toEqual([]);
    expect(told(`${row(8)}\nrule    like gaps limit 25%`)).toHaveLength(1);
  });

  it('moves another than the dominant so that the gaps are as 3 to 4, and no tangent comes of it', () => {
    const text = row(10);
    const [finding] = told(text);
    // The middle one by a seventh of a gap: 8.6 and 11.4.
    expect(finding?.advice).toBe('Move `stake` 1.5 cm to the left, which makes one gap plainly the wider.');
    expect(finding?.fix).toBeDefined();
    if (!finding?.fix) return;
    expect(told(mended(text, finding.fix))).toEqual([]);
    const kissing = row(10, '\nobject  pebble\n  shape   circle 3 at (20.6, 45)\n  value   1');
    expect(told(kissing)[0]?.advice).not.toBe(finding.advice);
  });

  it('looks down as well as across', () => {
    const shelf = (top: number) => `rectangle (10, ${top}) to (40, ${top + 4})`;
    const text = `canvas  80 x 60 cm\n${[6, 20, 34]
      .map((top, index) => `object  shelf-${index}, secondary\n  shape   ${shelf(top)}\n  value   2`)
      .join('\n')}`;
    expect(told(text)[0]?.message).toContain('stand one above the other at equal distances, 10 cm each');
  });

  /** Posts of 4 cm with such gaps between them. */
  const fence = (gaps: readonly number[], aside?: number) =>
    `canvas  100 x 60 cm\n${[0, ...gaps]
      .map((_, index) => {
        const left = 4 + 4 * index + gaps.slice(0, index).reduce((sum, gap) => sum + gap, 0);
        const allowed = index === aside ? '\n  allow   like gaps because "in step"' : '';
        return `object  post-${index}, secondary\n  shape   rectangle (${left}, 20) to (${left + 4}, ${50 - 4 * index})\n  value   2${allowed}`;
      })
      .join('\n')}`;

  it('holds every gap of a row against every other', () => {
    const text = fence([5, 9, 5]);
    const [finding, ...others] = told(text);
    expect(others).toEqual([]);
    expect(finding?.message).toBe(
      'In one row, side by side, `post-0` and `post-1` stand as far from each other as `post-2` and `post-3`, 5 cm each; more than 8 % apart reads as uneven.',
    );
    expect(finding?.objects).toEqual([0, 1, 2, 3]);
    expect(finding?.advice).toBe('Move `post-0` 1.3 cm to the right, which makes one gap plainly the wider.');
    expect(finding?.fix).toBeDefined();
    if (finding?.fix) expect(told(mended(text, finding.fix))).toEqual([]);
    expect(told(fence([5, 9, 4.62]))[0]?.message).toContain(
      'stand almost as far from each other as `post-2` and `post-3`, 5 cm and 4.6 cm, 7.6 % apart',
    );
    expect(told(fence([5, 9, 4.58]))).toEqual([]);
  });

  it('tells of gaps that others in between are like too only by those', () => {
    const objects = (...gaps: readonly number[]) => told(fence(gaps)).map((finding) => finding.objects);
    expect(objects(5, 5, 5)).toEqual([
      [0, 1, 2],
      [1, 2, 3],
    ]);
    expect(objects(5, 9, 5, 9)).toEqual([
      [0, 1, 2, 3],
      [1, 2, 3, 4],
    ]);
  });

  it('tells three of many, when those that are set aside are left out', () => {
    const standing = (aside?: number) =>
      told(fence([5, 5, 5, 5, 5], aside)).filter(({ allowed }) => !allowed);
    expect(standing()).toHaveLength(3);
    expect(standing()[2]?.message).toContain('So it is with one more: `post-3`, `post-4` and `post-5`.');
    expect(standing(1).map(({ objects }) => objects)).toEqual([
      [2, 3, 4],
      [3, 4, 5],
    ]);
  });

  it('says which two may be brought nearer where none can be moved', () => {
    const text = fence([5, 9, 5]).replaceAll(', secondary', ', dominant');
    expect(told(text)[0]?.advice).toMatch(
      /^Bring `post-0` and `post-1` nearer to each other, or `post-2` and `post-3`, by 1\.3 cm; none can go there/,
    );
  });
});
