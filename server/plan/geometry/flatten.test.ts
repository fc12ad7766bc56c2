import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flattenPath, piecesOfCubic } from './flatten.js';
import type { PathCommand } from './path.js';

type Curve = Extract<PathCommand, { kind: 'C' }>;

const ARCH: Curve = { kind: 'C', x1: 0, y1: 10, x2: 10, y2: 10, x: 10, y: 0 };
const START = { x: 0, y: 0 };

function at({ x1, y1, x2, y2, x, y }: Curve, from: { readonly x: number; readonly y: number }, t: number) {
  const mix = (a: number, b: number, c: number, d: number) =>
    (1 - t) ** 3 * a + 3 * (1 - t) ** 2 * t * b + 3 * (1 - t) * t * t * c + t ** 3 * d;
  return { x: mix(from.x, x1, x2, x), y: mix(from.y, y1, y2, y) };
}

describe('a flattened curve', () => {
  it('keeps to the tolerance, for any cubic', () => {
    const number = fc.double({ min: -100, max: 100, noNaN: true });
    const curve = fc.record({ x1: number, y1: number, x2: number, y2: number, x: number, y: number });
    fc.assert(
      fc.property(curve, fc.constantFrom(0.02, 0.5, 5), (numbers, tolerance) => {
        const cubic: Curve = { kind: 'C', ...numbers };
        const pieces = piecesOfCubic(START, cubic, tolerance);
        for (let piece = 0; piece < pieces; piece++) {
          const [a, b] = [at(cubic, START, piece / pieces), at(cubic, START, (piece + 1) / pieces)];
          for (const part of [0.25, 0.5, 0.75]) {
            const there = at(cubic, START, (piece + part) / pieces);
            const chord = { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
            expect(Math.hypot(there.x - chord.x, there.y - chord.y)).toBeLessThanOrEqual(
              tolerance * (1 + 1e-9),
            );
          }
        }
      }),
      { numRuns: 200, seed: 5 },
    );
  });

  it.each([
    ['a straight line', { ...ARCH, y1: 0, y2: 0, x1: 10 / 3, x2: 20 / 3 }, 0.01, 1],
    ['a point', { kind: 'C', x1: 0, y1: 0, x2: 0, y2: 0, x: 0, y: 0 } as const, 0.01, 1],
    ['an arch, coarse', ARCH, 100, 1],
    ['an arch', ARCH, 0.01, 33],
    ['an arch without a tolerance', ARCH, 0, 1000],
    ['a handle that is no number', { ...ARCH, x1: NaN }, 0.01, 1000],
    ['an endless handle', { ...ARCH, x1: Infinity }, 0.01, 1000],
  ] as const)('%s has a bounded number of pieces', (_, curve, tolerance, pieces) => {
    expect(piecesOfCubic(START, curve, tolerance)).toBe(pieces);
  });
});

describe('a flattened path', () => {
  it('closes each piece and leaves repeated points out', () => {
    const rings = flattenPath(
      [
        { kind: 'M', x: 0, y: 0 },
        { kind: 'L', x: 4, y: 0 },
        { kind: 'L', x: 4, y: 0 },
        { kind: 'L', x: 4, y: 4 },
        { kind: 'L', x: 0, y: 0 },
        { kind: 'Z' },
        { kind: 'L', x: -4, y: 0 },
        { kind: 'M', x: 9, y: 9 },
      ],
      1,
    );
    expect(rings.map((ring) => [...ring])).toEqual([
      [0, 0, 4, 0, 4, 4],
      [0, 0, -4, 0],
      [9, 9],
    ]);
  });

  it('of very many curves has a bounded number of points', () => {
    const path: PathCommand[] = [{ kind: 'M', x: 0, y: 0 }];
    for (let i = 0; i < 50_000; i++)
      path.push({ kind: 'C', x1: 0, y1: 1e6, x2: 1e6, y2: 1e6, x: i, y: i % 2 });
    const points = flattenPath(path, 1e-6).reduce((sum, ring) => sum + ring.length / 2, 0);
    expect(points).toBeLessThanOrEqual(400_001);
  });
});
