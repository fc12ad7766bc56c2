import type { Colour, Lab } from './model.js';

/**
 * Munsell value (0 black to 10 white) to luminous reflectance Y in %, by the quintic of ASTM D1535.
 * A value outside 0 to 10 is taken as the nearer end.
 */
export function luminousReflectance(value: number): number {
  const v = Math.min(10, Math.max(0, value));
  return v * (1.1914 + v * (-0.22533 + v * (0.23352 + v * (-0.020484 + v * 0.00081939))));
}

function reflectanceSlope(v: number): number {
  return 1.1914 + v * (-0.45066 + v * (0.70056 + v * (-0.081936 + v * 0.00409695)));
}

/**
 * Luminous reflectance Y in % to Munsell value: the inverse of `luminousReflectance`, to 1e-9.
 * Y outside 0 to 100 is taken as the nearer end, so the result lies in 0 to 10.
 */
export function munsellValue(reflectancePercent: number): number {
  if (!(reflectancePercent > 0)) return 0;
  if (reflectancePercent >= 100) return 10;
  // A tenth of L* is never off by more than 0.3, and the quintic rises throughout, so Newton settles in a few steps.
  let value = lightnessOf(reflectancePercent) / 10;
  for (let round = 0; round < 20; round++) {
    const step = (luminousReflectance(value) - reflectancePercent) / reflectanceSlope(value);
    value = Math.min(10, Math.max(0, value - step));
    if (Math.abs(step) < 1e-12) break;
  }
  return value;
}

const KAPPA = 24389 / 27;
const LINEAR_BELOW_PERCENT = (216 / 24389) * 100;

/** CIE lightness L* (0 to 100) of luminous reflectance Y in %. CIE 15, colorimetry. */
export function lightnessOf(reflectancePercent: number): number {
  const y = reflectancePercent / 100;
  return reflectancePercent > LINEAR_BELOW_PERCENT ? 116 * Math.cbrt(y) - 16 : KAPPA * y;
}

/** Luminous reflectance Y in % of CIE lightness L* (0 to 100): the inverse of `lightnessOf`. */
export function reflectanceOfLightness(lightness: number): number {
  return lightness > 8 ? 100 * ((lightness + 16) / 116) ** 3 : (100 * lightness) / KAPPA;
}

/** CIE lightness L* of a Munsell value. */
export function lightnessOfValue(value: number): number {
  return lightnessOf(luminousReflectance(value));
}

/** Munsell value of a CIELAB colour: hue and chroma play no part in it. */
export function valueOfLab([lightness]: Lab): number {
  return munsellValue(reflectanceOfLightness(lightness));
}

/** Munsell value of a colour, 0 to 10. */
export function valueOf(colour: Colour): number {
  return valueOfLab(colour.lab);
}

/**
 * Munsell value in the middle of a step of a scale; step 1 is the darkest. Five steps are 1, 3, 5, 7, 9.
 * `steps` is 2 to 11 in a plan; `step` may be a fraction, as in step 2.5 between two steps.
 */
export function stepValue(step: number, steps: number): number {
  return (10 * (step - 0.5)) / steps;
}

/** Where a Munsell value lies on a scale, as a fractional step: the inverse of `stepValue`. */
export function fractionalStep(value: number, steps: number): number {
  return (value * steps) / 10 + 0.5;
}

/** The step of a scale, 1 to `steps`, that a Munsell value falls in; on the border of two, the lighter. */
export function nearestStep(value: number, steps: number): number {
  return Math.min(steps, Math.max(1, Math.round(fractionalStep(value, steps))));
}
