import { describe, expect, it } from 'vitest';
import type { Frame, FrameHandle } from './handles.js';
import { frameCorners, handlePlace, isInside, resized, wayOf } from './frame.js';

const COLUMNS = 20;
const ROWS = 8;

/** A frame that is not turned, in squares of the canvas: `+` its handles, `x` its middle. */
function drawn(frame: Frame): string {
  const rows = Array.from({ length: ROWS }, () => Array<string>(COLUMNS).fill('.'));
  const put = ({ x, y }: { readonly x: number; readonly y: number }, sign: string): void => {
    const row = rows[y];
    if (row && Number.isInteger(x)) row[x] = sign;
  };
  frameCorners(frame).forEach((corner) => put(corner, '+'));
  put(frame.middle, 'x');
  return rows
    .map((row) => row.join('').replace(/\.+$/u, ''))
    .join('\n')
    .trimEnd();
}

const frame: Frame = { middle: { x: 6, y: 3 }, width: 4, height: 2, turn: 0 };
const to = (handle: FrameHandle, x: number, y: number, keepsProportion = false): string =>
  `\n${drawn(resized(frame, handle, { x, y }, keepsProportion))}\n`;

describe('a frame with a handle put down at a place', () => {
  it('is this one at first', () => {
    expect(`\n${drawn(frame)}\n`).toBe(`


....+...+
......x
....+...+
`);
  });

  it('goes with a corner, and the opposite one stays', () => {
    expect(to('lower right', 14, 6)).toBe(`


....+.........+

.........x

....+.........+
`);
    expect(to('upper left', 0, 0)).toBe(`
+.......+

....x

+.......+
`);
  });

  it('goes with a side one way only, and the opposite one stays', () => {
    expect(to('middle right', 12, 7)).toBe(`


....+.......+
........x
....+.......+
`);
    expect(to('upper centre', 19, 0)).toBe(`
....+...+

......x

....+...+
`);
  });

  it('keeps its proportion when it is to', () => {
    expect(to('lower right', 12, 6, true)).toBe(`


....+.......+

........x

....+.......+
`);
    expect(to('lower centre', 0, 6, true)).toBe(`


..+.......+

......x

..+.......+
`);
    expect(resized({ ...frame, isEven: true }, 'middle left', { x: 0, y: 0 }, false)).toEqual({
      ...frame,
      isEven: true,
      middle: { x: 4, y: 3 },
      width: 8,
      height: 4,
    });
  });

  it('never turns over: a hundredth of each side is left', () => {
    expect(resized(frame, 'lower right', { x: -9, y: -9 }, false)).toMatchObject({
      width: 0.04,
      height: 0.02,
    });
    expect(resized(frame, 'lower right', { x: -9, y: -9 }, true)).toMatchObject({
      width: 0.04,
      height: 0.02,
    });
  });

  it('is turned with what it is round', () => {
    const upright: Frame = { ...frame, turn: 90 };
    const { x, y } = handlePlace(upright, 'middle right');
    expect([x, y]).toEqual([expect.closeTo(6, 9), expect.closeTo(5, 9)]);
    const longer = resized(upright, 'middle right', { x: 19, y: 7 }, false);
    expect([longer.width, longer.height]).toEqual([expect.closeTo(6, 9), 2]);
    expect(handlePlace(longer, 'middle left').y).toBeCloseTo(1, 9);
    expect(wayOf(upright, 'middle right', false)?.y).toBeCloseTo(1, 9);
    expect(isInside(upright, { x: 6, y: 4.9 })).toBe(true);
    expect(isInside(upright, { x: 7.9, y: 3 })).toBe(false);
  });
});
