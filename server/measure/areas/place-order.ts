import type { Point } from '../../plan/geometry/point.js';

/**
 * Figures and places that differ by less than this part are the same: clipping rounds, and a mirror adds otherwise. No
 * round number, so that no figure that a plan gives lies between two steps, on one or the other by chance.
 */
const ALIKE = 1.0073e-5;

/**
 * A figure in steps of what is alike to the eye, so that two sort the same in a mirror; `whole` is its measuring stick.
 */
export function inSteps(figure: number, whole: number): number {
  return Math.round(figure / (ALIKE * whole));
}

/** A share to sort by: of those that differ by rounding alone the order of the plan decides. */
export function inBillionths(share: number): number {
  return Math.round(share * 1e9);
}

interface CanvasSize {
  readonly width: number;
  readonly diagonal: number;
}

/**
 * Tells places apart that nothing else does, the same in a mirror: the higher one first, of those as high the one
 * nearer to the upright middle of the canvas. Canvas units.
 */
export function higherFirst({ width, diagonal }: CanvasSize): (one: Point, other: Point) => number {
  const fromMiddle = ({ x }: Point): number => inSteps(Math.abs(x - width / 2), diagonal);
  return (one, other) =>
    inSteps(one.y, diagonal) - inSteps(other.y, diagonal) || fromMiddle(one) - fromMiddle(other);
}
