import { apply, type Matrix } from '../../plan/geometry/matrix.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';

/** How places on the canvas of one plan are held against those on the canvas of another. */
export interface Frame {
  /** Takes places of the earlier canvas to the later one, in the later one's units. */
  readonly matrix: Matrix;
  /** Both canvases are as large, whatever they are measured in: then lengths can be told, else parts of the canvas. */
  readonly isSameSize: boolean;
  readonly canvas: Canvas;
}

/** Part of a side by which a canvas in inches and one in centimetres may differ through rounding. */
const SAME_SIDE = 0.0005;

/** On canvases of different sizes a place is the same when it lies at the same parts of width and height. */
export function frameOf(earlier: Canvas, later: Canvas): Frame {
  const across = (later.width * later.millimetresPerUnit) / (earlier.width * earlier.millimetresPerUnit);
  const down = (later.height * later.millimetresPerUnit) / (earlier.height * earlier.millimetresPerUnit);
  return {
    matrix: { a: later.width / earlier.width, b: 0, c: 0, d: later.height / earlier.height, e: 0, f: 0 },
    isSameSize: Math.abs(across - 1) < SAME_SIDE && Math.abs(down - 1) < SAME_SIDE,
    canvas: later,
  };
}

/** A place of the earlier canvas on the later one. */
export function onLater({ matrix }: Frame, place: Point): Point {
  return apply(matrix, place);
}
