import { describe, expect, it } from 'vitest';
import { mirror, multiply, rotate, scale, translate } from './matrix.js';
import {
  EMPTY_OUTLINE,
  type Outline,
  ellipse,
  join,
  outlineOf,
  pathData,
  polygon,
  rectangle,
  smooth,
  transform,
} from './outline.js';
import { NO_BOX, type Point } from './point.js';
import { areaOf, containsPoint } from './regions.js';

const FINE = 1e-6;

function points(...numbers: readonly number[]): readonly Point[] {
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: numbers[2 * i] ?? NaN,
    y: numbers[2 * i + 1] ?? NaN,
  }));
}

function area({ rings, fillRule }: Outline): number {
  return areaOf(rings, fillRule);
}

describe('rectangle', () => {
  it('is drawn from any two opposite corners', () => {
    const outline = rectangle({ x: 30, y: 5 }, { x: 10, y: 15 });
    expect(pathData(outline, 2)).toBe('M10 5L30 5L30 15L10 15Z');
    expect(outline.box).toEqual({ left: 10, top: 5, right: 30, bottom: 15 });
    expect(area(outline)).toBeCloseTo(200, 9);
  });
});

describe('ellipse', () => {
  it('has the area pi a b within 1e-5', () => {
    expect(area(ellipse({ x: 3, y: 4 }, 20, 10, FINE)) / (Math.PI * 200)).toBeCloseTo(1, 5);
  });

  it('is flattened no farther than the tolerance from the curve', () => {
    const [ring = new Float64Array()] = ellipse({ x: 0, y: 0 }, 100, 100, 0.02).rings;
    for (let i = 0; i < ring.length; i += 2) {
      const next = (i + 2) % ring.length;
      const middle = Math.hypot(
        ((ring[i] ?? 0) + (ring[next] ?? 0)) / 2,
        ((ring[i + 1] ?? 0) + (ring[next + 1] ?? 0)) / 2,
      );
      expect(100 - middle).toBeLessThan(0.02);
    }
    expect(ring.length / 2).toBeLessThan(200);
  });
});

describe('smooth outline', () => {
  const through = points(0, 0, 10, 0, 14, 6, 5, 12);

  it('goes through all its points', () => {
    const ends = smooth(through, FINE).path.flatMap((step) =>
      step.kind === 'C' ? [{ x: step.x, y: step.y }] : [],
    );
    expect(ends).toEqual([...through.slice(1), through[0]]);
  });

  it('comes near a circle through eight of its points', () => {
    const round = Array.from({ length: 8 }, (_, i) => ({
      x: Math.cos((i * Math.PI) / 4),
      y: Math.sin((i * Math.PI) / 4),
    }));
    expect(area(smooth(round, FINE)) / Math.PI).toBeCloseTo(1, 1);
  });

  it('does not care for points given twice', () => {
    const doubled = through.flatMap((point) => [point, point]);
    expect(smooth(doubled, FINE).path).toEqual(smooth(through, FINE).path);
  });
});

describe('a shape that is hardly one', () => {
  const here = { x: 5, y: 5 };
  it.each<[string, Outline]>([
    ['rectangle without height', rectangle(here, { x: 9, y: 5 })],
    ['rectangle of one point', rectangle(here, here)],
    ['ellipse without a radius', ellipse(here, 0, 7, 0.01)],
    ['polygon of two points', polygon([here, { x: 9, y: 9 }])],
    ['polygon of one point given four times', polygon([here, here, here, here])],
    ['smooth outline of two points', smooth([here, { x: 9, y: 9 }], 0.01)],
    ['smooth outline of one point given four times', smooth([here, here, here, here], 0.01)],
    ['polygon of points in an upright line', polygon(points(5, 0, 5, 9, 5, 3))],
  ])('%s has a path but no ring and no area', (_, outline) => {
    expect(outline.path.length).toBeGreaterThan(0);
    expect(outline.rings).toEqual([]);
    expect(area(outline)).toBe(0);
    expect(outline.box.left).toBe(5);
    expect(area(transform(outline, rotate(30)))).toBe(0);
    expect(area(join([outline, outline]))).toBe(0);
  });

  const not = { x: NaN, y: 0 };
  const far = { x: 1e300, y: 0 };
  it.each<[string, Outline]>([
    ['no points', polygon([])],
    ['no points, smooth', smooth([], 0.01)],
    ['a corner that is no number', rectangle(here, not)],
    ['a centre at infinity', ellipse({ x: Infinity, y: 0 }, 1, 1, 0.01)],
    ['an endless radius', ellipse(here, Infinity, 1, 0.01)],
    ['a point that is no number', polygon([here, not, { x: 9, y: 9 }])],
    ['a point out of all bounds', smooth([here, far, { x: 9, y: 9 }], 0.01)],
    ['a path out of all bounds', outlineOf([{ kind: 'M', ...far }], 0.01)],
    ['moved out of all bounds', transform(rectangle(here, { x: 9, y: 9 }), scale(1e8, 1e300))],
    ['moved far, by steps', transform(rectangle(here, { x: 9, y: 9 }), scale(9e8))],
    ['nothing joined', join([])],
    ['nothing joined to nothing', join([EMPTY_OUTLINE, EMPTY_OUTLINE])],
  ])('%s gives the empty outline', (_, outline) => {
    expect(outline).toEqual({ path: [], rings: [], box: NO_BOX });
  });

  it.each([0, -1, NaN, 1e-300])('a tolerance of %s ends in a bounded number of points', (tolerance) => {
    const [ring] = ellipse(here, 10, 10, tolerance).rings;
    expect(ring?.length).toBeLessThanOrEqual(2 * 8 * 1000);
    expect(areaOf(ring ? [ring] : [])).toBeCloseTo(Math.PI * 100, 2);
  });
});

