import { BANDS, type Spectrum } from './spectra/bands.js';

/**
 * How strongly a paint absorbs (K) and scatters (S) at each band, in units of the scattering of titanium white. A
 * thickness in the same terms is so many times the film in which titanium white scatters once.
 */
export interface Absorbing {
  readonly k: Spectrum;
  readonly s: Spectrum;
}

/** Paint in parts by volume. */
export interface Portion {
  readonly paint: Absorbing;
  readonly parts: number;
}

/**
 * How much titanium white scatters in a millimetre of film. An estimate, from memory: some 0.1 mm of titanium white
 * hides black wholly. It says how thick a glaze is in the terms of the measured figures, which are relative; opaque
 * mixtures do not depend on it.
 */
const WHITE_SCATTERING_PER_MM = 100;

/**
 * The mixture of paints: K and S add up by parts. Duncan, The colour of pigment mixtures, 1940; the two-constant theory
 * of Kubelka and Munk. `medium` parts of clear medium neither absorb nor scatter. No parts at all are clear medium.
 */
export function mix(portions: readonly Portion[], medium = 0): Absorbing {
  const k = new Float64Array(BANDS);
  const s = new Float64Array(BANDS);
  const total = portions.reduce((sum, { parts }) => sum + parts, medium);
  if (!(total > 0)) return { k, s };
  for (const { paint, parts } of portions) {
    const share = parts / total;
    for (let band = 0; band < BANDS; band++) {
      k[band] = (k[band] ?? 0) + share * (paint.k[band] ?? 0);
      s[band] = (s[band] ?? 0) + share * (paint.s[band] ?? 0);
    }
  }
  return { k, s };
}

/**
 * Part of the light that a film reflects which is so thick that nothing is seen through it, from its K/S.
 * Kubelka and Munk 1931: R = 1 + K/S - sqrt((K/S)^2 + 2 K/S).
 */
export function opaqueReflectance(ratio: number): number {
  // The product of both roots is 1, which keeps the digits of a very dark film.
  return 1 / (1 + ratio + Math.sqrt(ratio * (ratio + 2)));
}

/** K/S of a film of this opaque reflectance (over 0, up to 1): K/S = (1 - R)^2 / 2R, the inverse of the above. */
export function ratioOfReflectance(reflectance: number): number {
  return (1 - reflectance) ** 2 / (2 * reflectance);
}

/** What a mixture reflects in a film that hides what is below it. Without scattering it is black. */
export function opaqueSpectrum({ k, s }: Absorbing): Spectrum {
  return Float64Array.from(k, (absorption, band) => {
    const scattering = s[band] ?? 0;
    if (scattering > 0) return opaqueReflectance(absorption / scattering);
    return absorption > 0 ? 0 : 1;
  });
}

/**
 * What is seen of a dry layer through one film over it, without Saunderson's correction for the surface. Kubelka 1948:
 * R = (1 - Rg (a - b coth bSX)) / (a - Rg + b coth bSX), a = 1 + K/S, b = sqrt(a^2 - 1), Rg that of the layer below.
 *
 * @param millimetres thickness of the film
 */
export function filmSpectrum({ k, s }: Absorbing, millimetres: number, below: Spectrum): Spectrum {
  const thickness = WHITE_SCATTERING_PER_MM * Math.max(0, millimetres);
  return Float64Array.from(below, (ground, band) =>
    filmReflectance((k[band] ?? 0) * thickness, (s[band] ?? 0) * thickness, ground),
  );
}

/** The film of Kubelka's formula, by its K and its S times its thickness. */
export function filmReflectance(absorbed: number, scattered: number, ground: number): number {
  // Light goes through a film that only absorbs twice: Bouguer's law, the limit of the formula for S = 0.
  if (scattered < 1e-12) return ground * Math.exp(-2 * absorbed);
  const a = 1 + absorbed / scattered;
  const b = Math.sqrt(a * a - 1);
  const depth = b * scattered;
  // b coth(b SX), which tends to 1/SX where nothing is absorbed.
  const bCoth = depth < 1e-9 ? 1 / scattered : b / Math.tanh(depth);
  return (1 - ground * (a - bCoth)) / (a - ground + bCoth);
}
