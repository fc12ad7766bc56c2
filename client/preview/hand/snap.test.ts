import { describe, expect, it } from 'vitest';
import { across, anchorsOf, held, snap } from './snap.js';

const guides = {
  lines: [
    { from: { x: 10, y: 0 }, to: { x: 10, y: 30 } },
    { from: { x: 0, y: 0 }, to: { x: 40, y: 30 } },
  ],
  crossings: [{ at: { x: 25, y: 11 }, name: 'golden upper right' }],
};

describe('snapping', () => {
  it('leaves what is near nothing where it is', () => {
    expect(snap({ x: 30, y: 5 }, guides, 1)).toEqual({ at: { x: 30, y: 5 } });
  });

  it('puts what is near a crossing on it, and says which', () => {
    expect(snap({ x: 25.6, y: 10.5 }, guides, 1)).toEqual({
      at: { x: 25, y: 11 },
      words: 'on golden upper right',
      mark: { x: 25, y: 11 },
    });
  });

  it('puts what is near a line on its nearest place', () => {
    expect(snap({ x: 10.4, y: 20 }, guides, 1)).toMatchObject({
      at: { x: 10, y: 20 },
      words: 'on a division line',
    });
  });

  it('prefers a crossing to a line that is nearer', () => {
    const near = { ...guides, lines: [{ from: { x: 25.8, y: 0 }, to: { x: 25.8, y: 30 } }] };
    expect(snap({ x: 25.5, y: 11 }, near, 1).words).toBe('on golden upper right');
  });

  it('keeps to one direction when told so', () => {
    const snapped = snap({ x: 20.5, y: 15 }, guides, 1, [held], across);
    expect(snapped.at).toEqual({ x: 20, y: 15 });
    expect(snap({ x: 25.2, y: 11.2 }, guides, 1, [held], across).words).toBeUndefined();
  });

  it('puts a side of a thing on a line', () => {
    const box = { x: 11, y: 20, width: 6, height: 4 } as DOMRectReadOnly;
    const at = { x: 14, y: 22 };
    const snapped = snap({ x: 13.5, y: 2.1 }, { ...guides, crossings: [] }, 0.6, anchorsOf(at, box));
    expect(snapped).toEqual({
      at: { x: 13, y: 2.1 },
      words: 'its left side on a division line',
      mark: { x: 10, y: 2.1 },
    });
  });
});
