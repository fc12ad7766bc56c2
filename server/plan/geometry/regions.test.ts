import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Outline, type Ring, ellipse, outlineOf, polygon, rectangle } from './outline.js';
import { areaOf, centroid, containsPoint, distanceToOutline, unionArea } from './regions.js';

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

  it('is found without a hang for any ring on a coarse lattice, and is at least its winding area', () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 3 }));
    fc.assert(
      fc.property(fc.array(place, { maxLength: 16 }), (places) => {
        const points = places.map(([x, y]) => ({ x, y }));
        const { rings } = polygon(points);
        const signed = points.reduce((sum, point, i) => {
          const next = points[(i + 1) % points.length] ?? point;
          return sum + (point.x * next.y - next.x * point.y) / 2;
        }, 0);
        expect(areaOf(rings)).toBeLessThanOrEqual(18 + 1e-6);
        expect(areaOf(rings, 'evenodd')).toBeLessThanOrEqual(areaOf(rings) + 1e-6);
        if (areaOf(rings) < 1e-6) expect(Math.abs(signed)).toBeLessThan(1e-6);
      }),
      { numRuns: 2000, seed: 8 },
    );
  });
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

describe('centre of area', () => {
  it('of an ellipse is its middle', () => {
    const middle = centroid(ellipse({ x: 30, y: -12 }, 9, 4, 1e-4).rings);
    expect(middle?.x).toBeCloseTo(30, 6);
    expect(middle?.y).toBeCloseTo(-12, 6);
  });

  it('of a triangle is the mean of its corners', () => {
    const middle = centroid(
      polygon([
        { x: 0, y: 0 },
        { x: 9, y: 0 },
        { x: 0, y: 6 },
      ]).rings,
    );
    expect(middle?.x).toBeCloseTo(3, 9);
    expect(middle?.y).toBeCloseTo(2, 9);
  });

  it('of two squares, drawn opposite ways, lies between them', () => {
    const other = polygon([
      { x: 20, y: 0 },
      { x: 20, y: 10 },
      { x: 30, y: 10 },
      { x: 30, y: 0 },
    ]);
    expect(centroid([...SQUARE.rings, ...other.rings])?.x).toBeCloseTo(15, 9);
  });

  it('is missing for a shape without area', () => {
    expect(centroid([])).toBeUndefined();
    expect(centroid([Float64Array.of(0, 0, 5, 5, 9, 9)])).toBeUndefined();
  });
});
