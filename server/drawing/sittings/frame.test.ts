import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { ellipse, polygon, smooth } from '../../plan/geometry/outline.js';
import { outlineSteps } from './frame.js';

const canvas = { width: 80, height: 60 };
const scale = 0.25;
const em = 1;

/** Every place that a path goes through, curves by their ends and handles. */
function placesOf(d: string): readonly (readonly [number, number])[] {
  const places: [number, number][] = [];
  // The steps begin in the corner of the picture.
  svgpath(`M0 0${d}`)
    .abs()
    .iterate((segment) => {
      const figures = segment.slice(1) as number[];
      for (let index = 0; index + 1 < figures.length; index += 2)
        places.push([figures[index] ?? 0, figures[index + 1] ?? 0]);
    });
  return places.slice(1);
}

describe('an outline in a small picture', () => {
  it('lies where the picture does, a quarter as large', () => {
    const square = polygon([
      { x: 8, y: 8 },
      { x: 40, y: 8 },
      { x: 40, y: 32 },
      { x: 8, y: 32 },
    ]);
    expect(placesOf(outlineSteps(square, canvas, scale, em))).toEqual([
      [2, 2],
      [10, 2],
      [10, 8],
      [2, 8],
    ]);
  });

  it('keeps its curves, and adds up no rounding on the way round', () => {
    const points = Array.from({ length: 40 }, (_, index) => ({
      x: 40 + 20.3 * Math.cos((index * Math.PI) / 20),
      y: 30 + 17.7 * Math.sin((index * Math.PI) / 20),
    }));
    const d = outlineSteps(smooth(points, 0.02), canvas, scale, em);
    expect(d).toMatch(/^m[\d.]+ [\d.]+c/);
    const ends = placesOf(d).filter((_, index) => index % 3 === 0);
    ends.forEach(([x, y], index) => {
      const point = points[index % points.length];
      expect(x).toBeCloseTo(0.25 * (point?.x ?? 0), 1);
      expect(y).toBeCloseTo(0.25 * (point?.y ?? 0), 1);
    });
  });

  it('is cut where the canvas ends, with its holes', () => {
    const wide = { ...ellipse({ x: 80, y: 60 }, 30, 30, 0.02), fillRule: 'evenodd' as const };
    const places = placesOf(outlineSteps(wide, canvas, scale, em));
    expect(places.length).toBeGreaterThan(6);
    for (const [x, y] of places) {
      expect(x).toBeLessThanOrEqual(20);
      expect(y).toBeLessThanOrEqual(15);
      expect(Math.hypot(x - 20, y - 15)).toBeLessThan(7.6);
    }
  });

  it('is nothing off the canvas', () => {
    expect(outlineSteps(ellipse({ x: 200, y: 30 }, 10, 10, 0.02), canvas, scale, em)).toBe('');
  });
});
