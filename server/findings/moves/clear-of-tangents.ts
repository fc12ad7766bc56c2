import { measureFocus } from '../../measure/focus.js';
import type { FocusMeasure, Measures } from '../../measure/measures.js';
import { type TangentMeasure, measureTangents } from '../../measure/tangents.js';
import type { Trial } from '../../measure/trial.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';
import { type Shift, movedWith, shifted } from './shift.js';

/** Bare ground that a move may lay open, part of the canvas. */
const LAID_OPEN = 0.002;
/** Part of what is seen of any object that a move may cover. */
const COVERED = 0.2;
/** Part of the diagonal within which the dominant is at the focal point. */
const CLOSE = 0.05;
/** Limits of the rules as they stand; what a plan sets otherwise counts for its own rule only. */
const USUAL_LIMIT = 0.008;
const USUAL_CORNER_LIMIT = 0.002;

/**
 * The first of some shifts that leaves what was moved without any tangent, else the first that makes no new one and
 * leaves none that has to go. Only shifts count that keep all on the canvas that was, lay no ground open and hide
 * nothing. Each is tried on the picture itself.
 *
 * @param left whether a tangent is left that has to go
 */
export function firstClear(
  plan: Plan,
  measures: Measures,
  shifts: readonly Shift[],
  left: (tangents: TangentMeasure) => boolean,
): Shift | undefined {
  const known = new Set(namesOf(measures.tangents));
  let second: Shift | undefined;
  for (const shift of shifts) {
    const trial = shifted(plan, measures.parts, shift);
    if (!leavesTheRest(plan, measures, trial)) continue;
    const moved = new Set(movedWith(plan, measures.parts, shift.object));
    const tangents = measureTangents(trial.plan, trial.areas, moved);
    if (left(tangents)) continue;
    const names = namesOf(tangents);
    if (names.length === 0) return shift;
    if (names.every((name) => known.has(name))) second ??= shift;
  }
  return second;
}

/** Whether a trial hides nothing, lays nothing bare and pushes nothing off the canvas. */
export function leavesTheRest(plan: Plan, { areas, focus }: Measures, trial: Trial): boolean {
  if (trial.areas.bareShare > areas.bareShare + LAID_OPEN) return false;
  if (atFocus(focus) && !atFocus(measureFocus(trial.plan, trial.areas))) return false;
  return plan.coveringOrder.every((_, position) => {
    const before = areas.layers[position];
    const after = trial.areas.layers[position];
    if (!before || !after) return true;
    return (
      after.share >= before.share * (1 - COVERED) &&
      !exceeds(after.offCanvasShare, before.offCanvasShare + COVERED * 0.1)
    );
  });
}

/** As the rule on the dominant and the focal point has it. */
function atFocus(focus: FocusMeasure | undefined): boolean {
  return focus?.dominants.some(({ holds, distanceShare }) => holds || distanceShare <= CLOSE) ?? false;
}

/** Names of what the rules on tangents would tell. */
function namesOf({ touches, edges, corners }: TangentMeasure): readonly string[] {
  return [
    ...touches
      .filter(({ shareOfDiagonal }) => !exceeds(shareOfDiagonal, USUAL_LIMIT))
      .map(({ one, other }) => [one, other].sort((a, b) => a - b).join(' ')),
    ...edges
      .filter(({ shareOfDiagonal }) => !exceeds(shareOfDiagonal, USUAL_LIMIT))
      .map(({ object, side }) => `${object} ${side}`),
    ...corners
      .filter(({ shareOfDiagonal }) => !exceeds(shareOfDiagonal, USUAL_CORNER_LIMIT))
      .map(({ object, corner }) => `${object} ${corner}`),
  ];
}
