import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mirror, scale } from './geometry/matrix.js';
import {
  ellipse,
  EMPTY_OUTLINE,
  join,
  outlineOf,
  polygon,
  rectangle,
  transform,
} from './geometry/outline.js';
import { type Point, distance } from './geometry/point.js';
import { distanceToOutline } from './geometry/regions.js';
import { carriedAlong, type Carrying } from './leads-along.js';

const at = (x: number, y: number): Point => ({ x, y });
const TABLE = rectangle(at(10, 20), at(50, 40));
const CANVAS = { width: 100.25, height: 100 };

function along(
  outline: Parameters<typeof carriedAlong>[0],
  carrying: Omit<Carrying, 'tolerance' | 'canvas'>,
  canvas: Carrying['canvas'] = CANVAS,
) {
  return carriedAlong(outline, { ...carrying, canvas, tolerance: 0.01 }).map(({ x, y }) => [
    Math.round(x * 1000) / 1000,
    Math.round(y * 1000) / 1000,
  ]);
}

describe('a lead along an edge named', () => {
  it('begins at the end that is farther from its aim and runs to the other', () => {
    expect(along(TABLE, { side: 'top', target: at(70, 20) })).toEqual([
      [10, 20],
      [50, 20],
    ]);
    expect(along(TABLE, { side: 'top', target: at(0, 20) })).toEqual([
      [50, 20],
      [10, 20],
    ]);
    expect(along(TABLE, { side: 'left', target: at(10, 0) })).toEqual([
      [10, 40],
      [10, 20],
    ]);
  });

  it('meets the edge at its place nearest to where it comes from', () => {
    expect(along(TABLE, { side: 'bottom', from: at(25, 90), target: at(60, 40) })).toEqual([
      [25, 40],
      [50, 40],
    ]);
  });

  it('leaves for an aim h beside the edge at h / sqrt 3 before it', () => {
    const [start, end] = along(TABLE, { side: 'top', from: at(0, 20), target: at(40, 8) });
    expect(start).toEqual([10, 20]);
    expect(end?.[0]).toBeCloseTo(40 - 12 / Math.sqrt(3), 3);
    expect(end?.[1]).toBe(20);
  });

  it('knows the top of a gable by the upper corners of its box', () => {
    const gable = polygon([at(10, 40), at(30, 20), at(50, 40)]);
    expect(along(gable, { side: 'top', target: at(70, 30) })).toEqual([
      [20, 30],
      [30, 20],
      [40, 30],
    ]);
  });
});

describe('an edge that comes from the edge of the canvas', () => {
  const canvas = { width: 60, height: 40 };
  const road = [at(0, 36), at(40, 16), at(42, 16), at(20, 40), at(0, 40)];
  const topOf = (...corners: readonly Point[]) =>
    along(polygon(corners), { side: 'top', target: at(50, 14) }, canvas);

  it('begins there, not at the place nearest to a corner of its box', () => {
    expect(topOf(...road)).toEqual([
      [0, 36],
      [40, 16],
      [42, 16],
    ]);
  });

  it('begins there where the object goes on beyond it, and nearly there where it all but reaches it', () => {
    expect(topOf(at(-8, 40), ...road.slice(1))[0]).toEqual([0, 36]);
    expect(topOf(at(0.5, 35.75), ...road.slice(1))[0]).toEqual([0.5, 35.75]);
    // The foot of the perpendicular from the corner of the box, 4 cm into the picture.
    const [[x = 0] = []] = topOf(at(4, 34), at(40, 16), at(42, 16), at(20, 40), at(4, 40));
    expect(x).toBeGreaterThan(8);
  });

  it('begins there when it bends a little on the way, not round a corner or along a ball', () => {
    expect(topOf(at(0, 37), at(6, 33), ...road.slice(1))[0]).toEqual([0, 37]);
    expect(topOf(at(2, 40), at(4, 20), at(30, 18), at(30, 40))[0]?.[1]).toBeLessThan(21);
    const ball = ellipse(at(10, 20), 10, 10, 0.001);
    const [start] = along(ball, { side: 'top', target: at(50, 14) }, canvas);
    expect(start?.[0]).toBeCloseTo(10 - 10 / Math.SQRT2, 1);
  });

  it('begins there from the other side in the mirror', () => {
    const mirrored = (place: Point): Point => at(60 - place.x, place.y);
    const flipped = along(polygon(road.map(mirrored)), { side: 'top', target: mirrored(at(50, 14)) }, canvas);
    expect(flipped).toEqual(topOf(...road).map(([x = 0, y]) => [60 - x, y]));
  });
});

