import { labHueDegrees } from '../../plan/colour/model.js';
import { munsellToLab } from '../../plan/colour/munsell.js';

/**
 * Munsell's hues by the letters of their families, at the middle of each: his hue circle begins at 0R and has 3.6
 * degrees a step.
 */
const FAMILIES = [
  { name: 'red', family: 0 },
  { name: 'orange', family: 1 },
  { name: 'yellow', family: 2 },
  { name: 'green', family: 4 },
  { name: 'blue', family: 6 },
  { name: 'purple', family: 8 },
] as const;

const DEGREES_A_FAMILY = 36;

/**
 * Where the hues lie on the wheel, in degrees of CIELAB: those of Munsell's 5R, 5YR, 5Y, 5G, 5B and 5P at value 5,
 * chroma 6.
 */
export const munsellHueDegrees: readonly { readonly name: string; readonly hueDegrees: number }[] =
  FAMILIES.map(({ name, family }) => ({
    name,
    hueDegrees: labHueDegrees(munsellToLab((family + 0.5) * DEGREES_A_FAMILY, 5, 6)),
  }));
