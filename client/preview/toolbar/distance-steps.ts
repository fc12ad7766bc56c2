import { DISTANCE_LIMITS_MILLIMETRES } from '../../../server/drawing/viewing.js';

/** Steps to either side of the usual distance; six double it or halve it, so the ends are a quarter and four times. */
export const farthestStep = 12;
const stepsToDouble = 6;

/** The distance at a step in millimetres, to two figures; `undefined` for the usual one, which follows the canvas. */
export function distanceAt(step: number, usualMillimetres: number): number | undefined {
  if (step === 0) return undefined;
  const millimetres = Number((usualMillimetres * 2 ** (step / stepsToDouble)).toPrecision(2));
  const { least, most } = DISTANCE_LIMITS_MILLIMETRES;
  return Math.min(most, Math.max(least, millimetres));
}

/** The step nearest to a distance. */
export function stepOf(millimetres: number | undefined, usualMillimetres: number): number {
  if (millimetres === undefined) return 0;
  const step = Math.round(stepsToDouble * Math.log2(millimetres / usualMillimetres));
  return Math.min(farthestStep, Math.max(-farthestStep, step));
}
