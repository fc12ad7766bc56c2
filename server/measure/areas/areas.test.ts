import { describe, expect, it } from 'vitest';
import {
  EMPTY_OUTLINE,
  type Outline,
  ellipse,
  outlineOf,
  polygon,
  rectangle,
  smooth,
} from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import { type WorkCounter, visibleAreas } from './areas.js';

const CANVAS = { width: 100, height: 50 };
const TOLERANCE = 0.0002 * Math.hypot(CANVAS.width, CANVAS.height);

function box(left: number, top: number, right: number, bottom: number): Outline {
  return rectangle({ x: left, y: top }, { x: right, y: bottom });
}

function points(...numbers: readonly number[]): readonly Point[] {
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: numbers[2 * i] ?? NaN,
    y: numbers[2 * i + 1] ?? NaN,
  }));
}

function measure(...outlines: readonly Outline[]) {
  return visibleAreas(
    CANVAS,
    outlines.map((outline) => ({ outline })),
  );
}

describe('one shape', () => {
  it.each<[string, Outline, number]>([
    ['rectangle', box(10, 10, 30, 20), 200],
    ['circle', ellipse({ x: 50, y: 25 }, 20, 20, 1e-6), Math.PI * 400],
    ['half a circle at the edge', ellipse({ x: 0, y: 25 }, 20, 20, 1e-6), Math.PI * 200],
    ['quarter of a circle in the corner', ellipse({ x: 100, y: 50 }, 20, 20, 1e-6), Math.PI * 100],
    ['triangle', polygon(points(0, 0, 40, 0, 0, 30)), 600],
    ['bow-tie, both wings', polygon(points(0, 0, 20, 20, 20, 0, 0, 20)), 200],
    ['square drawn round twice', polygon(points(0, 0, 9, 0, 9, 9, 0, 9, 0, 0, 9, 0, 9, 9, 0, 9)), 81],
    ['all of the canvas and more', box(-50, -50, 200, 200), 5000],
    ['sliver', box(0, 10, 100, 10 + 1e-6), 1e-4],
    [
      'square with a spike out and back along its top',
      polygon(points(10, 10, 20, 10, 30, 10, 5, 10, 10, 10, 10, 20, 20, 20, 20, 10)),
      100,
    ],
    [
      'level sides that turn back on the canvas edge',
      polygon(points(64, 0, 3, 0, 0, 0, 100, 0, 50, 50)),
      900,
    ],
    [
      'level sides that turn back off the canvas',
      polygon(points(64, -9, 3, -9, 0, 0, 0, -20, 100, 0, 50, 50)),
      25 * (36 + (14 * 9) / 59),
    ],
  ])('%s', (_, outline, area) => {
    const { layers, bareArea } = measure(outline);
    expect((layers[0]?.visibleArea ?? 0) / area).toBeCloseTo(1, 3);
    expect((layers[0]?.visibleArea ?? 0) + bareArea).toBeCloseTo(5000, 5);
  });

  it('is short of a circle by no more than the tolerance all round', () => {
    const area = measure(ellipse({ x: 50, y: 25 }, 20, 20, TOLERANCE)).layers[0]?.visibleArea ?? 0;
    expect(area).toBeLessThan(Math.PI * 400);
    expect(area).toBeGreaterThan(Math.PI * (20 - TOLERANCE) ** 2);
  });

  it('is filled by winding unless the outline asks for even-odd', () => {
    const star = Array.from({ length: 5 }, (_, i) => ({
      x: 50 + 20 * Math.sin((i * 4 * Math.PI) / 5),
      y: 25 - 20 * Math.cos((i * 4 * Math.PI) / 5),
    }));
    const wound = measure(polygon(star)).layers[0]?.visibleArea ?? 0;
    const evenOdd = measure({ ...polygon(star), fillRule: 'evenodd' }).layers[0]?.visibleArea ?? 0;
    // Worked out from the golden section: the pentagon inside a pentagram is 1/(2 phi) of it.
    expect((wound - evenOdd) / wound).toBeCloseTo(1 / (1 + Math.sqrt(5)), 9);
  });

  it('has the hole that its inner ring cuts', () => {
    const frame = outlineOf([...box(10, 10, 40, 40).path, ...box(20, 20, 30, 30).path], 1, 'evenodd');
    const { layers, bare } = measure(frame);
    expect(layers[0]?.visibleArea).toBeCloseTo(800, 5);
    expect(layers[0]?.visible).toHaveLength(2);
    expect(bare).toHaveLength(3);
  });

  it('tells how much of it lies off the canvas', () => {
    const { layers } = measure(box(-30, 0, 10, 10), box(200, 0, 210, 10));
    expect(layers[0]?.ownArea).toBeCloseTo(400, 6);
    expect(layers[0]?.share).toBeCloseTo(0.02, 9);
    expect(layers[0]?.offCanvasShare).toBeCloseTo(0.75, 9);
    expect(layers[1]?.ownArea).toBeCloseTo(100, 6);
    expect(layers[1]).toMatchObject({ onCanvasArea: 0, share: 0, hiddenShare: 0, offCanvasShare: 1 });
  });
});

