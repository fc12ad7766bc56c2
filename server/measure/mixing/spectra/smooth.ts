import { partsOfLab } from '../../../plan/colour/cielab.js';
import type { Lab } from '../../../plan/colour/model.js';
import { BANDS, type Spectrum, WEIGHTS } from './bands.js';
import { solveLinear } from './linear.js';

type Triple = readonly [number, number, number];

/** Rounds of Newton's method; a colour that a surface can have settles in some ten. */
const MOST_ROUNDS = 60;
const SETTLED = 1e-10;
/** A step as long as this leads nowhere. */
const FARTHEST = 1e6;

/** No paint reflects more or less luminous light than this, as a part of what white does. */
const DARKEST = 0.002;
const LIGHTEST = 0.985;

/** How near to a colour that no surface has the search comes, as a part of its distance from grey. */
const LEAST_STEP = 0.01;

/**
 * A reflectance spectrum of a colour, of which there are many: the smoothest, so that it has no features that nothing
 * says it has. Everywhere over 0 and under 1. Of a colour that no surface has, the one that comes nearest on the
 * straight way from the grey of its lightness.
 *
 * The reflectance is written as (1 + tanh z) / 2 and the sum of the squared steps of z made least while the three
 * tristimulus values are met: the idea of Burns, Numerical methods for smoothest reflectance reconstruction, Color
 * Research and Application 45, 2020. A colour at which Newton's method does not settle at once is walked to from grey,
 * the spectrum of each step taken for the start of the next.
 */
export function smoothSpectrum(lab: Lab): Spectrum {
  const [x, y, z] = partsOfLab(lab);
  const grey = Math.min(LIGHTEST, Math.max(DARKEST, y));
  const between = (part: number): Triple => [grey + part * (x - y), grey, grey + part * (z - y)];
  let here = startFor(grey);
  const whole = settle(between(1), here);
  if (whole) return spectrumOf(whole);
  let part = 0;
  for (let step = 0.25; step >= LEAST_STEP && part < 1;) {
    const next = settle(between(Math.min(1, part + step)), here);
    if (next) [here, part] = [next, Math.min(1, part + step)];
    else step /= 2;
  }
  return spectrumOf(here);
}

/** What is solved for: z at each band, and Lagrange's multipliers. */
type State = Float64Array;

function startFor(grey: number): State {
  const state = new Float64Array(BANDS + 3);
  return state.fill(Math.atanh(2 * grey - 1), 0, BANDS);
}

function spectrumOf(state: State): Spectrum {
  return state.slice(0, BANDS).map(reflectance);
}

function settle(wanted: Triple, from: State): State | undefined {
  if (!wanted.every((part) => part > 0)) return undefined;
  const state = from.slice();
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { matrix, rest } = newton(state, wanted);
    const step = solveLinear(matrix, rest);
    if (!step) return undefined;
    const longest = step.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
    if (!(longest < FARTHEST)) return undefined;
    for (let row = 0; row < state.length; row++) state[row] = (state[row] ?? 0) - (step[row] ?? 0);
    if (longest > SETTLED) continue;
    return spectrumOf(state).every((part) => part > 0 && part < 1) ? state : undefined;
  }
  return undefined;
}

function reflectance(z: number): number {
  return (1 + Math.tanh(z)) / 2;
}

/**
 * The conditions of the least sum with their multipliers, and how they change: Lagrange's equations and their Jacobian.
 */
function newton(state: State, wanted: Triple): { matrix: Float64Array[]; rest: Float64Array } {
  const size = BANDS + 3;
  const matrix = Array.from({ length: size }, () => new Float64Array(size));
  const rest = new Float64Array(size);
  const set = (row: number, column: number, figure: number): void => {
    const of = matrix[row];
    if (of) of[column] = (of[column] ?? 0) + figure;
  };
  wanted.forEach((part, axis) => (rest[BANDS + axis] = -part));
  for (let band = 0; band < BANDS; band++) {
    const z = state[band] ?? 0;
    const curve = Math.tanh(z);
    const slope = (1 - curve * curve) / 2;
    let pull = 0;
    WEIGHTS.forEach((weights, axis) => {
      const weight = weights[band] ?? 0;
      pull += weight * (state[BANDS + axis] ?? 0);
      rest[BANDS + axis] = (rest[BANDS + axis] ?? 0) + weight * reflectance(z);
      set(band, BANDS + axis, slope * weight);
      set(BANDS + axis, band, slope * weight);
    });
    let own = slope * pull;
    for (const beside of [band - 1, band + 1]) {
      if (beside < 0 || beside >= BANDS) continue;
      own += 2 * (z - (state[beside] ?? 0));
      set(band, band, 2);
      set(band, beside, -2);
    }
    set(band, band, -2 * slope * curve * pull);
    rest[band] = own;
  }
  return { matrix, rest };
}
