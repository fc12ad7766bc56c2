import type { Plan } from '../../plan/plan.js';

/** How light a picture is as a whole. Munsell values, 0 to 10. */
export interface ValueSpread {
  /** Area-weighted mean of all that has a value; missing for a plan without any. */
  readonly mean?: number;
  /** Missing like the mean. */
  readonly key?: ValueKey;
  /** From the value that 5 % of the picture does not pass to the one that 95 % does not. Missing like the mean. */
  readonly range?: ValueRange;
}

export type ValueKey = 'low' | 'middle' | 'high';

export interface ValueRange {
  readonly from: number;
  readonly to: number;
}

/** A mean below is a low key, one above a high key: common practice, no source. */
const LOW_UNDER = 4;
const HIGH_OVER = 6;
/** Left out at either end, so that one highlight or accent does not stand for the picture. */
const TAIL = 0.05;
/** So that a share of exactly the tail counts in spite of rounding. */
const ROUNDING = 1e-9;

/**
 * Mean, key and range of the values that are seen; `shares` are the visible shares in the order of `plan.objects`,
 * and bare ground counts at its own value. What has neither value nor colour is left out.
 */
export function measureSpread(plan: Plan, shares: readonly number[], bareShare: number): ValueSpread {
  const seen = [
    { value: plan.canvas.ground.value, share: bareShare },
    ...plan.objects.flatMap(({ value, index }) =>
      value === undefined ? [] : { value, share: shares[index] ?? 0 },
    ),
  ].filter(({ share }) => share > 0);
  if (seen.length === 0) return {};
  const whole = seen.reduce((sum, { share }) => sum + share, 0);
  const mean = seen.reduce((sum, { value, share }) => sum + value * share, 0) / whole;
  const darkestFirst = seen.sort((a, b) => a.value - b.value);
  return {
    mean,
    key: keyOf(mean),
    range: { from: pastTail(darkestFirst, whole), to: pastTail(darkestFirst.toReversed(), whole) },
  };
}

/** Low under 4, high over 6; a mean at either figure is neither, whatever rounding makes of it. */
export function keyOf(mean: number): ValueKey {
  if (mean < LOW_UNDER - ROUNDING) return 'low';
  return mean > HIGH_OVER + ROUNDING ? 'high' : 'middle';
}

/** The first value at which the areas so far, from one end, make up the tail. */
function pastTail(
  areas: readonly { readonly value: number; readonly share: number }[],
  whole: number,
): number {
  let passed = 0;
  for (const { value, share } of areas) {
    passed += share;
    if (passed >= (TAIL - ROUNDING) * whole) return value;
  }
  return 0;
}