describe('shapes over each other', () => {
  it('hide what lies behind them', () => {
    const { layers, bareShare } = measure(box(0, 0, 20, 20), box(10, 10, 30, 30));
    expect(layers[0]?.visibleArea).toBeCloseTo(300, 6);
    expect(layers[0]?.hiddenShare).toBeCloseTo(0.25, 9);
    expect(layers[1]?.visibleArea).toBeCloseTo(400, 6);
    expect(bareShare).toBeCloseTo(1 - 700 / 5000, 9);
  });

  it('are told with what they cover, the most covering first, doubled places in full', () => {
    const { layers } = measure(box(0, 0, 20, 20), box(0, 0, 5, 20), box(50, 0, 60, 10), box(0, 0, 10, 20));
    const [behind] = layers;
    expect(behind?.coveredBy.map(({ index }) => index)).toEqual([3, 1]);
    expect(behind?.coveredBy[0]?.area).toBeCloseTo(200, 6);
    expect(behind?.coveredBy[1]?.area).toBeCloseTo(100, 6);
    expect(behind?.hiddenShare).toBeCloseTo(0.5, 9);
    expect(layers[1]).toMatchObject({ visible: [], visibleArea: 0, hiddenShare: 1 });
  });

  it('do not hide each other when they only touch', () => {
    const { layers } = measure(box(0, 0, 20, 20), box(20, 0, 40, 20), box(20, 20, 40, 40));
    expect(layers.map(({ coveredBy }) => coveredBy)).toEqual([[], [], []]);
  });

  it('of the same outline leave only the front one', () => {
    const round = ellipse({ x: 50, y: 25 }, 10, 20, TOLERANCE);
    const { layers } = measure(round, round, smooth(points(40, 25, 50, 5, 60, 25), TOLERANCE), round);
    expect(layers.map(({ share }) => share > 0)).toEqual([false, false, true, true]);
    expect(layers[1]?.coveredBy.map(({ index }) => index)).toEqual([3, 2]);
  });

  it('cut a shape in two', () => {
    const { layers } = measure(box(0, 20, 100, 30), box(40, 0, 60, 50));
    expect(layers[0]?.visible).toHaveLength(2);
  });
});

describe('scribbles over a lattice', () => {
  it('add up where the first cut does not', () => {
    const back: Outline = {
      ...polygon(
        points(
          ...[2, 4, 1, 4, 4, 7, 4, 5, 0, 6, 5, -1, 8, 2, 2, 3, 6, 0, 2, -1],
          ...[5, -1, -1, 7, 3, 5, 2, 8, 0, 6],
        ),
      ),
      fillRule: 'evenodd',
    };
    const front = polygon(points(4, -1, 1, 4, 2, 3, 7, 2, 4, 5, 6, 1, 2, 7, 3, -1, 2, 2, 6, 3));
    const { layers, bareShare } = visibleAreas({ width: 7, height: 7 }, [
      { outline: back },
      { outline: front },
    ]);
    expect(layers.reduce((sum, { share }) => sum + share, bareShare)).toBeCloseTo(1, 9);
    // Counted on 700 by 700 points of the canvas, by winding round each.
    expect(bareShare).toBeCloseTo(0.5312, 2);
  });
});

