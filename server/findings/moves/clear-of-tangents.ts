import { dominantsAtFocus } from '../../measure/emphasis/at-focus.js';
import { measureFocus } from '../../measure/emphasis/focus.js';
import type { Measures } from '../../measure/measures.js';
import { TOUCHING, type TangentMeasure, measureTangents } from '../../measure/objects/tangents.js';
import { runsAcross } from '../../measure/areas/parts.js';
import { relationOf } from '../../measure/tangency/relation.js';
import type { Trial } from '../../measure/trial.js';
import { EMPTY_OUTLINE, type Outline } from '../../plan/geometry/outline.js';
import { boxesOverlap } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';
import { type Shift, movedWith, placedTogether, shifted } from './shift.js';
import { triesWithin } from './trial-costs.js';

const BARELY_OFF = 0.02;
const MOST_TRIED = 12;
/** Bare ground that a move may lay open, part of the canvas. */
const LAID_OPEN = 0.002;
/** Part of what is seen of any object that a move may cover. */
const COVERED = 0.2;
/** Limits of the rules as they stand; what a plan sets otherwise counts for its own rule only. */
const USUAL_LIMIT = 0.008;
const USUAL_CORNER_LIMIT = 0.002;

/** What a shift may do besides. */
export interface Leave {
  /** Objects that may come to lie apart or over each other. */
  readonly pair?: readonly number[];
  /** Part of an object that may come to lie off the canvas. */
  readonly runningOff?: number;
}

/**
 * The first of some shifts that leaves what was moved without any tangent, else the first that makes no new one and
 * leaves none that has to go. Only shifts count that keep all on the canvas that was, lay no ground open, hide nothing,
 * and leave what lay apart apart and what lay over each other so. Each is tried on the picture itself.
 *
 * @param left whether a tangent is left that has to go
 */
export function firstClear(
  plan: Plan,
  measures: Measures,
  shifts: readonly Shift[],
  left: (tangents: TangentMeasure) => boolean,
  { pair = [], runningOff = BARELY_OFF }: Leave = {},
): Shift | undefined {
  const known = new Set(namesOf(plan, measures.tangents));
  let second: Shift | undefined;
  const most = triesWithin(plan, shifts[0]?.object ?? -1, MOST_TRIED);
  for (const shift of shifts.slice(0, most)) {
    const moved = new Set(movedWith(plan, measures.parts, shift.object));
    const trial = shifted(plan, measures, shift);
    if (!keepsCompany(plan, trial, moved, pair)) continue;
    if (!leavesTheRest(plan, measures, trial, runningOff)) continue;
    const tangents = measureTangents(trial.plan, trial.areas, moved);
    if (left(tangents)) continue;
    const names = namesOf(plan, {
      ...tangents,
      touches: tangents.touches.filter(({ one, other }) => !moved.has(one) || !moved.has(other)),
    });
    if (names.length === 0) return shift;
    if (names.every((name) => known.has(name))) second ??= shift;
  }
  return second;
}

/** Whether all that was moved lies to the other things as before, grounds left aside. */
function keepsCompany(
  plan: Plan,
  trial: Trial,
  moved: ReadonlySet<number>,
  pair: readonly number[],
): boolean {
  const { canvas } = plan;
  const slack = TOUCHING * canvas.diagonal;
  return [...moved].every((index) =>
    plan.objects.every((other) => {
      if (moved.has(other.index) || runsAcross(other.outline.box, canvas)) return true;
      if (pair.includes(index) && pair.includes(other.index)) return true;
      const before = plan.objects[index]?.outline ?? EMPTY_OUTLINE;
      const after = trial.plan.objects[index]?.outline ?? EMPTY_OUTLINE;
      return isApart(before, other.outline, slack) === isApart(after, other.outline, slack);
    }),
  );
}

function isApart(one: Outline, other: Outline, slack: number): boolean {
  return !boxesOverlap(one.box, other.box) || relationOf(one, other, slack) === 'apart';
}

/** Whether a trial hides nothing, lays nothing bare and pushes nothing off the canvas. */
export function leavesTheRest(
  plan: Plan,
  { areas, focus }: Measures,
  trial: Trial,
  runningOff = BARELY_OFF,
): boolean {
  if (trial.areas.bareShare > areas.bareShare + LAID_OPEN) return false;
  const isHeld = (measured: Measures['focus']): boolean => dominantsAtFocus(measured).length > 0;
  if (isHeld(focus) && !isHeld(measureFocus(trial.plan, trial.areas))) return false;
  return plan.coveringOrder.every((object, position) => {
    const before = areas.layers[position];
    const after = trial.areas.layers[position];
    if (!before || !after || after === before) return true;
    // What is moved can't cover more than it is large, so a ground need not be cut anew.
    if (!trial.moved.has(object) && trial.movedShare <= COVERED * before.share) return true;
    return (
      after.share >= before.share * (1 - COVERED) &&
      !exceeds(after.offCanvasShare, before.offCanvasShare + runningOff)
    );
  });
}

/** Names of what the rules on tangents would tell. */
function namesOf(plan: Plan, { touches, edges, corners }: TangentMeasure): readonly string[] {
  return [
    ...touches
      .filter(
        ({ one, other, shareOfDiagonal }) =>
          !exceeds(shareOfDiagonal, USUAL_LIMIT) && !placedTogether(plan, one, other),
      )
      .map(({ one, other }) => [one, other].sort((a, b) => a - b).join(' ')),
    ...edges
      .filter(({ shareOfDiagonal }) => !exceeds(shareOfDiagonal, USUAL_LIMIT))
      .map(({ object, side }) => `${object} ${side}`),
    ...corners
      .filter(({ shareOfDiagonal }) => !exceeds(shareOfDiagonal, USUAL_CORNER_LIMIT))
      .map(({ object, corner }) => `${object} ${corner}`),
  ];
}
