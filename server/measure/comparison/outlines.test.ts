import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { multiply, rotate, scale, translate } from '../../plan/geometry/matrix.js';
import { ellipse, polygon, rectangle, smooth, transform } from '../../plan/geometry/outline.js';
import { boxCentre } from '../../plan/geometry/point.js';
import { compareOutlines, middleOf } from './outlines.js';

const DIAGONAL = 100;
const kite = smooth(
  [
    { x: 20, y: 10 },
    { x: 34, y: 22 },
    { x: 22, y: 50 },
    { x: 12, y: 24 },
  ],
  0.01,
);

describe('an outline', () => {
  it('is told how it was moved, turned and sized, about its middle', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 2, max: 170, noNaN: true }),
        fc.double({ min: 1.1, max: 2, noNaN: true }),
        (right, down, degrees, factor) => {
          const middle = boxCentre(kite.box);
          const about = multiply(rotate(degrees, middle), scale(factor, factor, middle));
          const later = transform(kite, multiply(translate(right, down), about), 0.01);
          const change = compareOutlines(kite, later, DIAGONAL);
          expect(change.isReshaped).toBe(false);
          expect(change.move?.right).toBeCloseTo(right, 6);
          expect(change.move?.down).toBeCloseTo(down, 6);
          expect(change.turn).toBeCloseTo(degrees, 6);
          expect(change.scale?.across).toBeCloseTo(factor, 6);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('is sized in one direction alone', () => {
    const wider = ellipse({ x: 30, y: 20 }, 12, 5, 0.01);
    const change = compareOutlines(ellipse({ x: 30, y: 20 }, 8, 5, 0.01), wider, DIAGONAL);
    expect(change).toMatchObject({ isReshaped: false });
    expect(change.scale?.across).toBeCloseTo(1.5, 9);
    expect(change.scale?.down).toBeCloseTo(1, 9);
    expect(change.move).toBeUndefined();
  });

  it('is the same wherever its drawing begins, and whichever way it runs', () => {
    const corners = [
      { x: 5, y: 30 },
      { x: 5, y: 10 },
      { x: 25, y: 10 },
      { x: 25, y: 30 },
    ];
    expect(compareOutlines(rectangle({ x: 5, y: 10 }, { x: 25, y: 30 }), polygon(corners), DIAGONAL)).toEqual(
      {
        isReshaped: false,
      },
    );
    const turned = [...corners].reverse();
    expect(compareOutlines(polygon(corners), polygon(turned), DIAGONAL)).toEqual({ isReshaped: false });
  });

  it('has another shape when no moving and sizing makes it, and has moved when its middle has', () => {
    const triangle = polygon([
      { x: 10, y: 10 },
      { x: 30, y: 10 },
      { x: 20, y: 40 },
    ]);
    const square = rectangle({ x: 10, y: 10 }, { x: 30, y: 30 });
    const change = compareOutlines(square, triangle, DIAGONAL);
    expect(change.isReshaped).toBe(true);
    // The centroid of a triangle is the mean of its corners.
    expect(middleOf(triangle)).toEqual({ x: 20, y: 20 });
    expect(change.move).toBeUndefined();
    const far = transform(triangle, translate(15, 0));
    expect(compareOutlines(square, far, DIAGONAL).move?.right).toBeCloseTo(15, 9);
  });

  it('has not moved by less than can be seen', () => {
    expect(compareOutlines(kite, transform(kite, translate(0.05, 0)), DIAGONAL)).toEqual({
      isReshaped: false,
    });
  });
});
