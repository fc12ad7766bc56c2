import { describe, expect, it } from 'vitest';
import { ribbonPath } from './ribbon.js';

const widths = { start: 0.2, end: 1, head: 4 };

function points(path: string): number[][] {
  return [...path.matchAll(/[ML](\S+) ([^LMZ]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
}

describe('a lead', () => {
  it('swells along its way and ends in the point where it aims', () => {
    const corners = points(
      ribbonPath(
        [
          { x: 0, y: 0 },
          { x: 20, y: 0 },
        ],
        widths,
      ),
    );
    expect(corners[0]).toEqual([0, 0.1]);
    expect(corners.at(-1)).toEqual([0, -0.1]);
    expect(corners).toContainEqual([20, 0]);
    const half = Math.abs(corners[1]?.[1] ?? 0);
    expect(half).toBeGreaterThan(0.1);
    expect(half).toBeLessThanOrEqual(0.5);
  });

  it('passes through its bends', () => {
    const corners = points(
      ribbonPath(
        [
          { x: 0, y: 0 },
          { x: 20, y: 0 },
          { x: 20, y: 20 },
        ],
        widths,
      ),
    );
    expect(corners.some(([x = 0, y = 0]) => Math.hypot(x - 20, y) < 1)).toBe(true);
    expect(corners).toContainEqual([20, 20]);
  });

  it('is nothing without length', () => {
    expect(ribbonPath([], widths)).toBe('');
    expect(
      ribbonPath(
        [
          { x: 3, y: 3 },
          { x: 3, y: 3 },
        ],
        widths,
      ),
    ).toBe('');
  });

  it('has a head no longer than it can carry', () => {
    const corners = points(
      ribbonPath(
        [
          { x: 0, y: 0 },
          { x: 1, y: 0 },
        ],
        widths,
      ),
    );
    expect(Math.min(...corners.map(([x = 0]) => x))).toBeGreaterThanOrEqual(0);
  });
});
