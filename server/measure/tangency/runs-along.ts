import { pointsOf } from '../../plan/build-outline.js';
import type { Outline } from '../../plan/geometry/outline.js';
import { boxDiagonal, boxesOverlap } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import { lengthWithin } from './meeting.js';
import { MOST_SIDES } from './relation.js';
import { sidesOf } from './seen-border.js';
import { widened } from './segments.js';

/** Part of the diagonal within which two borders run beside each other. */
const BESIDE = 0.008;
/** For so much of the smaller one's extent. */
const LONG = 0.3;

const known = new WeakMap<Outline, WeakMap<Outline, boolean>>();

/** Whether two shapes share a border, or keep close beside each other, for some length: a roof and its wall. */
export function runsAlong(one: Outline, other: Outline, canvas: Pick<Canvas, 'diagonal'>): boolean {
  const beside = BESIDE * canvas.diagonal;
  if (!boxesOverlap(widened(one.box, beside), other.box)) return false;
  if (Math.max(pointsOf(one), pointsOf(other)) > MOST_SIDES) return false;
  const ofOne = known.get(one) ?? new WeakMap<Outline, boolean>();
  known.set(one, ofOne);
  const extent = Math.min(boxDiagonal(one.box), boxDiagonal(other.box));
  const answer = ofOne.get(other) ?? lengthWithin(sidesOf(one), sidesOf(other), beside) >= LONG * extent;
  ofOne.set(other, answer);
  return answer;
}