describe('a lead along an object', () => {
  const eaves = polygon([at(55, 11.4), at(74.6, 9.2), at(82.4, 18.4), at(63.6, 22)]);

  it('leaves where the outline points to its aim rather than where it is nearest', () => {
    expect(along(eaves, { target: at(55.6, 23) })).toEqual([
      [82.4, 18.4],
      [63.6, 22],
    ]);
  });

  it('goes the shorter way round', () => {
    expect(along(TABLE, { from: at(0, 22), target: at(70, 20) })).toEqual([
      [10, 22],
      [10, 20],
      [50, 20],
    ]);
  });

  it('runs along an arc of a circle and keeps to it within the tolerance', () => {
    const plate = ellipse(at(50, 50), 20, 20, 0.001);
    const points = carriedAlong(plate, {
      from: at(0, 50),
      target: at(50, 30),
      canvas: CANVAS,
      tolerance: 0.01,
    });
    expect(points[0]).toEqual(at(30, 50));
    expect(points.at(-1)?.x).toBeCloseTo(50, 6);
    expect(points.at(-1)?.y).toBeCloseTo(30, 6);
    const length = points.reduce(
      (sum, point, i) => sum + distance(points[Math.max(0, i - 1)] ?? point, point),
      0,
    );
    // A quarter of the way round.
    expect(length).toBeCloseTo((Math.PI / 2) * 20, 1);
    for (const point of points) expect(distance(point, at(50, 50))).toBeCloseTo(20, 1);
  });

  it('runs round two shapes that overlap, not through them', () => {
    const steps = join([rectangle(at(0, 20), at(40, 40)), rectangle(at(20, 0), at(40, 30))]);
    expect(along(steps, { from: at(-5, 20), target: at(45, 0) })).toEqual([
      [0, 20],
      [20, 20],
      [20, 0],
      [40, 0],
    ]);
  });

  it('runs along the piece that is nearest to where it comes from', () => {
    const posts = join([rectangle(at(0, 0), at(2, 20)), rectangle(at(30, 0), at(32, 20))]);
    expect(along(posts, { from: at(33, 25), target: at(32, -10) })).toEqual([
      [32, 20],
      [32, 0],
    ]);
  });

  it('has no part along what has no area', () => {
    expect(along(EMPTY_OUTLINE, { target: at(1, 1) })).toEqual([]);
    expect(along(polygon([at(0, 0), at(9, 9)]), { target: at(1, 1) })).toEqual([]);
  });

  it('is bounded however finely the outline is drawn', () => {
    const comb = Array.from({ length: 4000 }, (_, i) => at(i / 40, i % 2));
    const fine = outlineOf(
      [...comb, at(100, 50), at(0, 50)].map(({ x, y }, i) => ({ kind: i === 0 ? 'M' : 'L', x, y })),
      0.01,
    );
    expect(along(fine, { side: 'top', target: at(120, 0) }).length).toBeLessThanOrEqual(48);
  });
});

describe('whatever the shape', () => {
  const places = fc.record({ x: fc.integer({ min: 0, max: 100 }), y: fc.integer({ min: 0, max: 100 }) });
  const shapes = fc.array(places, { minLength: 3, maxLength: 9 }).map((points) => polygon(points));
  const sides = fc.constantFrom(undefined, 'left', 'right', 'top', 'bottom');

  it('lies on the outline', () => {
    fc.assert(
      fc.property(
        shapes,
        sides,
        places,
        fc.option(places, { nil: undefined }),
        (shape, side, target, from) => {
          const points = carriedAlong(shape, {
            ...(side && { side }),
            ...(from && { from }),
            target,
            canvas: CANVAS,
            tolerance: 0.001,
          });
          if (shape.rings.length > 0) expect(points.length).toBeGreaterThan(0);
          for (const point of points) expect(distanceToOutline(shape.rings, point)).toBeLessThan(1e-6);
        },
      ),
      { seed: 5, numRuns: 400 },
    );
  });

  it('is the same at twice the size', () => {
    fc.assert(
      fc.property(shapes, sides, places, places, (shape, side, target, from) => {
        const twice = ({ x, y }: Point): Point => ({ x: 2 * x, y: 2 * y });
        const carrying = { ...(side && { side }), canvas: CANVAS, tolerance: 0.001 };
        const plain = carriedAlong(shape, { ...carrying, from, target });
        const large = carriedAlong(transform(shape, scale(2)), {
          ...carrying,
          from: twice(from),
          target: twice(target),
          canvas: { width: 2 * CANVAS.width, height: 2 * CANVAS.height },
          tolerance: 0.002,
        });
        expect(large.length).toBe(plain.length);
        large.forEach((point, i) => expect(distance(point, twice(plain[i] ?? point))).toBeLessThan(1e-6));
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  it('from the middle of a shape sets out on the side where it goes', () => {
    const tray = rectangle(at(10, 10), at(30, 30));
    expect(along(tray, { from: at(20, 20), target: at(50, 20) })[0]).toEqual([30, 20]);
    expect(along(tray, { from: at(20, 20), target: at(-10, 20) })[0]).toEqual([10, 20]);
  });

  it('is the mirror image in a mirror', () => {
    const triangles = fc
      .tuple(places, places, places)
      .filter(([a, b, c]) => Math.abs((b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y)) > 1);
    fc.assert(
      fc.property(triangles, sides, places, places, (corners, side, target, from) => {
        const flip = ({ x, y }: Point): Point => ({ x: CANVAS.width - x, y });
        const other = side === 'left' ? 'right' : side === 'right' ? 'left' : side;
        const shape = polygon(corners);
        const plain = carriedAlong(shape, {
          ...(side && { side }),
          from,
          target,
          canvas: CANVAS,
          tolerance: 0.001,
        });
        const flipped = carriedAlong(transform(shape, mirror('left to right', at(50.125, 0))), {
          ...(other && { side: other }),
          from: flip(from),
          target: flip(target),
          canvas: CANVAS,
          tolerance: 0.001,
        });
        const gap = (points: readonly Point[], aim: Point): number => distance(points.at(-1) ?? aim, aim);
        expect(gap(flipped, flip(target))).toBeCloseTo(gap(plain, target), 5);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
