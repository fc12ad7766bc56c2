import { type Point, isUsable } from './point.js';

/** An affine map, as SVG writes it: x' = a x + c y + e and y' = b x + d y + f. */
export interface Matrix {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

export type MirrorDirection = 'left to right' | 'top to bottom';

const ORIGIN: Point = { x: 0, y: 0 };

export const IDENTITY: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** Moves by (`x`, `y`). */
export function translate(x: number, y: number): Matrix {
  return { ...IDENTITY, e: x, f: y };
}

/** Turns by `degrees`, clockwise as seen on the canvas (y runs down), about a point. */
export function rotate(degrees: number, about: Point = ORIGIN): Matrix {
  const [cos, sin] = cosineAndSine(degrees);
  return aboutPoint({ a: cos, b: sin, c: -sin, d: cos, e: 0, f: 0 }, about);
}

/** Scales by `factorX` and `factorY`, `about` stays in place. */
export function scale(factorX: number, factorY: number = factorX, about: Point = ORIGIN): Matrix {
  return aboutPoint({ ...IDENTITY, a: factorX, d: factorY }, about);
}

/** Swaps left and right, or top and bottom, about the upright or level line through a point. */
export function mirror(direction: MirrorDirection, about: Point = ORIGIN): Matrix {
  return direction === 'left to right' ? scale(-1, 1, about) : scale(1, -1, about);
}

/** Slants by angles along x and along y, as SVG's skewX and skewY do. */
export function skew(degreesX: number, degreesY: number): Matrix {
  return { ...IDENTITY, c: tangent(degreesX), b: tangent(degreesY) };
}

/** The map that does `second` first and `first` after it: the matrix product `first` times `second`. */
export function multiply(first: Matrix, second: Matrix): Matrix {
  return {
    a: first.a * second.a + first.c * second.b,
    b: first.b * second.a + first.d * second.b,
    c: first.a * second.c + first.c * second.d,
    d: first.b * second.c + first.d * second.d,
    e: first.a * second.e + first.c * second.f + first.e,
    f: first.b * second.e + first.d * second.f + first.f,
  };
}

/** Where the map puts a point. */
export function apply(matrix: Matrix, { x, y }: Point): Point {
  return {
    x: matrix.a * x + matrix.c * y + matrix.e,
    y: matrix.b * x + matrix.d * y + matrix.f,
  };
}

/** True when every entry is a number that can be drawn with. */
export function isUsableMatrix({ a, b, c, d, e, f }: Matrix): boolean {
  return [a, b, c, d, e, f].every(isUsable);
}

function aboutPoint(matrix: Matrix, about: Point): Matrix {
  return multiply(multiply(translate(about.x, about.y), matrix), translate(-about.x, -about.y));
}

/** Quarter turns come out exact, so that an upright rectangle stays upright. */
function cosineAndSine(degrees: number): readonly [number, number] {
  const turn = ((degrees % 360) + 360) % 360;
  switch (turn) {
    case 0:
      return [1, 0];
    case 90:
      return [0, 1];
    case 180:
      return [-1, 0];
    case 270:
      return [0, -1];
    default:
      return [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  }
}

function tangent(degrees: number): number {
  return Math.tan((degrees * Math.PI) / 180);
}
