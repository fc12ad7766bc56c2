import type { Lab } from '../../plan/colour/model.js';

const TO_THE_7TH = 25 ** 7;
const degrees = (angle: number) => (angle * Math.PI) / 180;
const COS_6 = Math.cos(degrees(6));
const SIN_6 = Math.sin(degrees(6));
const COS_30 = Math.cos(degrees(30));
const SIN_30 = Math.sin(degrees(30));
const COS_63 = Math.cos(degrees(63));
const SIN_63 = Math.sin(degrees(63));
const COS_275 = Math.cos(degrees(275));
const SIN_275 = Math.sin(degrees(275));
/** A colour so grey that its hue is left out, and the most that it could take off: 2 sin 60° times 2 sqrt(C'1 C'2). */
const GREY = 1e-6;
const MOST_TURNED = 3.5;
/** Farther than this from the hue 275 the rotation term is under 3e-4 of what it turns. */
const COS_TURNED = Math.cos(degrees(75));
const UNTURNED = 3e-4;

/** The weighting of lightness in CIEDE2000 where the mean of two L* is `mean`. */
function lightnessWeight(mean: number): number {
  const square = (mean - 50) ** 2;
  return 1 + (0.015 * square) / Math.sqrt(20 + square);
}

/**
 * CIEDE2000 between two colours is at least this, whatever their a* and b*: its chroma and hue terms make a positive
 * form, since |R_T| is at most 2 sin 60° < 2. It grows with the distance of both L*: its weighting S_L grows by less
 * than 0.0083 for each L* that one of them moves, and is at least 1.
 */
export function leastDifference(one: number, other: number): number {
  return Math.abs(one - other) / lightnessWeight((one + other) / 2);
}

/**
 * Whether CIEDE2000 between two colours could be `limit` or less: a lower bound of it in a fraction of the time, right
 * where the rotation of blues plays a part, and a few 1e-4 of itself low elsewhere. No pair within the limit is
 * refused.
 *
 * Sharma, Wu, Dalal 2005. The mean hue is taken as the direction between both colours, its cosines by multiple angles,
 * and the hue term from a', b' and the chromas, so that no angle needs to be worked out.
 */
export function mayBeWithin(limit: number, one: Lab, l2: number, a2: number, b2: number): boolean {
  const [l1, a1, b1] = one;
  // With a little to spare for rounding.
  const most = limit * limit * (1 + 1e-6) + 1e-6;
  const lightness = (l2 - l1) / lightnessWeight((l1 + l2) / 2);
  const chroma1 = Math.sqrt(a1 * a1 + b1 * b1);
  const chroma2 = Math.sqrt(a2 * a2 + b2 * b2);
  const g = 1.5 - 0.5 * weighed((chroma1 + chroma2) / 2);
  const x1 = g * a1;
  const x2 = g * a2;
  const c1 = Math.sqrt(x1 * x1 + b1 * b1);
  const c2 = Math.sqrt(x2 * x2 + b2 * b2);
  const mean = (c1 + c2) / 2;
  const chroma = (c2 - c1) / (1 + 0.045 * mean);
  const sofar = lightness * lightness + 0.25 * chroma * chroma;
  if (sofar > most) return false;
  if (c1 < GREY || c2 < GREY) {
    const turned = MOST_TURNED * Math.abs(chroma) * Math.sqrt(c1 * c2);
    return lightness * lightness + chroma * chroma - turned <= most;
  }
  const alongX = x1 / c1 + x2 / c2;
  const alongY = b1 / c1 + b2 / c2;
  const length = Math.sqrt(alongX * alongX + alongY * alongY);
  // Opposite hues have no mean; the exact formula decides.
  if (length < 1e-3) return true;
  const cos = alongX / length;
  const sin = alongY / length;
  const cos2 = 2 * cos * cos - 1;
  const sin2 = 2 * sin * cos;
  const cos3 = cos2 * cos - sin2 * sin;
  const sin3 = sin2 * cos + cos2 * sin;
  const cos4 = 2 * cos2 * cos2 - 1;
  const sin4 = 2 * sin2 * cos2;
  const t =
    1 -
    0.17 * (cos * COS_30 + sin * SIN_30) +
    0.24 * cos2 +
    0.32 * (cos3 * COS_6 - sin3 * SIN_6) -
    0.2 * (cos4 * COS_63 + sin4 * SIN_63);
  const apart = (x2 - x1) ** 2 + (b2 - b1) ** 2 - (c2 - c1) ** 2;
  const turn = x1 * b2 - x2 * b1;
  const hue = (Math.sign(turn) * Math.sqrt(Math.max(0, apart))) / (1 + 0.015 * mean * t);
  const plain = lightness * lightness + chroma * chroma + hue * hue;
  const product = chroma * hue;
  const near = cos * COS_275 + sin * SIN_275;
  if (near < COS_TURNED) return plain - UNTURNED * Math.abs(product) <= most;
  const off = Math.acos(Math.min(1, near)) / degrees(25);
  const rotation = -Math.sin(degrees(60) * Math.exp(-off * off)) * 2 * weighed(mean);
  return plain + rotation * product <= most;
}

/** sqrt(C^7 / (C^7 + 25^7)) */
function weighed(chroma: number): number {
  const square = chroma * chroma;
  const seventh = square * square * square * chroma;
  return Math.sqrt(seventh / (seventh + TO_THE_7TH));
}
