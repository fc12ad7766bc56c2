import { describe, expect, it } from 'vitest';
import { checked } from '../../../tests/support/plan.js';

/** 100 x 50: hills over the whole canvas, before them a wall and a hedge 40 cm wide each, and a gate in the wall. */
const LANE = `
canvas  100 x 50 cm
object  hills
  plane   background
  shape   rectangle (0, 0) to (100, 50)
  colour  5B 7/4
  value   4
object  wall
  shape   rectangle (0, 0) to (40, 50)
  value   3
object  hedge
  shape   rectangle (60, 0) to (100, 50)
  colour  5GY 4/6
  value   2
object  gate
  plane   foreground
  shape   rectangle (10, 0) to (20, 50)
  colour  10R 3/8
  value   1`;

describe('the planes of a picture', () => {
  const { planes } = checked(LANE).measures;

  it('come farthest first, each with what is seen of it', () => {
    expect(planes.map(({ plane, share }) => [plane, Math.round(share * 100)])).toEqual([
      ['background', 20],
      ['middle', 70],
      ['foreground', 10],
    ]);
  });

  it('have the mean of their values, weighed by area', () => {
    // Steps 4, 3, 2 and 1 of five are Munsell values 7, 5, 3 and 1; 30 cm are seen of the wall, 40 of the hedge.
    expect(planes.map(({ value }) => value)).toEqual([7, expect.closeTo((30 * 5 + 40 * 3) / 70, 9), 1]);
  });

  it('have the mean of their chroma as it can be had at those values', () => {
    const [background, middle, foreground] = planes;
    expect(background?.chroma).toBeCloseTo(4, 3);
    // That of the hedge alone: the wall has a value and no colour.
    expect(middle?.chroma).toBeCloseTo(6, 3);
    expect(foreground?.chroma).toBeLessThan(8);
  });

  it('are left out where nothing is seen of them, and have no value where nothing has one', () => {
    const bare = 'canvas 40 x 30 cm\nobject  door\n  shape   rectangle (0, 0) to (10, 10)';
    expect(checked(bare).measures.planes).toEqual([{ plane: 'middle', share: expect.closeTo(1 / 12, 9) }]);
  });

  it('know nothing of a shape off the canvas', () => {
    const off = `${LANE}\nobject  crow\n  plane   foreground\n  shape   circle 5 at (200, 10)\n  value   5`;
    expect(checked(off).measures.planes).toEqual(planes);
  });
});
