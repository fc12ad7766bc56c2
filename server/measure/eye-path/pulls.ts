import { distance, type Point } from '../../plan/geometry/point.js';
import type { BorderMeasure, BorderStretch } from '../borders/borders.js';
import { boxOfStretches } from '../emphasis/field.js';

type Fronts = BorderMeasure['byFront'];

/** A length may pass another by this part and be the same: shapes are cut on a grid. */
export const ROUNDING = 1e-9;
/** Part of the diagonal. */
const NEAR_FOCUS = 0.08;
/** No more than this part of the length of all borders pulls more. */
const AMONG_STRONGEST = 0.1;

/** The pull of the strongest border within 8 % of the diagonal of the focal point; 0 when there is none. */
export function pullAtFocus(
  { diagonal }: { readonly diagonal: number },
  focus: Point,
  byFront: Fronts,
): number {
  const reach = NEAR_FOCUS * diagonal * (1 + ROUNDING);
  let most = 0;
  for (const { stretches } of byFront) {
    const { left, top, right, bottom } = boxOfStretches(stretches);
    if (left - focus.x > reach || focus.x - right > reach || top - focus.y > reach) continue;
    if (focus.y - bottom > reach) continue;
    for (const { at, pull } of stretches) {
      if (pull > most && isWithin(at, focus, reach)) most = pull;
    }
  }
  return most;
}

/** The pull that a tenth of the length of all borders has or passes. */
export function pullOfStrongest(byFront: Fronts): number {
  const lengths = new Map<number, number>();
  let whole = 0;
  for (const { stretches } of byFront) {
    for (const [pull, length] of lengthsByPull(stretches)) {
      whole += length;
      lengths.set(pull, length + (lengths.get(pull) ?? 0));
    }
  }
  let run = 0;
  for (const [pull, length] of [...lengths].sort(([one], [other]) => other - one)) {
    run += length;
    if (run >= AMONG_STRONGEST * whole * (1 - ROUNDING)) return pull;
  }
  return 0;
}

/** The stretches that pull so much or more, in order. */
export function stretchesPulling(byFront: Fronts, least: number): readonly BorderStretch[] {
  const strong: BorderStretch[] = [];
  for (const { stretches } of byFront) {
    if (!isAnyFrom(least, lengthsByPull(stretches).keys())) continue;
    for (const stretch of stretches) if (stretch.pull >= least) strong.push(stretch);
  }
  return strong;
}

function isAnyFrom(least: number, pulls: Iterable<number>): boolean {
  for (const pull of pulls) if (pull >= least) return true;
  return false;
}

const lengthsOf = new WeakMap<readonly BorderStretch[], ReadonlyMap<number, number>>();

/** Along the border with one area the pull stays the same, so there are few; kept as long as the stretches. */
function lengthsByPull(stretches: readonly BorderStretch[]): ReadonlyMap<number, number> {
  const known = lengthsOf.get(stretches);
  if (known) return known;
  const lengths = new Map<number, number>();
  for (const { pull, length } of stretches) lengths.set(pull, length + (lengths.get(pull) ?? 0));
  lengthsOf.set(stretches, lengths);
  return lengths;
}

/** Whether two places are no farther apart; of most one look at a coordinate tells that they are. */
export function isWithin(one: Point, other: Point, reach: number): boolean {
  if (Math.abs(one.x - other.x) > reach || Math.abs(one.y - other.y) > reach) return false;
  return distance(one, other) <= reach;
}
