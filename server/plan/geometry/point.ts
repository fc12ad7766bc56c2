import type { Side } from '../../../grammar/index.js';

/** A place on or off the canvas. Canvas units, x to the right, y down from the upper left corner. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** An upright rectangle; `left <= right` and `top <= bottom`. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box of something that has no points. */
export const NO_BOX: Box = { left: 0, top: 0, right: 0, bottom: 0 };

/**
 * Largest coordinate taken, in canvas units. Beyond it a shape is as good as unreadable, and rounding would show
 * in the areas of what lies on the canvas.
 */
const LARGEST_COORDINATE = 1e9;

/** True for a finite number no larger than `LARGEST_COORDINATE`. */
export function isUsable(value: number): boolean {
  return Math.abs(value) <= LARGEST_COORDINATE;
}

/** True when both coordinates can be drawn. */
export function isUsablePoint(point: Point): boolean {
  return isUsable(point.x) && isUsable(point.y);
}

/**
 * The length of the way across and down, in the steps in which `Math.hypot` takes any number of them, to the last bit.
 */
export function hypotenuse(across: number, down: number): number {
  const one = Math.abs(across);
  const other = Math.abs(down);
  const most = one > other ? one : other;
  if (!(most > 0 && most < Infinity)) return Math.hypot(one, other);
  const x = one / most;
  const y = other / most;
  return Math.sqrt(x * x + y * y) * most;
}

export function distance(a: Point, b: Point): number {
  return hypotenuse(b.x - a.x, b.y - a.y);
}

/** The way from one point to another. */
export function toward(from: Point, to: Point): Point {
  return { x: to.x - from.x, y: to.y - from.y };
}

/** The area that two ways span, twice a triangle's: above 0 where the second turns clockwise from the first. */
export function cross(one: Point, other: Point): number {
  return one.x * other.y - one.y * other.x;
}

export function samePoint(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

/** The point at `part` of the way from `a` (0) to `b` (1). */
export function between(a: Point, b: Point, part: number): Point {
  return { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part };
}

export function boxWidth(box: Box): number {
  return box.right - box.left;
}

export function boxHeight(box: Box): number {
  return box.bottom - box.top;
}

export function boxDiagonal(box: Box): number {
  return Math.hypot(boxWidth(box), boxHeight(box));
}

export function boxCentre(box: Box): Point {
  return { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
}

/** How long the line through the points is, in their order. */
export function lengthAlong(points: readonly Point[]): number {
  return points.reduce(
    (sum, point, index) => sum + distance(points[Math.max(0, index - 1)] ?? point, point),
    0,
  );
}

/** Smallest box around all points, `NO_BOX` for none. */
export function boxOfPoints(points: Iterable<Point>): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < top) top = y;
    if (y > bottom) bottom = y;
  }
  return left <= right ? { left, top, right, bottom } : NO_BOX;
}

/** Smallest box round a box, if there is one, and another. */
export function boxRound(one: Box | undefined, other: Box): Box {
  if (!one) return other;
  return {
    left: Math.min(one.left, other.left),
    top: Math.min(one.top, other.top),
    right: Math.max(one.right, other.right),
    bottom: Math.max(one.bottom, other.bottom),
  };
}

/** True when `inner` lies in `outer`, borders included. */
export function boxContains(outer: Box, inner: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom
  );
}

/** True when the two boxes share some area; touching along a border is not enough. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** The two ends of one edge of a box, left to right or top to bottom. */
export function edgeOfBox({ left, top, right, bottom }: Box, side: Side): readonly [Point, Point] {
  switch (side) {
    case 'left':
      return [
        { x: left, y: top },
        { x: left, y: bottom },
      ];
    case 'right':
      return [
        { x: right, y: top },
        { x: right, y: bottom },
      ];
    case 'top':
      return [
        { x: left, y: top },
        { x: right, y: top },
      ];
    case 'bottom':
      return [
        { x: left, y: bottom },
        { x: right, y: bottom },
      ];
  }
}
