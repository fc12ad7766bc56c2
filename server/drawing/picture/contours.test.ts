import { describe, expect, it } from 'vitest';
import type { EmphasisField } from '../../measure/emphasis/emphasis.js';
import type { Point } from '../../plan/geometry/point.js';
import { contourRings, smoothRingPath } from './contours.js';

const canvas = { width: 80, height: 60 };

/** A field of 80 by 60 cells, each a unit square. */
function field(strengthAt: (x: number, y: number) => number): EmphasisField {
  const strengths = Array.from({ length: 80 * 60 }, (_, index) =>
    strengthAt((index % 80) + 0.5, Math.floor(index / 80) + 0.5),
  );
  return { columns: 80, rows: 60, strengths, strongest: Math.max(...strengths) };
}

/** Shoelace formula; positive for a ring that runs clockwise on the canvas, y down. */
function area(ring: readonly Point[]): number {
  return ring.reduce((sum, { x, y }, index) => {
    const next = ring[(index + 1) % ring.length] ?? { x, y };
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
}

const hill = (x: number, y: number, cx: number, cy: number) => Math.max(0, 100 - Math.hypot(x - cx, y - cy));

describe('contours', () => {
  it('go round a hill as a circle', () => {
    const [ring, ...others] = contourRings(
      field((x, y) => hill(x, y, 40, 30)),
      85,
      canvas,
    );
    expect(others).toEqual([]);
    // A cone has the level 85 at a radius of 15: pi x 225 = 706.9.
    expect(Math.abs(Math.abs(area(ring ?? [])) - 706.9)).toBeLessThan(3);
    for (const { x, y } of ring ?? []) expect(Math.hypot(x - 40, y - 30)).toBeCloseTo(15, 1);
  });

  it('run a hollow the other way round, so that it stays bare', () => {
    const ridge = (x: number, y: number) => 100 - Math.abs(Math.hypot(x - 40, y - 30) - 15);
    const areas = contourRings(field(ridge), 95, canvas)
      .map(area)
      .sort((a, b) => a - b);
    expect(areas).toHaveLength(2);
    // Radii of 10 and 20.
    expect(Math.abs((areas[0] ?? 0) + 314.2)).toBeLessThan(5);
    expect(Math.abs((areas[1] ?? 0) - 1256.6)).toBeLessThan(5);
  });

  it('are closed beyond the edge of the canvas, and cross it where the field does', () => {
    const rings = contourRings(
      field((x, y) => hill(x, y, 0, 30)),
      80,
      canvas,
    );
    expect(rings).toHaveLength(1);
    const beyond = rings[0]?.filter(({ x }) => x < -0.5) ?? [];
    expect(beyond.length).toBeGreaterThan(0);
    const onCanvas = rings[0]?.filter(({ x }) => x >= 0) ?? [];
    for (const { x, y } of onCanvas) expect(Math.hypot(x, y - 30)).toBeCloseTo(20, 0);
  });

  it('are none above the strongest place, and one beyond all edges below the weakest', () => {
    const flat = field(() => 5);
    expect(contourRings(flat, 6, canvas)).toEqual([]);
    const [all] = contourRings(flat, 4, canvas);
    expect(Math.abs(area(all ?? []))).toBeGreaterThan(80 * 60);
  });

  it('keep two hills apart that meet at a corner', () => {
    const board = (x: number, y: number) => (x < 40 === y < 30 ? 10 : 0);
    const rings = contourRings(field(board), 6, canvas);
    expect(rings).toHaveLength(2);
  });

  it('are none for a field without cells', () => {
    expect(contourRings({ columns: 0, rows: 0, strengths: [], strongest: 0 }, 1, canvas)).toEqual([]);
  });
});

describe('a smooth ring', () => {
  it('passes the middles of the sides, its points being handles', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
      { x: 0, y: 10 },
    ];
    expect(smoothRingPath(square)).toBe('M0 5Q0 0 5 0Q10 0 10 5Q10 10 5 10Q0 10 0 5Z');
    expect(smoothRingPath([])).toBe('');
  });
});
