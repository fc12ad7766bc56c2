import { describe, expect, it } from 'vitest';
import type { Point } from './geometry/point.js';
import { simplified } from './leads-simplify.js';

const at = (x: number, y: number): Point => ({ x, y });

describe('a line with fewer points', () => {
  it('keeps those that stray by more than the tolerance', () => {
    const line = [at(0, 0), at(2, 0.05), at(5, 3), at(8, -0.05), at(10, 0)];
    expect(simplified(line, 0.1)).toEqual([at(0, 0), at(2, 0.05), at(5, 3), at(8, -0.05), at(10, 0)]);
    expect(simplified([at(0, 0), at(5, 0.05), at(10, 0)], 0.1)).toEqual([at(0, 0), at(10, 0)]);
  });

  it('is left the same whichever way it runs, where points stray alike', () => {
    const line = [at(0, 0), at(2, 3), at(8, 3), at(10, 0)];
    expect(simplified(line, 2.5)).toEqual(line);
    expect(simplified(line.toReversed(), 2.5)).toEqual(line.toReversed());
    expect(simplified(line, 3)).toEqual([at(0, 0), at(10, 0)]);
  });
});
