import { describe, expect, it } from 'vitest';
import { circlePath, number, polygonPath, rectanglePath } from './path-data.js';

describe('path data', () => {
  it('has at most three decimals, no exponent and no negative nought', () => {
    expect([1 / 3, 100, -0.0001, 1e-9, 2.5, NaN, Infinity].map(number)).toEqual([
      '0.333',
      '100',
      '0',
      '0',
      '2.5',
      '0',
      '0',
    ]);
  });

  it('closes shapes', () => {
    expect(rectanglePath({ x: 1, y: 2, width: 3, height: 4 })).toBe('M1 2H4V6H1Z');
    expect(circlePath({ x: 5, y: 5 }, 2)).toBe('M3 5a2 2 0 1 0 4 0a2 2 0 1 0 -4 0Z');
    expect(
      polygonPath([
        { x: 0, y: 0 },
        { x: 1, y: 0 },
        { x: 1, y: 1 },
      ]),
    ).toBe('M0 0L1 0L1 1Z');
    expect(polygonPath([])).toBe('');
  });
});
