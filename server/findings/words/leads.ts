import { t } from '../../../grammar/index.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { quoted } from './words.js';

/** `12°` */
export function degreesInWords(degrees: number): string {
  return `${plainNumber(degrees, degrees < 10 ? 1 : 0)}°`;
}

export type Bearing = 'above' | 'below' | 'to the left of' | 'to the right of';

/** Where a place lies from another. */
export function lies(place: Point, from: Point): Bearing {
  const [dx, dy] = [place.x - from.x, place.y - from.y];
  if (Math.abs(dx) > Math.abs(dy)) return dx < 0 ? 'to the left of' : 'to the right of';
  return dy < 0 ? 'above' : 'below';
}

/** `3 cm above it` */
export function fromIt(away: string, bearing: Bearing): string {
  switch (bearing) {
    case 'above':
      return t('{0} above it', away);
    case 'below':
      return t('{0} below it', away);
    case 'to the left of':
      return t('{0} to the left of it', away);
    case 'to the right of':
      return t('{0} to the right of it', away);
  }
}

/** `3 cm above the focal point` */
export function fromFocalPoint(away: string, bearing: Bearing): string {
  switch (bearing) {
    case 'above':
      return t('{0} above the focal point', away);
    case 'below':
      return t('{0} below the focal point', away);
    case 'to the left of':
      return t('{0} to the left of the focal point', away);
    case 'to the right of':
      return t('{0} to the right of the focal point', away);
  }
}

/** The name of a lead as it stands in the text. */
export function leadName({ leads }: Plan, index: number): string {
  return quoted(leads[index]?.name ?? '');
}
