import { hueOn } from './hue.js';
import type { Colour } from './model.js';

export type Temperature = 'warm' | 'cool' | 'neutral';

/**
 * The middle of the warm half of the painters' wheel. Six of its twelve names are called warm, yellow round to
 * red-violet, and the other six cool, yellow-green round to violet (Itten, The Art of Color, 1961, cold-warm
 * contrast), so the warmest hue lies between red-orange and orange, the coolest between blue-green and blue, and the
 * borders half way between yellow and yellow-green and between violet and red-violet.
 */
const WARMEST_DEGREES = 45;

/**
 * Munsell chroma under which a colour is neutral: a grey beside which anything stronger looks warm or cool. Common
 * practice.
 */
export const LEAST_CHROMA = 1;

/**
 * How warm the hue of a colour is: 1 for the warmest, 0 on the border, -1 for the coolest; the cosine of its angle from
 * the warmest on the painters' wheel, whatever wheel a plan uses. Undefined for a colour without a hue.
 */
export function warmthOf(colour: Colour): number | undefined {
  const hue = hueOn(colour, 'painters');
  return hue === undefined ? undefined : Math.cos(((hue - WARMEST_DEGREES) * Math.PI) / 180);
}

/**
 * What a painter calls a colour of this warmth (see `warmthOf`) when it is painted at a Munsell chroma. A hue right on
 * the border counts as warm.
 */
export function temperatureOf(warmth: number | undefined, chroma: number): Temperature {
  if (warmth === undefined || chroma < LEAST_CHROMA) return 'neutral';
  return warmth >= 0 ? 'warm' : 'cool';
}
