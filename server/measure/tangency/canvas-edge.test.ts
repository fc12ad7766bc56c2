import { describe, expect, it } from 'vitest';
import type { Ring } from '../../plan/geometry/outline.js';
import { polygon } from '../../plan/geometry/outline.js';
import { edgeMeetings } from './canvas-edge.js';

const CANVAS = { width: 80, height: 60, diagonal: 100 };
const MANY = 300;

/** Small triangles one below the other, each just in from the left edge. */
function triangles(count: number): readonly Ring[] {
  return Array.from({ length: count }, (_, index) => {
    const [top, high] = [5 + (index * 50) / count, 30 / count];
    const corners = [
      { x: 0.2, y: top },
      { x: 3, y: top + high / 2 },
      { x: 0.2 + high, y: top + high },
    ];
    return polygon(corners).rings[0] as Ring;
  });
}

/** The ring, and how often a number of it is read. */
function counted(ring: Ring, read: () => void): Ring {
  return new Proxy(ring, {
    get(target, key) {
      if (typeof key === 'string' && /^\d+$/.test(key)) read();
      return Reflect.get(target, key) as unknown;
    },
  });
}

describe('many parts of a shape that just miss an edge of the canvas', () => {
  it('are each told, and looked for only in what is seen near them', () => {
    const rings = triangles(MANY);
    let reads = 0;
    const visible = rings.map((ring) => counted(ring, () => reads++));
    const outline = { path: [], rings, box: { left: 0, top: 0, right: 3, bottom: 60 } };
    const meetings = edgeMeetings(outline, visible, CANVAS, 1);
    expect(meetings.map(({ side }) => side)).toEqual(Array.from({ length: MANY }, () => 'left'));
    // A few times six numbers for each; each with each would be 540,000.
    expect(reads).toBeLessThan(MANY * 60);
  });

  it('are not told where they are not seen', () => {
    const rings = triangles(20);
    const outline = { path: [], rings, box: { left: 0, top: 0, right: 3, bottom: 60 } };
    expect(edgeMeetings(outline, rings.slice(0, 2), CANVAS, 1)).toHaveLength(2);
    expect(edgeMeetings(outline, [], CANVAS, 1)).toEqual([]);
  });
});
