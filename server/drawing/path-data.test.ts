import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circlePath, number, polygonPath, rectanglePath, rounded } from './path-data.js';

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

  it('has the decimals of `toFixed`, halfway between two as well', () => {
    const halfway = fc.integer({ min: -2e6, max: 2e6 }).map((half) => half / 2000);
    const any = fc.oneof(halfway, fc.double({ min: -1e9, max: 1e9, noNaN: true }));
    fc.assert(
      fc.property(any, (value) => {
        expect(rounded(value)).toBe(Number(value.toFixed(3)) + 0);
        expect(number(value)).toBe(
          value
            .toFixed(3)
            .replace(/\.?0+$/u, '')
            .replace(/^-0$/u, '0'),
        );
      }),
      { numRuns: 2000 },
    );
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
