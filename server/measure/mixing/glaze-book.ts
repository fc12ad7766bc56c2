import { labDifference } from '../../plan/colour/difference.js';
import { type Lab, labChroma } from '../../plan/colour/model.js';
import { filmSpectrum, mix, opaqueSpectrum } from './kubelka-munk.js';
import type { Piecework } from './mixer.js';
import { type MixingPaint, type PaintParts, portionsOf } from './mixtures.js';
import { TITANIUM_WHITE } from './paints.js';
import { mayBeWithin } from './quick-difference.js';
import { labOfSpectrum, type Spectrum } from './spectra/bands.js';
import { goodUpTo } from './table.js';

/** How thick a glaze is laid, millimetres. An estimate, from memory: a fifth of a brushed film. */
export const GLAZE_FILM_MM = 0.03;

const MEDIUM_PARTS = [1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 30, 40, 60, 80, 120] as const;
const PAIRS = [
  [1, 1],
  [1, 2],
  [2, 1],
  [1, 3],
  [3, 1],
] as const;

/** Glazes of two paints are tried for so many paints only, which bounds the work. */
const MOST_PAIRED = 30;
const GLAZES_A_STEP = 512;

/** Paints of a glaze and the medium that it is thinned with. */
export interface Glaze {
  readonly parts: readonly PaintParts[];
  readonly medium: number;
}

export interface SeenGlaze extends Glaze {
  /** What it looks like over dry titanium white. */
  readonly overWhite: Lab;
}

let white: Spectrum | undefined;

function dryWhite(): Spectrum {
  return (white ??= opaqueSpectrum(TITANIUM_WHITE));
}

/** What is seen of a dry layer through a glaze. */
export function throughGlaze(
  paints: readonly MixingPaint[],
  { parts, medium }: Glaze,
  below: Spectrum,
): Spectrum {
  return filmSpectrum(mix(portionsOf(paints, parts), medium), GLAZE_FILM_MM, below);
}

/** What a glaze looks like over dry titanium white. */
function overWhite(paints: readonly MixingPaint[], glaze: Glaze): Lab {
  return labOfSpectrum(throughGlaze(paints, glaze, dryWhite()));
}

/** Under this C*ab over white a glaze is a grey, whose colour is never full. From memory. */
const LEAST_CHROMA = 8;

/** A grey glaze is as thin as to leave white at about this L*, half of its light. */
const GREY_GLAZE_LIGHTNESS = 76;

/**
 * A paint thinned for a glaze: with as much medium as leaves its colour fullest over white, of most C*ab; with more it
 * gets pale, with less dark. A grey or black lets about half of the light through.
 */
export function fullestGlaze(paints: readonly MixingPaint[], paint: number): SeenGlaze | undefined {
  const all = MEDIUM_PARTS.map((medium): SeenGlaze => {
    const glaze = { parts: [{ paint, parts: 1 }], medium };
    return { ...glaze, overWhite: overWhite(paints, glaze) };
  });
  const isGrey = all.every(({ overWhite: seen }) => labChroma(seen) < LEAST_CHROMA);
  const worth = ({ overWhite: seen }: SeenGlaze) =>
    isGrey ? -Math.abs(seen[0] - GREY_GLAZE_LIGHTNESS) : labChroma(seen);
  return all.reduce<SeenGlaze | undefined>(
    (best, glaze) => (best && worth(best) >= worth(glaze) ? best : glaze),
    undefined,
  );
}

/** The glazes of one and of two of these paints, in whole parts, and what they look like over white. */
export function* glazesOf(
  paints: readonly MixingPaint[],
  usable: readonly number[],
): Piecework<readonly SeenGlaze[]> {
  const all: SeenGlaze[] = [];
  for (const parts of glazeParts(usable)) {
    for (const medium of MEDIUM_PARTS) {
      const glaze = { parts, medium };
      all.push({ ...glaze, overWhite: overWhite(paints, glaze) });
      if (all.length % GLAZES_A_STEP === 0) yield;
    }
  }
  return all;
}

function* glazeParts(usable: readonly number[]): Generator<readonly PaintParts[]> {
  for (const paint of usable) yield [{ paint, parts: 1 }];
  const paired = usable.slice(0, MOST_PAIRED);
  for (const [at, one] of paired.entries()) {
    for (const other of paired.slice(at + 1)) {
      for (const [first, second] of PAIRS) {
        yield [
          { paint: one, parts: first },
          { paint: other, parts: second },
        ];
      }
    }
  }
}

/**
 * The glaze that looks most like a colour over white; of those as good the one of fewest paints, then of fewest parts.
 */
export function nearestGlaze(glazes: readonly SeenGlaze[], wanted: Lab): SeenGlaze | undefined {
  let best = Infinity;
  const near: { glaze: SeenGlaze; difference: number }[] = [];
  for (const glaze of glazes) {
    if (!mayBeWithin(goodUpTo(best), wanted, ...glaze.overWhite)) continue;
    const difference = labDifference(wanted, glaze.overWhite);
    best = Math.min(best, difference);
    near.push({ glaze, difference });
  }
  const good = near.filter(({ difference }) => difference <= goodUpTo(best));
  const sum = ({ parts, medium }: Glaze) => parts.reduce((total, each) => total + each.parts, medium);
  good.sort(
    (one, other) =>
      one.glaze.parts.length - other.glaze.parts.length ||
      sum(one.glaze) - sum(other.glaze) ||
      one.difference - other.difference,
  );
  return good[0]?.glaze;
}
