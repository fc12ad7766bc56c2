import { describe, expect, it } from 'vitest';
import { polygon } from '../../plan/geometry/outline.js';
import { hatchPath } from './hatch.js';

const canvas = { width: 20, height: 20 };

function square(from: number, to: number) {
  return [
    { x: from, y: from },
    { x: to, y: from },
    { x: to, y: to },
    { x: from, y: to },
  ];
}

function strokes(path: string): number[][] {
  return [...path.matchAll(/M(\S+) (\S+)L(\S+) (\S+?)(?=M|$)/g)].map(([, ...places]) => places.map(Number));
}

describe('hatching', () => {
  it('fills a square with slants that rise to the right, edge to edge', () => {
    const lines = strokes(hatchPath(polygon(square(0, 10)), Math.SQRT1_2 * 5, canvas));
    expect(lines).toEqual([
      [0, 5, 5, 0],
      [0, 10, 10, 0],
      [5, 10, 10, 5],
    ]);
  });

  it('leaves a hole open', () => {
    const outer = polygon(square(0, 10));
    const inner = polygon([...square(4, 6)].reverse());
    const lines = strokes(hatchPath({ rings: [...outer.rings, ...inner.rings] }, Math.SQRT1_2 * 10, canvas));
    expect(lines).toEqual([
      [0, 10, 4, 6],
      [6, 4, 10, 0],
    ]);
  });

  it('lies on the same slants for every shape', () => {
    const [one] = strokes(hatchPath(polygon(square(1, 4)), Math.SQRT1_2 * 5, canvas));
    const [other] = strokes(hatchPath(polygon(square(0, 4)), Math.SQRT1_2 * 5, canvas));
    const sum = ([x = 0, y = 0]: number[]) => x + y;
    expect(sum(one ?? [])).toBe(sum(other ?? []));
  });

  it('is nothing for a shape without area, and stays on the canvas for one far larger', () => {
    expect(hatchPath({ rings: [] }, 1, canvas)).toBe('');
    expect(strokes(hatchPath(polygon(square(-1e6, 1e6)), 1, canvas)).length).toBeLessThan(60);
  });
});
