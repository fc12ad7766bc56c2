import type { Lab } from '../../plan/colour/model.js';
import { type Absorbing, mix, opaqueSpectrum, ratioOfReflectance } from './kubelka-munk.js';
import { BANDS, labOfSpectrum, type Spectrum } from './spectra/bands.js';
import { MEASURED_PAINTS } from './spectra/measured.js';
import { smoothSpectrum } from './spectra/smooth.js';

/** A tint that the painter has painted out: so many parts of paint to so many of white. */
export interface PaintedTint {
  readonly lab: Lab;
  readonly paint: number;
  readonly white: number;
}

/** A figure is taken from a band only where full tone, tint and white lie so many times apart in K/S. */
const APART = 1.15;

/** How much smoother S is made than single bands give it: two spectra that were guessed from colours are not exact. */
const SMOOTHNESS = 4;

/** S of the paints that were measured lies between 0.05 and 7.6 of that of titanium white. */
const LEAST_SCATTERING = 0.05;
const MOST_SCATTERING = 8;

let middling: number | undefined;

/** S of a middling pigment: the median of all bands of the coloured paints that were measured. */
export function middlingScattering(): number {
  if (middling !== undefined) return middling;
  const all = MEASURED_PAINTS.filter(({ index }) => index !== 'PW6').flatMap(({ s }) => s);
  all.sort((one, other) => one - other);
  return (middling = all[all.length >> 1] ?? 1);
}

/**
 * K and S of a paint from the colour of its full tone and of a tint with white, as far as two colours tell. Both are
 * given the smoothest spectra; K/S is that of the full tone, and S follows from the tint as it does where spectra are
 * measured: S = w (Q Sw - Kw) / p (M - Q), M and Q the K/S of full tone and tint, p and w their parts of paint and
 * white. It is smoothed, and then scaled so that the tint comes out as light as it was painted. Without a tint, S is
 * that of a middling pigment, or of titanium white for a white.
 */
export function estimateAbsorbing(full: Lab, tint: PaintedTint | undefined, white: Absorbing): Absorbing {
  const ratios = smoothSpectrum(full).map(ratioOfReflectance);
  const flat = new Float64Array(BANDS).fill(middlingScattering());
  if (!tint) return withScattering(ratios, flat);
  const scattering = scatteringOf(ratios, smoothSpectrum(tint.lab).map(ratioOfReflectance), tint, white);
  return asLightAs(tint, withScattering(ratios, scattering ?? flat), white);
}

/** K and S of a white that is known by its colour only; it is taken to scatter as titanium white does. */
export function estimateWhite(full: Lab): Absorbing {
  return withScattering(smoothSpectrum(full).map(ratioOfReflectance), new Float64Array(BANDS).fill(1));
}

function withScattering(ratios: Spectrum, scattering: Spectrum): Absorbing {
  return { k: ratios.map((ratio, band) => ratio * (scattering[band] ?? 0)), s: scattering };
}

/** S band by band, smoothed; undefined when no band tells it, as where the tint is no lighter than the full tone. */
function scatteringOf(
  full: Spectrum,
  tinted: Spectrum,
  { paint, white: parts }: PaintedTint,
  white: Absorbing,
): Spectrum | undefined {
  const told = Array.from(full, (masstone, band) => {
    const tint = tinted[band] ?? 0;
    const { k, s } = { k: white.k[band] ?? 0, s: white.s[band] ?? 1 };
    if (masstone < APART * tint || tint * s < APART * k) return undefined;
    const scattering = (parts * (tint * s - k)) / (paint * (masstone - tint));
    return Math.log(Math.min(MOST_SCATTERING, Math.max(LEAST_SCATTERING, scattering)));
  });
  if (told.every((figure) => figure === undefined)) return undefined;
  return smoothed(told).map(Math.exp);
}

/**
 * The line that runs by the figures and is smooth between them, by relaxation; bands without a figure follow the
 * others.
 */
function smoothed(figures: readonly (number | undefined)[]): Spectrum {
  const known = figures.filter((figure) => figure !== undefined);
  const mean = known.reduce((sum, figure) => sum + figure, 0) / known.length;
  const line = Float64Array.from(figures, (figure) => figure ?? mean);
  for (let round = 0; round < 200; round++) {
    for (let band = 0; band < BANDS; band++) {
      const beside = [line[band - 1], line[band + 1]].filter((figure) => figure !== undefined);
      const own = figures[band];
      const sum = SMOOTHNESS * beside.reduce((total, figure) => total + figure, 0) + (own ?? 0);
      line[band] = sum / (SMOOTHNESS * beside.length + (own === undefined ? 0 : 1));
    }
  }
  return line;
}

const MOST_STRONGER = 30;

/** The paint so much stronger or weaker that its tint has the lightness that was painted. */
function asLightAs(
  { lab: [lightness], paint, white: parts }: PaintedTint,
  tube: Absorbing,
  white: Absorbing,
): Absorbing {
  const scaled = (factor: number): Absorbing => ({
    k: tube.k.map((figure) => factor * figure),
    s: tube.s.map((figure) => factor * figure),
  });
  const lightnessAt = (factor: number): number => {
    const portions = [
      { paint: scaled(factor), parts: paint },
      { paint: white, parts },
    ];
    return labOfSpectrum(opaqueSpectrum(mix(portions)))[0];
  };
  // The stronger the paint, the darker its tint.
  let [weak, strong] = [1 / MOST_STRONGER, MOST_STRONGER];
  if (lightnessAt(weak) < lightness || lightnessAt(strong) > lightness) return tube;
  for (let round = 0; round < 40; round++) {
    const middle = Math.sqrt(weak * strong);
    if (lightnessAt(middle) > lightness) weak = middle;
    else strong = middle;
  }
  return scaled(Math.sqrt(weak * strong));
}
