import { computedColour } from '../../plan/colour/model.js';
import type { Colour } from '../../plan/colour/colour.js';

/** From weak to strong: an even fall of lightness, so that they are read in their order without their hue. */
const BANDS: readonly Colour[] = [
  computedColour([80, 10, 14]),
  computedColour([71, 20, 22]),
  computedColour([61, 31, 28]),
  computedColour([51, 43, 33]),
];

export interface Band {
  /** Part of the strongest at which it begins; it ends where the next begins, the last at the strongest. */
  readonly from: number;
  readonly to: number;
  readonly colour: Colour;
}

/** Equal parts of the strongest; what is below the first is left bare. */
export const bands: readonly Band[] = BANDS.map((colour, index) => ({
  from: (index + 1) / (BANDS.length + 1),
  to: (index + 2) / (BANDS.length + 1),
  colour,
}));
