import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Corners, fromUnitSquare, project } from './homography.js';
import type { Point } from './point.js';

const square: Corners = [
  { x: 0, y: 0 },
  { x: 1, y: 0 },
  { x: 1, y: 1 },
  { x: 0, y: 1 },
];
/** A sheet seen from below, its upper edge farther off, and a little turned. */
const sheet: Corners = [
  { x: 212, y: 90 },
  { x: 804, y: 131 },
  { x: 1_012, y: 760 },
  { x: 40, y: 695 },
];

function mapOnto(corners: Corners) {
  const map = fromUnitSquare(corners);
  if (map === undefined) throw new Error('These are the corners of nothing.');
  return map;
}

function near(point: Point, other: Point): void {
  expect(point.x).toBeCloseTo(other.x, 6);
  expect(point.y).toBeCloseTo(other.y, 6);
}

/** Quadrangles that bulge outwards: each corner lies within a quarter of the whole of where a square has it. */
const quadrangles = fc
  .array(
    fc.tuple(
      fc.double({ min: -200, max: 200, noNaN: true }),
      fc.double({ min: -200, max: 200, noNaN: true }),
    ),
    {
      minLength: 4,
      maxLength: 4,
    },
  )
  .map((moves): Corners => {
    const [p0, p1, p2, p3] = moves.map(([dx, dy], index) => ({
      x: 1_000 * (square[index] as Point).x + dx,
      y: 1_000 * (square[index] as Point).y + dy,
    })) as [Point, Point, Point, Point];
    return [p0, p1, p2, p3];
  });

describe('a map of the unit square onto four corners', () => {
  it('of the square onto itself moves nothing', () => {
    const { a, b, c, d, e, f, g, h, i } = mapOnto(square);
    for (const one of [a, e, i]) expect(one).toBe(1);
    for (const none of [b, c, d, f, g, h]) expect(none).toBeCloseTo(0, 12);
  });

  it('puts each corner where it was said to lie', () => {
    fc.assert(
      fc.property(quadrangles, (corners) => {
        const map = mapOnto(corners);
        square.forEach((corner, index) => near(project(map, corner), corners[index] as Point));
      }),
    );
  });

  /** The diagonals of a square in perspective cross in its middle: L. B. Alberti, Della pittura (1435), book one. */
  it('puts the middle where the diagonals cross', () => {
    const [p0, p1, p2, p3] = sheet;
    const part =
      ((p1.x - p0.x) * (p3.y - p1.y) - (p1.y - p0.y) * (p3.x - p1.x)) /
      ((p2.x - p0.x) * (p3.y - p1.y) - (p2.y - p0.y) * (p3.x - p1.x));
    const crossing = { x: p0.x + part * (p2.x - p0.x), y: p0.y + part * (p2.y - p0.y) };
    near(project(mapOnto(sheet), { x: 0.5, y: 0.5 }), crossing);
  });

  /** Of four places on a line: Pappus of Alexandria, Collection, book seven, proposition 129. */
  it('keeps the cross ratio of four places on a line', () => {
    const ratio = ([a, b, c, d]: readonly number[]) =>
      (((c ?? 0) - (a ?? 0)) * ((d ?? 0) - (b ?? 0))) / (((c ?? 0) - (b ?? 0)) * ((d ?? 0) - (a ?? 0)));
    const places = [0.1, 0.35, 0.6, 0.95];
    fc.assert(
      fc.property(quadrangles, (corners) => {
        const map = mapOnto(corners);
        const across = places.map((x) => project(map, { x, y: 0.4 }).x);
        expect(ratio(across)).toBeCloseTo(ratio(places), 6);
      }),
    );
  });

  it('is an even one, without perspective, onto a parallelogram', () => {
    const map = mapOnto([
      { x: 10, y: 20 },
      { x: 50, y: 30 },
      { x: 65, y: 70 },
      { x: 25, y: 60 },
    ]);
    expect(Math.abs(map.g) + Math.abs(map.h)).toBe(0);
    near(project(map, { x: 0.25, y: 0.5 }), { x: 27.5, y: 42.5 });
  });

  it('is none for corners in a line, in a bow tie, dented, or together', () => {
    const [p0, p1, p2, p3] = square;
    expect(fromUnitSquare([p0, p1, { x: 0.5, y: 0 }, p3])).toBeUndefined();
    expect(fromUnitSquare([p0, p2, p1, p3])).toBeUndefined();
    expect(fromUnitSquare([p0, p1, { x: 0.2, y: 0.2 }, p3])).toBeUndefined();
    expect(fromUnitSquare([p0, p0, p2, p3])).toBeUndefined();
  });
});
