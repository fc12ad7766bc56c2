import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { quoted } from './words.js';

/** `12°` */
export function degreesInWords(degrees: number): string {
  return `${plainNumber(degrees, degrees < 10 ? 1 : 0)}°`;
}

/** Where a place lies from another: `above`, `to the left of`. */
export function lies(place: Point, from: Point): string {
  const [dx, dy] = [place.x - from.x, place.y - from.y];
  if (Math.abs(dx) > Math.abs(dy)) return dx < 0 ? 'to the left of' : 'to the right of';
  return dy < 0 ? 'above' : 'below';
}

/** The name of a lead as it stands in the text. */
export function leadName({ leads }: Plan, index: number): string {
  return quoted(leads[index]?.name ?? '');
}
