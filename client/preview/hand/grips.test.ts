import { describe, expect, it } from 'vitest';
import type { Grip, Handling } from '../../../server/drawing/scene.js';
import { frameAt, gripIn, isDeepInside, onlyWay, putDown, sizeGripsOf } from './grips.js';
import { turned } from './place.js';
import { focus } from './test-grips.js';

const jug: Grip = {
  key: 'object:jug',
  subject: 'object:jug',
  kind: 'object',
  at: { x: 12, y: 14 },
  name: 'jug',
  frame: { middle: { x: 12, y: 14 }, width: 6, height: 8, turn: 0 },
};
const asItIs = sizeGripsOf(jug, (at) => at);
const handling: Handling = {
  grips: [focus, jug],
  guides: { lines: [], crossings: [] },
  tones: [],
  colours: [],
  painted: {},
  unit: 'cm',
};

describe('the handles of a frame', () => {
  it('are its corners and the middles of its sides, named as one sees them', () => {
    expect(asItIs.map(({ name, at, pull }) => [name, at.x, at.y, pull])).toEqual([
      ['upper left corner of jug', 9, 10, 'nwse'],
      ['top of jug', 12, 10, 'ns'],
      ['upper right corner of jug', 15, 10, 'nesw'],
      ['right side of jug', 15, 14, 'ew'],
      ['lower right corner of jug', 15, 18, 'nwse'],
      ['foot of jug', 12, 18, 'ns'],
      ['lower left corner of jug', 9, 18, 'nesw'],
      ['left side of jug', 9, 14, 'ew'],
    ]);
  });

  it('are turned with it, and the other way round in the mirror', () => {
    const frame = { middle: { x: 12, y: 14 }, width: 6, height: 8, turn: 45 };
    const pulls = (turn: Parameters<typeof sizeGripsOf>[1]) =>
      sizeGripsOf({ ...jug, frame }, turn)
        .slice(0, 4)
        .map(({ pull }) => pull);
    expect(pulls((at) => at)).toEqual(['ns', 'nesw', 'ew', 'nwse']);
    const picture = { x: 0, y: 0, width: 40, height: 30 };
    expect(pulls((at) => turned(at, picture, 'mirror'))).toEqual(['ns', 'nwse', 'ew', 'nesw']);
    expect(sizeGripsOf(jug, (at) => turned(at, picture, 'mirror'))[0]?.at).toEqual({ x: 31, y: 10 });
  });

  it('are none where there is no frame, and are found by their keys', () => {
    expect(handling.grips.map((grip) => sizeGripsOf(grip, (at) => at).length)).toEqual([0, 8]);
    expect(gripIn(handling, 'object:jug:size:lower right')?.at).toEqual({ x: 15, y: 18 });
    expect(gripIn(handling, 'object:jug')?.name).toBe('jug');
    expect(gripIn(handling, 'object:jug:size:lower')).toBeUndefined();
  });

  it('say how large the thing becomes', () => {
    const [upperLeft, , , rightSide, lowerRight] = asItIs;
    if (!upperLeft || !rightSide || !lowerRight) throw new Error('no handles');
    expect(frameAt(lowerRight, { x: 18, y: 19 }, false)).toMatchObject({
      middle: { x: 13.5, y: 14.5 },
      width: 9,
      height: 9,
    });
    expect(frameAt(rightSide, { x: 18, y: 99 }, false)).toMatchObject({ width: 9, height: 8 });
    expect(frameAt(rightSide, { x: 18, y: 99 }, true)).toMatchObject({ width: 9, height: 12 });
    // The diagonal is 6 to 8: the nearest place of it to (18, 14) is 68 of 100 parts along.
    expect(frameAt(lowerRight, { x: 18, y: 14 }, true).width).toBeCloseTo(6 * 0.86, 9);
    expect(frameAt(upperLeft, { x: 30, y: 30 }, false)).toMatchObject({ width: 0.06, height: 0.08 });
  });

  it('go anywhere by a corner, one way by a side, along the diagonal in proportion', () => {
    const [, , , rightSide, lowerRight] = asItIs;
    if (!rightSide || !lowerRight) throw new Error('no handles');
    expect(onlyWay(lowerRight, false)).toBeUndefined();
    expect(onlyWay(lowerRight, true)).toEqual({ way: { x: 0.6, y: 0.8 }, perUnit: 1.25 });
    expect(onlyWay(rightSide, false)).toEqual({ way: { x: 1, y: 0 }, perUnit: 1 });
    const even = { ...lowerRight, frame: { ...lowerRight.frame, isEven: true as const } };
    expect(onlyWay(even, false)).toEqual(onlyWay(lowerRight, true));
  });

  it('leave the middle of a small thing to be moved', () => {
    const [corner] = asItIs;
    if (!corner) throw new Error('no handles');
    expect(isDeepInside(corner, { x: 13.4, y: 15.9 })).toBe(true);
    expect(isDeepInside(corner, { x: 13.6, y: 15.9 })).toBe(false);
  });

  it('size a thing when they are put down, as other grips move one', () => {
    const [corner] = asItIs;
    if (!corner) throw new Error('no handles');
    const to = { x: 1, y: 2 };
    expect(putDown(corner, to, true)).toEqual({
      kind: 'size',
      subject: 'object:jug',
      handle: 'upper left',
      to,
      keepsProportion: true,
    });
    expect(putDown(jug, to, true)).toEqual({ kind: 'move', grip: 'object:jug', to });
  });
});
