import { areaOnGrid, united } from './clipping.js';
import { type Outline, type Ring, boxOfRings } from './path.js';
import type { Point } from './point.js';
import { gridOver, polygonsOf } from './polygons.js';

type Shape = Pick<Outline, 'rings' | 'fillRule'>;

/** Area of one shape in squared units, self-crossings and overlaps counted once; nonzero unless told otherwise. */
export function areaOf(rings: readonly Ring[], fillRule?: 'evenodd'): number {
  return unionArea([{ rings, ...(fillRule && { fillRule }) }]);
}

/** Area that the shapes cover together, squared units. Places covered by several count once. */
export function unionArea(shapes: readonly Shape[]): number {
  const grid = gridOver(boxOfRings(shapes.flatMap(({ rings }) => rings)));
  if (!grid) return 0;
  const polygons = shapes.map((shape) => polygonsOf(shape, grid));
  const [only] = polygons;
  const union = polygons.length === 1 && only ? only : united(polygons.flat());
  return areaOnGrid(union) / grid.scale ** 2;
}

/** True when the place is inside. On the border itself either answer may come: ask `distanceToOutline` there. */
export function containsPoint(rings: readonly Ring[], point: Point, fillRule?: 'evenodd'): boolean {
  let winding = 0;
  for (const ring of rings) winding += windingOf(ring, point);
  return fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0;
}

/** Distance from a place, inside or outside, to the nearest border. Infinite without any ring. */
export function distanceToOutline(rings: readonly Ring[], point: Point): number {
  let nearest = Infinity;
  for (const ring of rings) {
    eachSide(ring, (ax, ay, bx, by) => {
      const dx = bx - ax;
      const dy = by - ay;
      const length = dx * dx + dy * dy;
      const along = length > 0 ? ((point.x - ax) * dx + (point.y - ay) * dy) / length : 0;
      const part = Math.min(1, Math.max(0, along));
      nearest = Math.min(nearest, Math.hypot(point.x - ax - part * dx, point.y - ay - part * dy));
    });
  }
  return nearest;
}

/** How often the ring runs round the place, clockwise counted positive on the canvas. */
function windingOf(ring: Ring, { x, y }: Point): number {
  let winding = 0;
  eachSide(ring, (ax, ay, bx, by) => {
    if (ay <= y === by <= y) return;
    const side = (bx - ax) * (y - ay) - (x - ax) * (by - ay);
    if (by > ay && side > 0) winding++;
    else if (by < ay && side < 0) winding--;
  });
  return winding;
}

function eachSide(ring: Ring, visit: (ax: number, ay: number, bx: number, by: number) => void): void {
  const count = ring.length;
  for (let i = 0; i + 1 < count; i += 2) {
    const next = (i + 2) % count;
    visit(ring[i] as number, ring[i + 1] as number, ring[next] as number, ring[next + 1] as number);
  }
}
