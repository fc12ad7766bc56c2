import { describe, expect, it } from 'vitest';
import { onDrawing, turned, unitsPerPixel } from './place.js';

const picture = { x: 0, y: 0, width: 40, height: 30 };

describe('a place of the screen in the drawing', () => {
  it('is found through the matrix that shows the drawing', () => {
    const matrix = { a: 20, b: 0, c: 0, d: 20, e: 100, f: 60 };
    expect(onDrawing({ x: 300, y: 160 }, matrix)).toEqual({ x: 10, y: 5 });
    expect(unitsPerPixel(matrix)).toBe(0.05);
  });

  it('is found in a drawing that is turned a quarter', () => {
    const matrix = { a: 0, b: 10, c: -10, d: 0, e: 50, f: 0 };
    const { x, y } = onDrawing({ x: 20, y: 40 }, matrix);
    expect([x, y]).toEqual([4, 3]);
    expect(unitsPerPixel(matrix)).toBe(0.1);
  });

  it('is turned round in the view of the mirror, and back', () => {
    const there = turned({ x: 12, y: 7 }, picture, 'mirror');
    expect(there).toEqual({ x: 28, y: 7 });
    expect(turned(there, picture, 'mirror')).toEqual({ x: 12, y: 7 });
    expect(turned({ x: 12, y: 7 }, picture, 'squint')).toEqual({ x: 12, y: 7 });
  });
});
