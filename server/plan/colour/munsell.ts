import { ILLUMINANT_C, ILLUMINANT_D65, labToMhvc, mhvcToLab } from 'munsell';
import { memoise } from './memo.js';
import { computedColour, type Colour, type Lab } from './model.js';
import { MUNSELL_FAMILIES, parseMunsell } from './munsell-text.js';
import { lightnessOfValue, reflectanceOfLightness, valueOfLab } from './value.js';

// Importing `munsell` evaluates the whole renotation table: about 20 ms once, against 3 ms for everything else
// here. Only this module does so; an entry point that must answer sooner imports the plan dynamically.

/** A colour in Munsell's terms. */
export interface Munsell {
  /** Hue in words, such as `7.5R`; `N` for a neutral. */
  readonly hue: string;
  /**
   * Position on Munsell's circle, 0 to 360: 0 at 10RP, where R begins, and 36 for each of the ten hues, so 5R
   * is 18, 5YR 54, 5BG 198. Undefined for a neutral.
   */
  readonly hueDegrees: number | undefined;
  readonly value: number;
  readonly chroma: number;
  /** The whole notation to one decimal, such as `7.5R 4.0/9.6` or `N 5.0/`. */
  readonly text: string;
}

/** Munsell chroma that is written as 0.0, and so is a neutral. */
const NEUTRAL_CHROMA = 0.05;

/**
 * Munsell notation to one decimal in value and chroma, such as `7.5R 4.0/9.6`; the hue number drops a decimal of
 * nought, and the seam between two hues is 10 of the former (`10RP`, not `0R`). A chroma under 0.05 is `N 5.0/`.
 */
export function formatMunsell(hueDegrees: number | undefined, value: number, chroma: number): string {
  const neutral = hueDegrees === undefined || chroma < NEUTRAL_CHROMA;
  return neutral
    ? `N ${value.toFixed(1)}/`
    : `${munsellHueName(hueDegrees)} ${value.toFixed(1)}/${chroma.toFixed(1)}`;
}

/** The hue at a position of Munsell's circle, to the tenth: 18 is `5R`. See `Munsell.hueDegrees`. */
export function munsellHueName(hueDegrees: number): string {
  const tenths = Math.round((((hueDegrees % 360) + 360) % 360) / 0.36) % 1000;
  const number = (tenths % 100) / 10;
  const family = Math.floor(tenths / 100);
  return number === 0 ? `10${MUNSELL_FAMILIES[(family + 9) % 10]}` : `${number}${MUNSELL_FAMILIES[family]}`;
}

function munsell(hueDegrees: number | undefined, value: number, chroma: number): Munsell {
  if (hueDegrees === undefined || chroma < NEUTRAL_CHROMA) {
    return { hue: 'N', hueDegrees: undefined, value, chroma: 0, text: formatMunsell(undefined, value, 0) };
  }
  return {
    hue: munsellHueName(hueDegrees),
    hueDegrees,
    value,
    chroma,
    text: formatMunsell(hueDegrees, value, chroma),
  };
}

type Triple = readonly [number, number, number];
type White = { readonly X: number; readonly Z: number };
type Matrix = readonly (readonly number[])[];

const DELTA = 6 / 29;

function labToXyz([lightness, a, b]: Lab, white: White): Triple {
  const unfold = (t: number) => (t > DELTA ? t ** 3 : 3 * DELTA * DELTA * (t - 4 / 29));
  const fy = (lightness + 16) / 116;
  return [white.X * unfold(fy + a / 500), unfold(fy), white.Z * unfold(fy - b / 200)];
}

function xyzToLab([x, y, z]: Triple, white: White): Lab {
  const fold = (t: number) => (t > DELTA ** 3 ? Math.cbrt(t) : t / (3 * DELTA * DELTA) + 4 / 29);
  const fy = fold(y);
  return [116 * fy - 16, 500 * (fold(x / white.X) - fy), 200 * (fy - fold(z / white.Z))];
}

/**
 * The chromaticity of a colour taken from one illuminant to another by the Bradford transform, its Y kept.
 *
 * Bradford alone moves Y of a strong colour by up to 2 %, and a colour written at value 4 would no longer measure
 * 4. Value is defined by Y, so Y stays. The mapping of chromaticities can be turned round exactly all the same.
 */
function adapt(lab: Lab, from: White, to: White, matrix: Matrix): Lab {
  const xyz = labToXyz(lab, from);
  const row = (weights: readonly number[] = []) =>
    xyz.reduce((sum, component, index) => sum + (weights[index] ?? 0) * component, 0);
  const adapted: Triple = [row(matrix[0]), row(matrix[1]), row(matrix[2])];
  const scale = adapted[1] > 0 ? xyz[1] / adapted[1] : 1;
  const [, a, b] = xyzToLab([adapted[0] * scale, adapted[1] * scale, adapted[2] * scale], to);
  return [lab[0], a, b];
}

/**
 * CIELAB (D65) of a Munsell position: `hueDegrees` as in `Munsell.hueDegrees`, `value` 0 to 10 (the nearer end if
 * outside), `chroma` 0 or more. The renotation data stand for illuminant C and are interpolated in LCh by the
 * `munsell` library; beyond the data the chroma is carried on in a straight line.
 */
export function munsellToLab(hueDegrees: number | undefined, value: number, chroma: number): Lab {
  const lightness = lightnessOfValue(value);
  if (hueDegrees === undefined || chroma <= 0 || lightness <= 0) return [lightness, 0, 0];
  const [, a, b] = mhvcToLab(hueDegrees / 3.6, Math.min(10, value), chroma);
  return adapt([lightness, a, b], ILLUMINANT_C, ILLUMINANT_D65, ILLUMINANT_D65.catMatrixCToThis);
}

/** The colour at a Munsell position; arguments as for `munsellToLab`. */
export function fromMunsell(hueDegrees: number | undefined, value: number, chroma: number): Colour {
  return computedColour(munsellToLab(hueDegrees, value, chroma));
}

const remember = memoise<Munsell>(8192);

/**
 * A colour in Munsell's terms. One that was written in Munsell notation comes back as written; any other is found
 * by inverting the renotation, to about 0.001 of a step in hue and chroma. Value is exact (`valueOf`).
 */
export function toMunsell(colour: Colour): Munsell {
  if (colour.notation.kind === 'munsell') {
    const written = parseMunsell(colour.notation.text);
    if (written?.ok) return munsell(written.hueDegrees, written.value, written.chroma);
  }
  return remember(colour.lab.join(' '), () => invert(colour.lab));
}

function invert(lab: Lab): Munsell {
  const value = valueOfLab(lab);
  if (reflectanceOfLightness(lab[0]) <= 0) return munsell(undefined, 0, 0);
  const underC = adapt(lab, ILLUMINANT_D65, ILLUMINANT_C, ILLUMINANT_D65.catMatrixThisToC);
  // 'last': a colour far outside the data may not settle within the rounds, and its nearest position will do.
  const [hue, , chroma] = labToMhvc(...underC, 1e-6, 200, 'last');
  return munsell((((hue * 3.6) % 360) + 360) % 360, value, chroma);
}
