import { describe, expect, it } from 'vitest';
import { Drag, guidesFor } from './drag.js';
import { held } from './snap.js';
import { bowl, focus } from './test-grips.js';

const none = { lines: [], crossings: [] };
const free = { isStraight: false, reach: undefined, step: undefined };
const take = () => new Drag({ grip: bowl, start: { x: 12, y: 11 }, anchors: [held] });

describe('a drag', () => {
  it('keeps the place where the pointer took hold', () => {
    const drag = take();
    expect(drag.moveTo({ x: 15, y: 13 }, none, free).at).toEqual({ x: 13, y: 12 });
    expect(drag.by).toEqual({ x: 3, y: 2 });
  });

  it('keeps to the direction in which it has gone further', () => {
    expect(take().moveTo({ x: 13, y: 16 }, none, { ...free, isStraight: true }).at).toEqual({ x: 10, y: 15 });
    expect(take().moveTo({ x: 16, y: 12 }, none, { ...free, isStraight: true }).at).toEqual({ x: 14, y: 10 });
  });

  it('keeps to the only way that it goes, and snaps along it', () => {
    const way = { x: 0.6, y: 0.8 };
    const { x, y } = take().moveTo({ x: 17, y: 11 }, none, { ...free, way, step: 1 }).at;
    expect(x).toBeCloseTo(11.8, 9);
    expect(y).toBeCloseTo(12.4, 9);
    const plumb = { lines: [{ from: { x: 13, y: 0 }, to: { x: 13, y: 30 } }], crossings: [] };
    const snapped = take().moveTo({ x: 17, y: 11 }, plumb, { ...free, way, reach: 3 });
    expect(snapped.at.x).toBeCloseTo(13, 9);
    expect(snapped.at.y).toBeCloseTo(14, 9);
    expect(snapped.words).toBe('on a division line');
  });

  it('goes on as far from where the thing lies now when the text has moved it', () => {
    const drag = take();
    drag.moveTo({ x: 15, y: 13 }, none, free);
    expect(drag.continueOn({ ...bowl, at: { x: 20, y: 5 } }, none, free).at).toEqual({ x: 23, y: 7 });
  });

  it('goes by whole millimetres, unless it snaps', () => {
    const guides = { lines: [], crossings: [{ at: { x: 25.123, y: 11 }, name: 'golden upper right' }] };
    const manner = { isStraight: false, reach: 0.5, step: 0.1 };
    const { x, y } = take().moveTo({ x: 15.037, y: 13.26 }, guides, manner).at;
    expect(x).toBeCloseTo(13, 9);
    expect(y).toBeCloseTo(12.3, 9);
    expect(take().moveTo({ x: 27.1, y: 12.1 }, guides, manner)).toMatchObject({
      at: { x: 25.123, y: 11 },
      words: 'on golden upper right',
    });
  });

  it('snaps to the focal point, which the focal point itself does not', () => {
    const guides = {
      lines: [],
      crossings: [
        { at: { x: 9, y: 9 }, name: 'golden upper left' },
        { at: focus.at, name: 'focal point' },
      ],
    };
    expect(guidesFor(bowl, guides)).toBe(guides);
    expect(guidesFor(focus, guides).crossings.map(({ name }) => name)).toEqual(['golden upper left']);
    expect(take().moveTo({ x: 27, y: 12 }, guides, { ...free, reach: 0.5 }).words).toBe('on the focal point');
  });
});
