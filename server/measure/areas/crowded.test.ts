import { describe, expect, it } from 'vitest';
import { type Outline, ellipse, rectangle } from '../../plan/geometry/outline.js';
import { type VisibleAreas, type WorkCounter, visibleAreas } from './areas.js';

const CANVAS = { width: 100, height: 80 };
const TOLERANCE = 0.0002 * Math.hypot(CANVAS.width, CANVAS.height);
const MANY = 2000;

type Scene = readonly { readonly outline: Outline }[];

function circle(x: number, y: number, radius: number): Outline {
  return ellipse({ x, y }, radius, radius, TOLERANCE);
}

function scene(count: number, shape: (index: number) => Outline): Scene {
  return Array.from({ length: count }, (_, index) => ({ outline: shape(index) }));
}

/** Numbers from 0 to 1, always the same: Lehmer's generator with the figures of Park and Miller 1988. */
function randomNumbers(): () => number {
  let state = 7919;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

const identical = (count: number) => scene(count, () => circle(50, 40, 30));
const smallInFront = (count: number) => scene(count, (index) => circle(50, 40, 39 * (1 - index / count)));
const largeInFront = (count: number) => scene(count, (index) => circle(50, 40, (39 * (index + 1)) / count));
const largeRectangles = (count: number) => {
  const random = randomNumbers();
  return scene(count, () => {
    const [x, y] = [50 * random(), 40 * random()];
    return rectangle({ x, y }, { x: x + 20 + 30 * random(), y: y + 20 + 20 * random() });
  });
};
/** Side by side so close that each lies over a thousand others, and something is seen of each. */
const row = (count: number) => scene(count, (index) => circle(20 + (60 * index) / count, 40, 20));
/** Each over some four of the others, however many there are. */
const scattered = (count: number) => {
  const across = Math.ceil(Math.sqrt(count));
  const step = CANVAS.width / across;
  return scene(count, (index) =>
    circle((index % across) * step, 0.8 * Math.floor(index / across) * step, 0.8 * step),
  );
};

/** What is seen, and the corners that were handed to cuts to find it. */
function measured(layers: Scene): { readonly areas: VisibleAreas; readonly corners: number } {
  const counter: WorkCounter & { corners: number } = {
    clips: 0,
    differences: 0,
    intersections: 0,
    corners: 0,
  };
  const areas = visibleAreas(CANVAS, layers, counter);
  return { areas, corners: counter.corners };
}

function sum({ layers, bareShare }: VisibleAreas): number {
  return layers.reduce((total, { share }) => total + share, bareShare);
}

describe('thousands of shapes over each other', () => {
  // Cutting each shape by all in front of it takes some millions of corners for the rectangles, 80 million for circles.
  it.each<[string, (count: number) => Scene, number, number]>([
    ['the same circle', identical, 1, 1_000],
    ['circles in each other, small ones in front', smallInFront, MANY, 2_000_000],
    ['circles in each other, large ones in front', largeInFront, 1, 200_000],
    ['large rectangles', largeRectangles, 116, 100_000],
  ])('of %s are cut by those that matter', (_, shapes, seen, limit) => {
    const { areas, corners } = measured(shapes(MANY));
    expect(areas.layers.filter(({ share }) => share > 0)).toHaveLength(seen);
    expect(Math.abs(sum(areas) - 1)).toBeLessThan(1e-8);
    expect(corners).toBeGreaterThan(0);
    expect(corners).toBeLessThan(limit);
  });

  it('in a close row are cut by unions of each other', () => {
    const { areas, corners } = measured(row(500));
    expect(areas.layers.every(({ share }) => share > 0)).toBe(true);
    expect(Math.abs(sum(areas) - 1)).toBeLessThan(1e-8);
    // One by one, it would be 4.6 million.
    expect(corners).toBeLessThan(1_500_000);
  });

  it.each([
    ['scattered', scattered],
    ['in each other, small ones in front', smallInFront],
    ['in each other, large ones in front', largeInFront],
  ])('of circles %s take work in proportion to their number', (_, shapes) => {
    expect(measured(shapes(MANY)).corners / measured(shapes(MANY / 2)).corners).toBeLessThan(2.4);
  });

  it.each([
    ['the same circle', identical],
    ['circles in each other, small ones in front', smallInFront],
    ['circles in each other, large ones in front', largeInFront],
    ['large rectangles', largeRectangles],
    ['scattered circles', scattered],
  ])('of %s take little when a small one in front of them moves', (_, shapes) => {
    const layers = shapes(1000);
    const { corners } = measured([...layers, { outline: circle(47, 40, 0.3) }]);
    expect(measured([...layers, { outline: circle(48, 40, 0.3) }]).corners).toBeLessThan(corners / 10 + 500);
  });
});

describe('what covers a shape', () => {
  it('is told for one without cutting for the others', () => {
    const counter: WorkCounter = { clips: 0, differences: 0, intersections: 0 };
    const { layers } = visibleAreas(CANVAS, row(60), counter);
    expect(counter.intersections).toBe(0);
    expect(layers[57]?.coveredBy.map(({ index }) => index)).toEqual([58, 59]);
    expect(counter.intersections).toBe(2);
    expect(layers[57]?.coveredBy).toBe(layers[57]?.coveredBy);
    expect(counter.intersections).toBe(2);
  });

  it('is plain data to whoever copies or compares it', () => {
    const { layers } = visibleAreas(CANVAS, identical(3));
    expect(JSON.parse(JSON.stringify(layers[1]))).toMatchObject({ coveredBy: [{ index: 2 }] });
    expect(structuredClone(layers[0])).toEqual(layers[0]);
    expect({ ...layers[0] }).toEqual(visibleAreas(CANVAS, identical(3)).layers[0]);
  });

  it.each([
    ['the same circle', identical(300)],
    ['circles in each other', largeInFront(300)],
    ['large rectangles', largeRectangles(300)],
  ])('at most is told by a few cuts: %s', (_, layers) => {
    const counter: WorkCounter = { clips: 0, differences: 0, intersections: 0 };
    const areas = visibleAreas(CANVAS, layers, counter);
    const first = areas.layers.map(({ mostCovering }) => mostCovering);
    expect(counter.intersections).toBeLessThan(12 * layers.length);
    for (const index of [0, 100, 200, 298, 299]) {
      const most = areas.layers[index]?.coveredBy.slice(0, 3) ?? [];
      expect(first[index]).toHaveLength(most.length);
      most.forEach(({ area }, place) => expect(first[index]?.[place]?.area).toBeCloseTo(area, 6));
    }
  });
});
