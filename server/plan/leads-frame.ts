import { type Point, between, distance } from './geometry/point.js';

/** The canvas, in its own units, from its upper left corner. */
export interface Frame {
  readonly width: number;
  readonly height: number;
}

/** Part of the diagonal within which a place is at an edge or a corner of the canvas. */
export const AT_EDGE = 0.01;
/** A line that bends by more has come to another edge of its object; degrees. */
const MOST_BEND = 30;
/** Part of the diagonal by which places may differ through rounding and be the same. */
const ROUNDING = 1e-9;

/**
 * The way from where a line ends on through points up to the edge of the canvas, cut off there, or up to a corner of
 * its own within 1 % of the diagonal of there; nothing where it bends by more than 30 degrees before, or is there
 * already.
 */
export function onToFrame(
  before: Point,
  end: Point,
  points: readonly Point[],
  frame: Frame,
): readonly Point[] {
  const diagonal = Math.hypot(frame.width, frame.height);
  if (inside(end, frame) <= ROUNDING * diagonal) return [];
  const way: Point[] = [];
  let [from, at] = [before, end];
  for (const point of points) {
    if (distance(at, point) === 0) continue;
    if (bend(before, end, at, point) > MOST_BEND) {
      const isCorner = bend(from, at, at, point) > MOST_BEND;
      return isCorner && inside(at, frame) <= AT_EDGE * diagonal ? way : [];
    }
    if (inside(point, frame) <= ROUNDING * diagonal) return [...way, atFrame(at, point, frame)];
    way.push(point);
    [from, at] = [at, point];
  }
  return [];
}

/** How far a place lies from the nearest edge of the canvas; less than nothing off it. */
function inside({ x, y }: Point, { width, height }: Frame): number {
  return Math.min(x, width - x, y, height - y);
}

/** Where a stretch that begins on the canvas and ends on its edge or off it meets that edge. */
function atFrame(from: Point, to: Point, { width, height }: Frame): Point {
  const part = (start: number, end: number, side: number): number =>
    end > side ? (side - start) / (end - start) : end < 0 ? start / (start - end) : 1;
  return between(from, to, Math.min(part(from.x, to.x, width), part(from.y, to.y, height)));
}

/** Between the directions of two stretches, degrees 0 to 180. */
function bend(a: Point, b: Point, c: Point, d: Point): number {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  return (Math.atan2(Math.abs(ux * vy - uy * vx), ux * vx + uy * vy) * 180) / Math.PI;
}
