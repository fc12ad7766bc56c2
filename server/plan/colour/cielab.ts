import type { Lab } from './model.js';

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

/** The curve of CIELAB, of a part of white. CIE 15. */
export function fold(part: number): number {
  return part > EPSILON ? Math.cbrt(part) : (KAPPA * part + 16) / 116;
}

/** The part of white that `fold` gave a figure for. */
export function unfold(folded: number): number {
  const cube = folded * folded * folded;
  return cube > EPSILON ? cube : (116 * folded - 16) / KAPPA;
}

/** CIELAB of X, Y and Z, each as a part of that of white. */
export function labOfParts(x: number, y: number, z: number): Lab {
  const middle = fold(y);
  return [116 * middle - 16, 500 * (fold(x) - middle), 200 * (middle - fold(z))];
}

/** X, Y and Z of a CIELAB colour, each as a part of that of white: the inverse of `labOfParts`. */
export function partsOfLab([lightness, a, b]: Lab): [number, number, number] {
  const middle = (lightness + 16) / 116;
  return [unfold(middle + a / 500), unfold(middle), unfold(middle - b / 200)];
}
