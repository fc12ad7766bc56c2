import type { Point } from '../../plan/geometry/point.js';

/** Figures and places that differ by less than this part are the same: clipping rounds, and a mirror adds otherwise. */
const ALIKE = 1e-5;

/** A figure in steps of what is alike to the eye, so that two sort the same in a mirror; `whole` is its measuring stick. */
export function inSteps(figure: number, whole: number): number {
  return Math.round(figure / (ALIKE * whole));
}

interface CanvasSize {
  readonly width: number;
  readonly diagonal: number;
}

/**
 * Tells places apart that nothing else does, the same in a mirror: the higher one first, of those as high the one nearer
 * to the upright middle of the canvas. Canvas units.
 */
export function higherFirst({ width, diagonal }: CanvasSize): (one: Point, other: Point) => number {
  const fromMiddle = ({ x }: Point): number => inSteps(Math.abs(x - width / 2), diagonal);
  return (one, other) =>
    inSteps(one.y, diagonal) - inSteps(other.y, diagonal) || fromMiddle(one) - fromMiddle(other);
}
