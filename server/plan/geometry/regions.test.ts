import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Outline, type Ring, outlineOf, polygon, rectangle } from './outline.js';
import { type Point, boxOfPoints } from './point.js';
import { areaOf, containsPoint, distanceToOutline, unionArea } from './regions.js';

function box(left: number, top: number, right: number, bottom: number): Outline {
  return rectangle({ x: left, y: top }, { x: right, y: bottom });
}

const SQUARE = box(0, 0, 10, 10);
const FRAME = outlineOf([...SQUARE.path, ...box(2, 2, 8, 8).path], 1, 'evenodd');

describe('area', () => {
  it('counts a place once, however often the border runs round it', () => {
    expect(areaOf([...SQUARE.rings, ...SQUARE.rings])).toBeCloseTo(100, 7);
    expect(areaOf(FRAME.rings)).toBeCloseTo(100, 7);
    expect(areaOf(FRAME.rings, 'evenodd')).toBeCloseTo(64, 7);
    expect(areaOf([])).toBe(0);
  });

  it('of several shapes is that of all they cover together', () => {
    expect(unionArea([SQUARE, box(5, 5, 15, 15)])).toBeCloseTo(175, 7);
    expect(unionArea([FRAME, box(3, 3, 5, 5)])).toBeCloseTo(68, 7);
    expect(unionArea([box(0, 0, 1, 1), box(1e6, 0, 1e6 + 1, 1)])).toBeCloseTo(2, 4);
    expect(unionArea([])).toBe(0);
  });

  it('does not hang on level sides that turn back', () => {
    const flat: Ring = Float64Array.of(64, 0, 3, 0, 0, 0, 100, 0, 50, 50);
    // By hand: what is wound round is the triangle over the stretch from 64 to 100, 50 high.
    expect(areaOf([flat])).toBeCloseTo(900, 6);
  });

  it('is right for any scribble over a coarse lattice, by either rule', () => {
    const place = fc.record({ x: fc.integer({ min: 0, max: 6 }), y: fc.integer({ min: 0, max: 4 }) });
    fc.assert(
      fc.property(fc.array(place, { maxLength: 18 }), (places) => {
        const { rings } = polygon(places);
        expect(Math.abs(areaOf(rings) - areaBySlices(places, (winding) => winding !== 0))).toBeLessThan(
          0.005,
        );
        const odd = areaBySlices(places, (winding) => winding % 2 !== 0);
        expect(Math.abs(areaOf(rings, 'evenodd') - odd)).toBeLessThan(0.005);
      }),
      { numRuns: 1000, seed: 8 },
    );
  });

  /** Area by 600 level slices, the length of each found exactly: right to about 0.001 on such a lattice. */
  function areaBySlices(points: readonly Point[], inside: (winding: number) => boolean): number {
    const { top, bottom } = boxOfPoints(points);
    const height = (bottom - top) / 600;
    let area = 0;
    for (let slice = 0; slice < 600; slice++) {
      const y = top + (slice + 0.5) * height;
      const crossings = points.flatMap((a, i) => {
        const b = points[(i + 1) % points.length] ?? a;
        if (a.y < y === b.y < y) return [];
        return [{ x: a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x), step: a.y < b.y ? 1 : -1 }];
      });
      crossings.sort((a, b) => a.x - b.x);
      let winding = 0;
      crossings.forEach(({ x, step }, i) => {
        winding += step;
        if (inside(winding)) area += ((crossings[i + 1]?.x ?? x) - x) * height;
      });
    }
    return area;
  }
});

describe('a point', () => {
  it.each([
    [5, 5, true, false],
    [1, 5, true, true],
    [-1, 5, false, false],
    [11, 10, false, false],
    [5, 20, false, false],
  ])('at (%d, %d) is inside by winding: %s, by even-odd: %s', (x, y, winding, evenOdd) => {
    expect(containsPoint(FRAME.rings, { x, y })).toBe(winding);
    expect(containsPoint(FRAME.rings, { x, y }, 'evenodd')).toBe(evenOdd);
  });

  it('level with a corner is told right', () => {
    const diamond = polygon([
      { x: 5, y: 0 },
      { x: 10, y: 5 },
      { x: 5, y: 10 },
      { x: 0, y: 5 },
    ]);
    expect(containsPoint(diamond.rings, { x: 5, y: 5 })).toBe(true);
    expect(containsPoint(diamond.rings, { x: -5, y: 5 })).toBe(false);
    expect(containsPoint(diamond.rings, { x: -5, y: 0 })).toBe(false);
    expect(containsPoint(diamond.rings, { x: 15, y: 10 })).toBe(false);
  });

  it.each([
    ['beside it', 13, 5, 3],
    ['off a corner', 13, 14, 5],
    ['inside', 1, 5, 1],
    ['in its hole', 5, 5, 3],
    ['on the border', 10, 5, 0],
  ])('%s is so far from the nearest border', (_, x, y, distance) => {
    expect(distanceToOutline(FRAME.rings, { x, y })).toBeCloseTo(distance, 12);
  });

  it('is endlessly far from a shape without rings', () => {
    expect(distanceToOutline([], { x: 0, y: 0 })).toBe(Infinity);
    expect(containsPoint([], { x: 0, y: 0 })).toBe(false);
  });
});
