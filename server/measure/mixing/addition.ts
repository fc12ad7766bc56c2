import { labDifference } from '../../plan/colour/difference.js';
import type { Lab } from '../../plan/colour/model.js';
import type { Piecework } from './mixer.js';
import { blocksOf, everyColour, type MixingPaint, type PaintSet } from './mixtures.js';
import { measuredPaint } from './paints.js';
import { mayBeWithin } from './quick-difference.js';
import { ROUGH } from './recipes.js';
import { MEASURED_PAINTS } from './spectra/measured.js';

/** A colour that a palette can't reach, and how far its nearest mixture is off. CIEDE2000. */
export interface Missed {
  readonly wanted: Lab;
  readonly difference: number;
}

/** A paint that would bring colours nearer. */
export interface FoundAddition {
  readonly index: string;
  /** What is left of each difference, in the order of what was missed. */
  readonly left: readonly number[];
}

/** Colours that a paint is chosen by. */
const MOST_JUDGED = 24;

/** Colours that are looked at in about the time that it takes to mix one. */
const LOOKED_AT = 8;

/**
 * A paint is worth naming when it takes this off the differences together. CIEDE2000; from memory, none is published.
 */
const WORTH_ADDING = 1;

/**
 * The one measured paint that, added to a palette, brings the colours it misses nearest: the least sum of differences
 * that are left. It is chosen by the first of them, so that the work is bounded. Nothing when none makes a difference
 * that is seen.
 */
export function* bestAddition(
  set: PaintSet,
  missed: readonly Missed[],
): Piecework<{ readonly addition?: FoundAddition }> {
  const judged = missed.slice(0, MOST_JUDGED);
  let best: FoundAddition | undefined;
  let least = sum(judged.map(({ difference }) => difference)) - WORTH_ADDING;
  for (const { index } of MEASURED_PAINTS) {
    const paint = measuredPaint(index);
    if (!paint || set.paints.some(({ key }) => key === paint.key)) continue;
    const left = yield* leftWith(withPaint(set, paint), judged);
    const together = sum(left);
    if (together >= least) continue;
    least = together;
    best = { index, left };
  }
  const chosen = best && measuredPaint(best.index);
  if (!best || !chosen) return {};
  if (judged.length === missed.length) return { addition: best };
  return { addition: { index: best.index, left: yield* leftWith(withPaint(set, chosen), missed) } };
}

/** With a paint more, which every mixture holds. */
function withPaint({ paints, required }: PaintSet, paint: MixingPaint): PaintSet {
  return { paints: [...paints, paint], required: [...required, paints.length] };
}

function* leftWith(set: PaintSet, missed: readonly Missed[]): Piecework<readonly number[]> {
  const left = missed.map(({ difference }) => difference);
  const look = (lightness: number, a: number, b: number): void => {
    for (let at = 0; at < missed.length; at++) {
      const wanted = missed[at]?.wanted;
      const least = left[at] ?? 0;
      if (!wanted || !mayBeWithin(least, wanted, lightness, a, b)) continue;
      left[at] = Math.min(least, labDifference(wanted, [lightness, a, b]));
    }
  };
  yield* everyColour(set, blocksOf(set, ROUGH), look, 1 + missed.length / LOOKED_AT);
  return left;
}

function sum(all: readonly number[]): number {
  return all.reduce((total, each) => total + each, 0);
}
