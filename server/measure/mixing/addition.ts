import { labDifference } from '../../plan/colour/difference.js';
import type { Lab } from '../../plan/colour/model.js';
import type { Piecework } from './mixer.js';
import { blocksOf, everyColour, type PaintSet } from './mixtures.js';
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

/** A paint is worth naming when it takes this off the differences together. CIEDE2000; from memory, none is published. */
const WORTH_ADDING = 1;

/**
 * The one measured paint that, added to a palette, brings the colours it misses nearest: the least sum of differences
 * that are left. Undefined when none makes a difference that is seen.
 */
export function* bestAddition(
  set: PaintSet,
  missed: readonly Missed[],
): Piecework<{ readonly addition?: FoundAddition }> {
  let best: FoundAddition | undefined;
  let least = sum(missed.map(({ difference }) => difference)) - WORTH_ADDING;
  for (const { index } of MEASURED_PAINTS) {
    const paint = measuredPaint(index);
    if (!paint || set.paints.some(({ key }) => key === paint.key)) continue;
    const left = yield* leftWith(
      { paints: [...set.paints, paint], required: [...set.required, set.paints.length] },
      missed,
    );
    const together = sum(left);
    if (together >= least) continue;
    least = together;
    best = { index, left };
  }
  return best ? { addition: best } : {};
}

function* leftWith(set: PaintSet, missed: readonly Missed[]): Piecework<readonly number[]> {
  const left = missed.map(({ difference }) => difference);
  yield* everyColour(set, blocksOf(set, ROUGH), (lightness, a, b) => {
    for (let at = 0; at < missed.length; at++) {
      const wanted = missed[at]?.wanted;
      const least = left[at] ?? 0;
      if (!wanted || !mayBeWithin(least, wanted, lightness, a, b)) continue;
      left[at] = Math.min(least, labDifference(wanted, [lightness, a, b]));
    }
  });
  return left;
}

function sum(all: readonly number[]): number {
  return all.reduce((total, each) => total + each, 0);
}
