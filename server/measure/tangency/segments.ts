import Flatbush from 'flatbush';
import type { Ring } from '../../plan/geometry/outline.js';
import {
  type Box,
  type Point,
  between,
  boxCentre,
  boxOfPoints,
  distance,
} from '../../plan/geometry/point.js';

/** Straight pieces of borders, findable by place. */
export interface Segments {
  /** Four numbers each: from x, from y, to x, to y. Canvas units. */
  readonly ends: Float64Array;
  readonly count: number;
  /** Indices of the pieces whose boxes touch a box. */
  readonly near: (box: Box) => readonly number[];
}

/** All sides of some rings, of which `keep` may leave out some. */
export function segmentsOf(
  rings: readonly Ring[],
  keep: (ax: number, ay: number, bx: number, by: number) => boolean = () => true,
): Segments {
  const ends: number[] = [];
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const next = (i + 2) % ring.length;
      const [ax, ay] = [ring[i] as number, ring[i + 1] as number];
      const [bx, by] = [ring[next] as number, ring[next + 1] as number];
      if (keep(ax, ay, bx, by)) ends.push(ax, ay, bx, by);
    }
  }
  return findable(Float64Array.from(ends));
}

function findable(ends: Float64Array): Segments {
  const count = ends.length / 4;
  let tree: Flatbush | undefined;
  const built = (): Flatbush => {
    const boxes = new Flatbush(count);
    for (let index = 0; index < count; index++) {
      const { left, top, right, bottom } = boxOf(ends, index);
      boxes.add(left, top, right, bottom);
    }
    boxes.finish();
    return boxes;
  };
  return {
    ends,
    count,
    near: ({ left, top, right, bottom }) => {
      if (count === 0) return [];
      tree ??= built();
      return tree.search(left, top, right, bottom);
    },
  };
}

export function fromOf(ends: Float64Array, index: number): Point {
  return { x: ends[4 * index] as number, y: ends[4 * index + 1] as number };
}

export function toOf(ends: Float64Array, index: number): Point {
  return { x: ends[4 * index + 2] as number, y: ends[4 * index + 3] as number };
}

export function boxOf(ends: Float64Array, index: number): Box {
  const [a, b] = [fromOf(ends, index), toOf(ends, index)];
  return {
    left: Math.min(a.x, b.x),
    top: Math.min(a.y, b.y),
    right: Math.max(a.x, b.x),
    bottom: Math.max(a.y, b.y),
  };
}

export function widened({ left, top, right, bottom }: Box, by: number): Box {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** The place on the piece from `a` to `b` that is nearest to a point. */
export function nearestOn(a: Point, b: Point, point: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const along = length > 0 ? ((point.x - a.x) * dx + (point.y - a.y) * dy) / length : 0;
  return between(a, b, Math.min(1, Math.max(0, along)));
}

/** How far a place is from the nearest of the pieces; infinite when none lies within `reach`. */
export function distanceTo(segments: Segments, point: Point, reach: number): number {
  const { ends, near } = segments;
  const here = { left: point.x, top: point.y, right: point.x, bottom: point.y };
  let nearest = Infinity;
  for (const index of near(widened(here, reach))) {
    const away = distance(point, nearestOn(fromOf(ends, index), toOf(ends, index), point));
    if (away <= reach && away < nearest) nearest = away;
  }
  return nearest;
}

/** Twice the area of the triangle a, b, c, positive when it runs clockwise on the canvas. */
export function turn(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/**
 * Where two pieces are nearest to each other; where they cross, if they do. Of pieces that run beside each other, to
 * within `alike`, the middle of the stretch for which they do.
 */
export function nearestPlaces(
  a: Point,
  b: Point,
  c: Point,
  d: Point,
  alike: number,
): { readonly gap: number; readonly on: Point; readonly onOther: Point } {
  const [ofA, ofB] = [turn(c, d, a), turn(c, d, b)];
  if (ofA * ofB < 0 && turn(a, b, c) * turn(a, b, d) < 0) {
    const crossing = between(a, b, ofA / (ofA - ofB));
    return { gap: 0, on: crossing, onOther: crossing };
  }
  const gaps = [gapTo(c, d, a), gapTo(c, d, b), gapTo(a, b, c), gapTo(a, b, d)] as const;
  const gap = Math.min(...gaps);
  const places = [
    [a, nearestOn(c, d, a)],
    [b, nearestOn(c, d, b)],
    [nearestOn(a, b, c), c],
    [nearestOn(a, b, d), d],
  ] as const;
  const nearest = places.filter((_, index) => (gaps[index] ?? Infinity) <= gap + alike);
  return {
    gap,
    on: middleOf(nearest.map(([on]) => on)),
    onOther: middleOf(nearest.map(([, onOther]) => onOther)),
  };
}

/** Of a stretch however often its places are met: corners are by both sides that end there. */
export function middleOf(points: readonly Point[]): Point {
  return boxCentre(boxOfPoints(points));
}

/** Without a point in between: it is asked for every two pieces that are near. */
function gapTo(a: Point, b: Point, point: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = dx * dx + dy * dy;
  const along = length > 0 ? ((point.x - a.x) * dx + (point.y - a.y) * dy) / length : 0;
  const part = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - a.x - part * dx, point.y - a.y - part * dy);
}
