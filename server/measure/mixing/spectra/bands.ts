import { labOfParts } from '../../../plan/colour/cielab.js';
import { type Lab } from '../../../plan/colour/model.js';

/** The middles of the bands of a spectrum, nanometres. */
const BANDS_NM: readonly number[] = Array.from({ length: 34 }, (_, band) => 390 + 10 * band);

export const BANDS = BANDS_NM.length;

/** A figure for each band, such as the part of the light that is reflected, 0 to 1. */
export type Spectrum = Float64Array;

// prettier-ignore
/** CIE 1931 colour-matching functions, 2 degree observer, 390 to 720 nm by 10: x, y, z. CIE 15, ISO 11664-1. */
const OBSERVER: readonly (readonly [number, number, number])[] = [
  [0.004243, 0.000120, 0.020050], [0.014310, 0.000396, 0.067850], [0.043510, 0.001210, 0.207400],
  [0.134380, 0.004000, 0.645600], [0.283900, 0.011600, 1.385600], [0.348280, 0.023000, 1.747060],
  [0.336200, 0.038000, 1.772110], [0.290800, 0.060000, 1.669200], [0.195360, 0.090980, 1.287640],
  [0.095640, 0.139020, 0.812950], [0.032010, 0.208020, 0.465180], [0.004900, 0.323000, 0.272000],
  [0.009300, 0.503000, 0.158200], [0.063270, 0.710000, 0.078250], [0.165500, 0.862000, 0.042160],
  [0.290400, 0.954000, 0.020300], [0.433450, 0.994950, 0.008750], [0.594500, 0.995000, 0.003900],
  [0.762100, 0.952000, 0.002100], [0.916300, 0.870000, 0.001650], [1.026300, 0.757000, 0.001100],
  [1.062200, 0.631000, 0.000800], [1.002600, 0.503000, 0.000340], [0.854450, 0.381000, 0.000190],
  [0.642400, 0.265000, 0.000050], [0.447900, 0.175000, 0.000020], [0.283500, 0.107000, 0],
  [0.164900, 0.061000, 0], [0.087400, 0.032000, 0], [0.046770, 0.017000, 0],
  [0.022700, 0.008210, 0], [0.011359, 0.004102, 0], [0.005790, 0.002091, 0],
  [0.002899, 0.001047, 0],
];

// prettier-ignore
/** Relative power of daylight D65, 390 to 720 nm by 10. CIE 15, ISO 11664-2. */
const D65: readonly number[] = [
  54.6482, 82.7549, 91.4860, 93.4318, 86.6823, 104.865, 117.008, 117.812, 114.861, 115.923, 108.811, 109.354,
  107.802, 104.790, 107.689, 104.405, 104.046, 100, 96.3342, 95.7880, 88.6856, 90.0062, 89.5991, 87.6987,
  83.2886, 83.6992, 80.0268, 80.2146, 82.2778, 78.2842, 69.7213, 71.6091, 74.3490, 61.6040,
];

/** The tristimulus values of what reflects all light; those of D65 by CIE 15 are 95.047, 100, 108.883. */
export const WHITE_XYZ: readonly [number, number, number] = whiteOf();

function whiteOf(): [number, number, number] {
  const sum = (axis: 0 | 1 | 2) =>
    OBSERVER.reduce((total, row, band) => total + row[axis] * (D65[band] ?? 0), 0);
  const luminous = sum(1);
  return [(100 * sum(0)) / luminous, 100, (100 * sum(2)) / luminous];
}

/**
 * What each band gives to X, Y and Z, each as a part of that of white: each sums to 1, so that what reflects all light
 * is exactly the white of D65, L* 100 and a*, b* 0, though the ends of the spectrum under 390 and over 720 nm, which
 * no paint here was measured at, are left out.
 */
export const WEIGHTS: readonly [Spectrum, Spectrum, Spectrum] = [weights(0), weights(1), weights(2)];

function weights(axis: 0 | 1 | 2): Spectrum {
  const raw = OBSERVER.map((row, band) => row[axis] * (D65[band] ?? 0));
  const total = raw.reduce((sum, figure) => sum + figure, 0);
  return Float64Array.from(raw, (figure) => figure / total);
}

/** CIELAB under D65, 2 degree observer, of a reflectance spectrum. */
export function labOfSpectrum(reflectance: Spectrum): Lab {
  let x = 0;
  let y = 0;
  let z = 0;
  const [xs, ys, zs] = WEIGHTS;
  for (let band = 0; band < BANDS; band++) {
    const part = reflectance[band] ?? 0;
    x += part * (xs[band] ?? 0);
    y += part * (ys[band] ?? 0);
    z += part * (zs[band] ?? 0);
  }
  return labOfParts(x, y, z);
}
