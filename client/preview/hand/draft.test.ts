import { describe, expect, it } from 'vitest';
import { mostPoints } from './change-schema.js';
import { type Draft, draftPath, evenSided, finished, withPoint, withoutLastPoint } from './draft.js';

const spots = (...places: readonly (readonly [number, number])[]) => places.map(([x, y]) => ({ x, y }));
const draft = (tool: Draft['tool'], ...places: readonly (readonly [number, number])[]): Draft => ({
  tool,
  points: spots(...places),
});

describe('a new shape', () => {
  it('grows by points, and loses the last', () => {
    const two = withPoint(draft('lead', [1, 1]), { x: 4, y: 5 });
    expect(two.points).toEqual(spots([1, 1], [4, 5]));
    expect(withPoint(two, { x: 4, y: 5 })).toBe(two);
    expect(withoutLastPoint(two).points).toEqual(spots([1, 1]));
  });

  it('has no more points than can be written', () => {
    const box = draft('ellipse', [1, 1], [2, 2]);
    expect(withPoint(box, { x: 3, y: 3 })).toBe(box);
    const long: Draft = {
      tool: 'outline',
      points: Array.from({ length: mostPoints }, (_, x) => ({ x, y: 0 })),
    };
    expect(withPoint(long, { x: 0, y: 9 })).toBe(long);
  });

  it('is as wide as high with Shift, also where the pointer goes straight down or across', () => {
    const from = { x: 10, y: 10 };
    expect(evenSided(from, { x: 4, y: 12 })).toEqual({ x: 4, y: 16 });
    expect(evenSided(from, { x: 10, y: 15 })).toEqual({ x: 15, y: 15 });
    expect(evenSided(from, { x: 3, y: 10 })).toEqual({ x: 3, y: 17 });
  });

  it('is a box or a line when it is finished', () => {
    expect(finished(draft('ellipse', [1, 1], [5, 4]))).toEqual({
      kind: 'new box',
      form: 'ellipse',
      from: { x: 1, y: 1 },
      to: { x: 5, y: 4 },
    });
    expect(finished(draft('outline', [1, 1], [5, 4], [2, 7]))).toMatchObject({
      kind: 'new line',
      form: 'outline',
    });
  });

  it('says what it lacks', () => {
    expect(finished(draft('outline', [1, 1], [5, 4]))).toBe('An outline has 3 points or more.');
    expect(finished(draft('lead', [1, 1]))).toBe('A lead has 2 points or more.');
    expect(finished(draft('rectangle', [1, 1], [1, 4]))).toBe('A shape is wider and higher than nothing.');
  });

  it('is drawn with the place where the next point would be', () => {
    expect(draftPath(draft('lead', [1, 1]), { x: 2, y: 3 })).toBe('M1 1L2 3');
    expect(draftPath(draft('outline', [1, 1], [5, 4]), { x: 2, y: 7 })).toBe('M1 1L5 4L2 7Z');
    expect(draftPath(draft('rectangle', [1, 1]), { x: 5, y: 4 })).toBe('M1 1H5V4H1Z');
    expect(draftPath(draft('ellipse', [5, 4]), { x: 1, y: 2 })).toBe('M1 3a2 1 0 1 0 4 0a2 1 0 1 0 -4 0Z');
    expect(draftPath(draft('ellipse'), undefined)).toBe('');
  });
});
