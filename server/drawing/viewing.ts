import type { Canvas } from '../plan/plan.js';
import type { Viewing } from './scene.js';

/** Where a picture is usually looked at as a whole, in its diagonals; common practice, from memory, no source. */
const USUAL_DIAGONALS = 3;
const BLUR_DEGREES = 0.25;
const MILLIMETRES_PER_FOOT = 304.8;

/** Nearer and farther than a room allows; also what is taken from others as a distance. */
export const DISTANCE_LIMITS_MILLIMETRES = { least: 1, most: 1_000_000 } as const;

/** From where a picture is looked at: from the distance asked for, else from three times its diagonal. */
export function viewingOf(
  { diagonal, millimetresPerUnit, unit }: Canvas,
  distanceMillimetres?: number,
): Viewing {
  const usualMillimetres = USUAL_DIAGONALS * diagonal * millimetresPerUnit;
  const { least, most } = DISTANCE_LIMITS_MILLIMETRES;
  return {
    distanceMillimetres: Math.min(most, Math.max(least, distanceMillimetres ?? usualMillimetres)),
    usualMillimetres,
    unit: unit === 'in' ? 'ft' : 'm',
  };
}

/**
 * How much half-shut eyes blur a picture, as the standard deviation of a Gaussian in canvas units: the distance x
 * the tangent of a quarter of a degree. A heuristic, from memory: it takes away what is smaller than about a degree
 * of the view, about the width of the little finger at arm's length, and leaves the masses.
 */
export function blurAt({ distanceMillimetres }: Viewing, { millimetresPerUnit }: Canvas): number {
  return (distanceMillimetres / millimetresPerUnit) * Math.tan((BLUR_DEGREES * Math.PI) / 180);
}

/** `2.8 m`, `9.2 ft` */
export function distanceInWords(millimetres: number, unit: Viewing['unit']): string {
  const value = millimetres / (unit === 'ft' ? MILLIMETRES_PER_FOOT : 1000);
  return `${Number(value.toPrecision(2))} ${unit}`;
}
