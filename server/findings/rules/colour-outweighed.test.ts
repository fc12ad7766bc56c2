import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import type { Finding } from '../finding.js';

/** A wall from `left` on stands on a field of another colour, with a post of `post` cm at its far end. */
function scene(left: number, post: number, value = ''): string {
  return `canvas  100 x 50 cm\ncolour  sea #4a6b8f dominant\ncolour  rust #a8602c complement\nobject  field\n  plane   background\n  shape   rectangle (0, 0) to (100, 50)\n  colour  sea\nobject  wall\n  shape   rectangle (${left}, 0) to (100, 50)\n  colour  rust\nobject  post\n  shape   rectangle (${100 - post}, 0) to (100, 50)\n  colour  rust${value}`;
}

function found(text: string): readonly Finding[] {
  return checked(text).findings.filter(({ rule }) => rule === 'colour outweighed');
}

describe('the dominant colour', () => {
  it('may cover as much as the complement, and no less', () => {
    expect(found(scene(50, 5))).toEqual([]);
    const [finding] = found(scene(49, 6));
    expect(finding?.severity).toBe('hint');
    expect(finding?.message).toBe(
      'The dominant colour covers 49 % of the picture, and the complement more: 51 %. Most of that is `wall` (45 %).',
    );
  });

  it('is told apart from what hardly covers more', () => {
    expect(found(scene(49.98, 5))[0]?.message).toContain(
      'The dominant colour covers 49.98 % of the picture, and the complement more: 50.02 %.',
    );
  });

  it('gains the smallest object that is enough, which keeps its value', () => {
    const text = scene(49, 6);
    const [finding] = found(text);
    expect(finding?.advice).toBe('Give `post` (6 %) the colour `sea`, or exchange the two roles.');
    const after = mended(text, finding?.fix ?? { edits: [] });
    expect(found(after)).toEqual([]);
    const step = (one: string): number | undefined => checked(one).plan.objects[2]?.step;
    expect(step(after)).toBe(step(text));
    expect(after).toContain('  colour  sea\n  value   3');
  });

  it('that nothing is painted in yet is not told', () => {
    expect(found(scene(0, 1).replace('colour  sea\nobject', 'colour  rust\nobject'))).toEqual([]);
  });
});