describe('hardly a scene', () => {
  it('of nothing is all bare', () => {
    expect(measure()).toMatchObject({ layers: [], bareArea: 5000, bareShare: 1 });
  });

  it('of shapes without area is all bare', () => {
    const { layers, bareShare } = measure(EMPTY_OUTLINE, box(5, 5, 5, 40), polygon(points(1, 1, 1, 1, 1, 1)));
    expect(bareShare).toBe(1);
    for (const layer of layers) {
      expect(layer).toMatchObject({
        visible: [],
        visibleArea: 0,
        ownArea: 0,
        share: 0,
        hiddenShare: 0,
        offCanvasShare: 0,
      });
    }
  });

  it.each([
    { width: 0, height: 50 },
    { width: NaN, height: 50 },
    { width: Infinity, height: 50 },
    { width: 100, height: -1 },
    { width: 1, height: 1e-12 },
  ])('on a canvas of $width by $height shows nothing', (canvas) => {
    const { layers, bareShare } = visibleAreas(canvas, [{ outline: box(0, 0, 10, 10) }]);
    expect(bareShare).toBe(1);
    expect(layers[0]).toMatchObject({ share: 0, visible: [], onCanvasArea: 0, offCanvasShare: 1 });
  });

  it('on a band of a canvas still adds up', () => {
    const { layers, bareShare } = visibleAreas({ width: 10_000, height: 0.5 }, [
      { outline: box(0, 0, 2500, 9) },
    ]);
    expect(layers[0]?.share).toBeCloseTo(0.25, 9);
    expect(bareShare).toBeCloseTo(0.75, 9);
  });
});

describe('many shapes', () => {
  const ACROSS = 50;
  /** Overlapping discs in rows, each over about four of the others, on a ground over all of the canvas. */
  function discs(count: number): readonly { readonly outline: Outline }[] {
    const size = 100 / ACROSS;
    const rows = Array.from({ length: count }, (_, i) => ({
      outline: ellipse(
        { x: (i % ACROSS) * size, y: Math.floor(i / ACROSS) * size },
        size * 0.7,
        size * 0.6,
        TOLERANCE,
      ),
    }));
    return [{ outline: polygon(points(-1, -2, 110, -3, 120, 70, -5, 60)) }, ...rows];
  }

  function work(layers: readonly { readonly outline: Outline }[]) {
    const counter: WorkCounter = { clips: 0, differences: 0, intersections: 0 };
    const areas = visibleAreas(CANVAS, layers, counter);
    const sum = areas.layers.reduce((total, { share }) => total + share, areas.bareShare);
    const covers = areas.layers.flatMap(({ coveredBy }) => coveredBy);
    return { counter, sum, covers };
  }

  it('take work in proportion to their number, and still add up', () => {
    const few = work(discs(300));
    const many = work(discs(1200));
    expect(Math.abs(many.sum - 1)).toBeLessThan(1e-8);
    expect(many.counter.clips).toBe(1201);
    expect(many.counter.differences / few.counter.differences).toBeLessThan(5);
    expect(many.counter.intersections / few.counter.intersections).toBeLessThan(5);
  });

  it('are not worked out again when nothing has changed', () => {
    const scene = discs(100);
    work(scene);
    expect(work(scene).counter).toEqual({ clips: 0, differences: 0, intersections: 0 });
  });

  it('cost one clip and the work of its neighbourhood when one of them moves', () => {
    const scene = discs(1200);
    work(scene);
    const moved = scene.with(700, { outline: ellipse({ x: 41, y: 6 }, 1, 1, TOLERANCE) });
    const { counter, sum } = work(moved);
    expect(counter.clips).toBe(1);
    expect(counter.differences).toBeLessThan(60);
    expect(counter.intersections).toBeLessThan(60);
    expect(Math.abs(sum - 1)).toBeLessThan(1e-8);
  });
});
