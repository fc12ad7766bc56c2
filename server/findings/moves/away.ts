import type { Point } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import { type Shift, roundedOn } from './shift.js';

/** A direction with less than this of the way in it gets an object nowhere. */
const ALONG = 0.35;
/** So much farther than the limit, part of the diagonal, so that rounding does not bring it back. */
const BEYOND = 0.001;

/**
 * Straight shifts of an object, across or down, that take it by a distance along a direction: the more direct one
 * first, each then twice as far. Canvas units.
 */
export function shiftsAlong(
  object: number,
  direction: Point,
  distance: number,
  canvas: Pick<Canvas, 'unit' | 'diagonal'>,
): readonly Shift[] {
  const wanted = distance + BEYOND * canvas.diagonal;
  const axes = [
    { part: direction.x, shift: (far: number): Shift => ({ object, right: far, down: 0 }) },
    { part: direction.y, shift: (far: number): Shift => ({ object, right: 0, down: far }) },
  ]
    .filter(({ part }) => Math.abs(part) >= ALONG)
    .sort((one, other) => Math.abs(other.part) - Math.abs(one.part));
  return [1, 2].flatMap((times) =>
    axes.map(({ part, shift }) => shift(roundedOn((times * wanted) / part, canvas))),
  );
}

export function opposite({ x, y }: Point): Point {
  return { x: -x, y: -y };
}
