import { type Lab, labChroma, labHueDegrees } from '../../plan/colour/model.js';
import type { PaintFamily } from '../../plan/materials/pigments.js';

const FAMILIES: readonly (readonly [letters: RegExp, family: PaintFamily])[] = [
  [/^[PN]W\d/i, 'white'],
  [/^[PN]Y\d/i, 'yellow'],
  [/^[PN]O\d/i, 'orange'],
  [/^[PN]R\d/i, 'red'],
  [/^[PN]V\d/i, 'violet'],
  [/^[PN]Br\d/i, 'brown'],
  [/^[PN]Bk\d/i, 'black'],
  [/^[PN]B\d/i, 'blue'],
  [/^[PN]G\d/i, 'green'],
];

/** The family that a Colour Index name says: PY151 is a yellow. */
export function familyOf(index: string): PaintFamily | undefined {
  return FAMILIES.find(([letters]) => letters.test(index))?.[1];
}

/** Under this C*ab a paint is a white, a grey or a black rather than a hue. From memory. */
const LEAST_HUE = 8;

/** Whether a paint of this full tone is one of the whites. From memory of tubes: titanium white has L* 97. */
export function seemsWhite(full: Lab): boolean {
  return full[0] >= 90 && labChroma(full) < LEAST_HUE;
}

/**
 * Where families of paint begin on CIELAB's circle of hues, degrees, told by a tint with white. From memory of tube
 * paints.
 */
const HUE_FAMILIES: readonly (readonly [from: number, family: PaintFamily])[] = [
  [0, 'red'],
  [38, 'orange'],
  [66, 'yellow'],
  [112, 'green'],
  [218, 'blue'],
  [296, 'violet'],
  [336, 'red'],
];

/**
 * The family of a paint by its looks. The hue is that of its tint, since the full tone of many paints is too dark to
 * tell; yellows and oranges lose theirs in white, and are known by their full tone. Undefined for a grey.
 */
export function familyByLooks(full: Lab, tint: Lab): PaintFamily | undefined {
  if (seemsWhite(full)) return 'white';
  if (labChroma(tint) < LEAST_HUE && labChroma(full) < LEAST_HUE) return full[0] < 40 ? 'black' : undefined;
  const hue = labHueDegrees(full);
  if (full[0] < 50 && labChroma(full) > LEAST_HUE && labChroma(full) < 40 && hue > 40 && hue < 90) {
    return 'brown';
  }
  const told = full[0] > 50 ? hue : labHueDegrees(tint);
  return HUE_FAMILIES.findLast(([from]) => told >= from)?.[1];
}

/** Borders between the warm and the cool side of each primary, CIELAB hue in degrees. From memory of tube paints. */
const YELLOW_WARM_BELOW = 86;
const RED_WARM_FROM = 24;
const RED_WARM_TO = 66;
const BLUE_WARM_FROM = 267;

/**
 * The side to which a yellow, red or blue leans by its hue: yellow and red are warm where they lean to orange, blue
 * where it leans to violet, as painters say it. Yellow and red by the full tone, blue by the tint.
 */
export function sideByHue(family: 'yellow' | 'red' | 'blue', full: Lab, tint: Lab): 'warm' | 'cool' {
  const hue = labHueDegrees(full);
  switch (family) {
    case 'yellow':
      return hue < YELLOW_WARM_BELOW ? 'warm' : 'cool';
    case 'red':
      return hue >= RED_WARM_FROM && hue < RED_WARM_TO ? 'warm' : 'cool';
    case 'blue':
      return labHueDegrees(tint) >= BLUE_WARM_FROM ? 'warm' : 'cool';
  }
}
