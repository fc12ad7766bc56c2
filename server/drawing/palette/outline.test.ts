import { describe, expect, it } from 'vitest';
import { outlineOfReach } from './outline.js';

/** So much in every direction, but for some. */
function ring(all: number, some: Readonly<Record<number, number>>): readonly number[] {
  return Array.from({ length: 72 }, (_, index) => some[index] ?? all);
}

describe('the outline of what a palette reaches', () => {
  it('has no narrow notches, at the seam of the wheel neither', () => {
    expect(outlineOfReach(ring(50, { 10: 5, 11: 20 }))).toEqual(ring(50, {}));
    expect(outlineOfReach(ring(50, { 71: 5, 0: 0 }))).toEqual(ring(50, {}));
  });

  it('keeps what juts out, and what is out of reach over many hues', () => {
    const spike = ring(40, { 20: 80 });
    expect(outlineOfReach(spike)).toEqual(spike);
    const gap = ring(40, Object.fromEntries(Array.from({ length: 12 }, (_, index) => [30 + index, 5])));
    expect(outlineOfReach(gap)).toEqual(gap);
  });
});