describe('transform', () => {
  const flag = polygon(points(0, 0, 4, 0, 4, 2));

  it('turns clockwise on the canvas', () => {
    expect(pathData(transform(flag, rotate(90)), 3)).toBe('M0 0L0 4L-2 4Z');
    expect(pathData(transform(flag, rotate(-90, { x: 4, y: 0 })), 3)).toBe('M4 4L4 0L6 0Z');
  });

  it('mirrors about the line through a point', () => {
    expect(pathData(transform(flag, mirror('left to right', { x: 4, y: 0 })), 3)).toBe('M8 0L4 0L4 2Z');
    expect(pathData(transform(flag, mirror('top to bottom', { x: 0, y: 1 })), 3)).toBe('M0 2L4 2L4 0Z');
  });

  it('does the second of two multiplied maps first', () => {
    const outline = transform(flag, multiply(translate(10, 0), scale(2, 3)));
    expect(pathData(outline, 3)).toBe('M10 0L18 0L18 6Z');
  });

  it('moves rings, box and path alike', () => {
    const outline = transform(ellipse({ x: 0, y: 0 }, 4, 2, FINE), translate(5, 6));
    expect(outline.box.left).toBeCloseTo(1, 6);
    expect(outline.box.bottom).toBeCloseTo(8, 6);
    expect(outlineOf(outline.path, FINE).box.right).toBeCloseTo(9, 6);
  });

  it('flattens anew when a tolerance is given', () => {
    const coarse = ellipse({ x: 0, y: 0 }, 0.01, 0.01, 0.005);
    expect(area(transform(coarse, scale(1000))) / (Math.PI * 100)).toBeLessThan(0.95);
    expect(area(transform(coarse, scale(1000), 0.001)) / (Math.PI * 100)).toBeCloseTo(1, 3);
  });

  it('keeps the fill rule', () => {
    const star: Outline = { ...polygon(points(0, 0, 4, 0, 4, 2)), fillRule: 'evenodd' };
    expect(transform(star, translate(1, 1)).fillRule).toBe('evenodd');
    expect(transform(star, translate(1, 1), 1).fillRule).toBe('evenodd');
  });
});

describe('join', () => {
  const left = polygon(points(0, 0, 10, 0, 10, 10, 0, 10));
  const anticlockwise = polygon(points(5, 0, 5, 10, 15, 10, 15, 0));

  it('covers what any of its shapes covers, whichever way they run', () => {
    expect(area(join([left, anticlockwise]))).toBeCloseTo(150, 6);
    expect(area(outlineOf(join([left, anticlockwise]).path, FINE))).toBeCloseTo(150, 6);
  });

  it('keeps curves', () => {
    const discs = join([
      ellipse({ x: 0, y: 0 }, 5, 5, FINE),
      transform(ellipse({ x: 4, y: 0 }, 5, 5, FINE), scale(1, -1)),
    ]);
    expect(discs.path.filter(({ kind }) => kind === 'C')).toHaveLength(16);
    expect(containsPoint(discs.rings, { x: 2, y: 0 })).toBe(true);
    expect(containsPoint(outlineOf(discs.path, FINE).rings, { x: 2, y: 0 })).toBe(true);
  });

  it('keeps the holes of each shape, unless another lies in them', () => {
    const frame: Outline = outlineOf(
      [...left.path, ...polygon(points(2, 2, 8, 2, 8, 8, 2, 8)).path],
      1,
      'evenodd',
    );
    expect(area(join([frame, polygon(points(20, 0, 21, 0, 21, 1, 20, 1))]))).toBeCloseTo(64 + 1, 6);
    expect(area(join([frame, polygon(points(3, 3, 5, 3, 5, 5, 3, 5))]))).toBeCloseTo(64 + 4, 6);
  });

  it('is the shape itself when there is only one', () => {
    expect(join([EMPTY_OUTLINE, left])).toBe(left);
  });
});

describe('path data for drawing', () => {
  it('is rounded to the decimals asked for, without needless zeros', () => {
    expect(pathData(polygon(points(-0.0001, 1 / 3, 10, 2.5, 7, 9)), 2)).toBe('M0 0.33L10 2.5L7 9Z');
    expect(pathData(EMPTY_OUTLINE, 2)).toBe('');
  });
});
