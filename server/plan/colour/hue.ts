import { marked } from '../../../grammar/index.js';
import { isNeutral, labHueDegrees, type Colour } from './model.js';
import { munsellHueName, toMunsell } from './munsell.js';

/** The circle on which hues are opposed: the painters' red, yellow and blue wheel, or Munsell's. */
export type Wheel = 'painters' | 'munsell';

/**
 * The twelve hues of the painters' wheel, 30 degrees apart, with the CIELAB hue angle (degrees, D65) at which a
 * painter would call a colour by that name. From memory of common tube colours (a cadmium red near 30, a cadmium
 * yellow near 90, a cobalt blue near 270): no published table gives them.
 */
const PAINTERS_HUES = [
  { name: marked('red'), labHueDegrees: 30 },
  { name: marked('red-orange'), labHueDegrees: 45 },
  { name: marked('orange'), labHueDegrees: 60 },
  { name: marked('yellow-orange'), labHueDegrees: 75 },
  { name: marked('yellow'), labHueDegrees: 92 },
  { name: marked('yellow-green'), labHueDegrees: 115 },
  { name: marked('green'), labHueDegrees: 150 },
  { name: marked('blue-green'), labHueDegrees: 205 },
  { name: marked('blue'), labHueDegrees: 270 },
  { name: marked('blue-violet'), labHueDegrees: 295 },
  { name: marked('violet'), labHueDegrees: 318 },
  { name: marked('red-violet'), labHueDegrees: 355 },
] as const;

const SECTOR_DEGREES = 360 / PAINTERS_HUES.length;

/** An angle brought into 0 to 360. */
export function turn(degrees: number): number {
  return ((degrees % 360) + 360) % 360;
}

function sector(index: number): { readonly from: number; readonly width: number } {
  const here = PAINTERS_HUES[index % 12] ?? PAINTERS_HUES[0];
  const next = PAINTERS_HUES[(index + 1) % 12] ?? PAINTERS_HUES[0];
  return { from: here.labHueDegrees, width: turn(next.labHueDegrees - here.labHueDegrees) };
}

/** Position on the painters' wheel (red 0, yellow 120, blue 240) of a CIELAB hue angle, straight between hues. */
export function paintersHueDegrees(labHue: number): number {
  for (let index = 0; index < PAINTERS_HUES.length; index++) {
    const { from, width } = sector(index);
    const past = turn(labHue - from);
    if (past < width) return (index + past / width) * SECTOR_DEGREES;
  }
  return 0;
}

/** CIELAB hue angle at a position of the painters' wheel: the inverse of `paintersHueDegrees`. */
export function labHueOnPaintersWheel(hueDegrees: number): number {
  const place = turn(hueDegrees) / SECTOR_DEGREES;
  const index = Math.floor(place);
  const { from, width } = sector(index);
  return turn(from + (place - index) * width);
}

/**
 * Position of a colour on a wheel in degrees, 0 to 360: on the painters' wheel red is 0, yellow 120, blue 240; on
 * Munsell's as in `Munsell.hueDegrees`. Undefined for a neutral, which has no hue.
 */
export function hueOn(colour: Colour, wheel: Wheel): number | undefined {
  if (isNeutral(colour)) return undefined;
  switch (wheel) {
    case 'painters':
      return paintersHueDegrees(labHueDegrees(colour.lab));
    case 'munsell':
      return toMunsell(colour).hueDegrees;
  }
}

/** The opposite position on a wheel. Both wheels are laid out so that complements face each other. */
export function complementOf(hueDegrees: number): number {
  return turn(hueDegrees + 180);
}

/** The shorter way round between two positions of one wheel, 0 to 180 degrees. */
export function hueDistance(oneDegrees: number, otherDegrees: number): number {
  const apart = turn(oneDegrees - otherDegrees);
  return Math.min(apart, 360 - apart);
}

/** What a position of a wheel is called: `red-orange`, or `7.5R` on Munsell's circle. */
export function hueName(hueDegrees: number, wheel: Wheel): string {
  switch (wheel) {
    case 'painters':
      return (PAINTERS_HUES[Math.round(turn(hueDegrees) / SECTOR_DEGREES) % 12] ?? PAINTERS_HUES[0]).name;
    case 'munsell':
      return munsellHueName(hueDegrees);
  }
}

/** Hues spread all round a wheel have no mean: below this part of their weights they are taken to cancel out. */
const LEAST_AGREEMENT = 0.1;

/**
 * The weighted mean of positions on one wheel, degrees 0 to 360: the direction of the sum of the hues as arrows of
 * their weight. Undefined when there is no weight, or when the hues are opposed so that a tenth of it or less is left.
 */
export function meanHue(
  hues: readonly { readonly hueDegrees: number; readonly weight: number }[],
): number | undefined {
  let across = 0;
  let up = 0;
  let total = 0;
  for (const { hueDegrees, weight } of hues) {
    const radians = (hueDegrees * Math.PI) / 180;
    across += weight * Math.cos(radians);
    up += weight * Math.sin(radians);
    total += weight;
  }
  if (!(total > 0) || Math.hypot(across, up) <= LEAST_AGREEMENT * total) return undefined;
  return turn((Math.atan2(up, across) * 180) / Math.PI);
}
