import { describe, expect, it } from 'vitest';
import { checked } from '../../tests/support/plan.js';
import type { Finding } from './finding.js';

const CANVAS = 'canvas  100 x 50 cm\nfocus   upper right';

/** A wall with so many crumbs behind it, of which nothing is seen. */
function crumbs(count: number, extra = ''): readonly Finding[] {
  const behind = Array.from(
    { length: count },
    (_, index) =>
      `object  crumb${index}\n  plane   background\n  shape   circle 2 at (${5 * index + 4}, 20)\n  value   1`,
  );
  const wall = 'object  wall, dominant\n  shape   rectangle (0, 0) to (100, 50)\n  value   4';
  const { findings } = checked([CANVAS, ...behind, wall, extra].join('\n'));
  return findings.filter(({ rule }) => rule === 'hidden object' || rule === 'needless exception');
}

describe('the findings of one rule', () => {
  it('are told one by one up to five', () => {
    expect(crumbs(5).map(({ objects }) => objects)).toEqual([[0], [1], [2], [3], [4]]);
  });

  it('are the first three of more, with the others named and marked', () => {
    const found = crumbs(6);
    expect(found.map(({ objects }) => objects)).toEqual([[0], [1], [2, 3, 4, 5]]);
    expect(found[2]?.message).toBe(
      'Nothing of `crumb2` is seen: `wall` covers it. So it is with 3 more: `crumb3`, `crumb4` and `crumb5`.',
    );
    expect(found[2]?.related.some(({ message }) => message.startsWith('Nothing of `crumb5`'))).toBe(true);
  });

  it('name no more than five of many', () => {
    expect(crumbs(12)[2]?.message).toMatch(
      /So it is with 9 more: `crumb3`, `crumb4`, `crumb5`, `crumb6`, `crumb7` and others\.$/,
    );
  });

  it('may be set aside for one that is only counted', () => {
    const found = crumbs(8, 'allow hidden object for crumb6 because "it rolls out in the next picture"');
    expect(found.map(({ rule, objects, allowed }) => [rule, objects, allowed !== undefined])).toEqual([
      ['hidden object', [0], false],
      ['hidden object', [1], false],
      ['hidden object', [2, 3, 4, 5, 7], false],
      ['hidden object', [6], true],
    ]);
  });
});
