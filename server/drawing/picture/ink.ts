import type { Colour } from '../../plan/colour/colour.js';
import { computedColour } from '../../plan/colour/model.js';
import { toHex } from '../../plan/colour/srgb.js';
import { reflectanceOfLightness } from '../../plan/colour/value.js';
import type { Hex } from '../scene.js';

export { greyOf, mix } from '../../plan/colour/grey.js';

/** Graphite and chalk: what a line on the picture is drawn with, whatever the page's theme. */
const GRAPHITE = computedColour([14, 0.5, 2]);
const CHALK = computedColour([96, 0.3, 2.5]);
/** Sanguine, for what leads the eye; the second is for dark grounds. */
const SANGUINE = computedColour([38, 45, 33]);
const PALE_SANGUINE = computedColour([76, 32, 24]);

const hexes = new WeakMap<Colour, Hex>();

/** Worked out once for each colour. */
export function hexOf(colour: Colour): Hex {
  const hex = hexes.get(colour) ?? (toHex(colour) as Hex);
  hexes.set(colour, hex);
  return hex;
}

/** Contrast ratio of WCAG 2, 1 to 21. */
function contrast(one: Colour, other: Colour): number {
  const [a, b] = [one, other].map(({ lab }) => reflectanceOfLightness(lab[0]) / 100 + 0.05) as [
    number,
    number,
  ];
  return Math.max(a, b) / Math.min(a, b);
}

const lines = new WeakMap<Colour, Colour>();

/** Graphite or chalk, whichever stands out more against a colour. */
export function lineOn(colour: Colour): Colour {
  const known = lines.get(colour);
  if (known) return known;
  const line = contrast(GRAPHITE, colour) >= contrast(CHALK, colour) ? GRAPHITE : CHALK;
  lines.set(colour, line);
  return line;
}

/** The other of the two: what a line is laid on so that it reads over anything. */
export function beddingOn(colour: Colour): Colour {
  return lineOn(colour) === GRAPHITE ? CHALK : GRAPHITE;
}

/** The chalk for leads and the focal point. */
export function accentOn(colour: Colour): Colour {
  return contrast(SANGUINE, colour) >= contrast(PALE_SANGUINE, colour) ? SANGUINE : PALE_SANGUINE;
}
