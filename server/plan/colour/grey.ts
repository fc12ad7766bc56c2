import { computedColour, type Colour } from './model.js';
import { lightnessOfValue } from './value.js';

/** The neutral grey of a Munsell value. */
export function greyOf(value: number): Colour {
  return computedColour([lightnessOfValue(value), 0, 0]);
}

/** `part` of the way from one colour to the other in CIELAB: 0 gives `from`, 1 `to`. */
export function mix(from: Colour, to: Colour, part: number): Colour {
  const at = (index: 0 | 1 | 2) => from.lab[index] + (to.lab[index] - from.lab[index]) * part;
  return computedColour([at(0), at(1), at(2)]);
}
