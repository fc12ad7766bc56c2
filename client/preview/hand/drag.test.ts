import { describe, expect, it } from 'vitest';
import type { Grip } from '../../../server/drawing/scene.js';
import { Drag, guidesFor } from './drag.js';
import { held } from './snap.js';

const bowl: Grip = {
  key: 'bowl',
  subject: 'object:bowl',
  kind: 'object',
  at: { x: 10, y: 10 },
  name: 'bowl',
};
const focus: Grip = {
  key: 'focus',
  subject: 'focus',
  kind: 'focus',
  at: { x: 25, y: 11 },
  name: 'focal point',
};
const none = { lines: [], crossings: [] };
const free = { isStraight: false, reach: undefined };
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

  it('goes on as far from where the thing lies now when the text has moved it', () => {
    const drag = take();
    drag.moveTo({ x: 15, y: 13 }, none, free);
    expect(drag.continueOn({ ...bowl, at: { x: 20, y: 5 } }, none, free).at).toEqual({ x: 23, y: 7 });
  });

  it('snaps to the focal point, which the focal point itself does not', () => {
    const guides = guidesFor(bowl, none, [bowl, focus]);
    expect(take().moveTo({ x: 26.8, y: 12.1 }, guides, { isStraight: false, reach: 0.5 })).toMatchObject({
      at: { x: 25, y: 11 },
      words: 'on the focal point',
    });
    expect(guidesFor(focus, none, [bowl, focus])).toEqual(none);
    const named = { lines: [], crossings: [{ at: focus.at, name: 'golden upper right' }] };
    expect(guidesFor(bowl, named, [bowl, focus])).toEqual(named);
  });
});
