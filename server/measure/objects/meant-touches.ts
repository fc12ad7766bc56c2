import type { Canvas, Plan } from '../../plan/plan.js';
import { partsOf } from '../areas/parts.js';
import type { EdgeTouch, Touch } from './tangents.js';

/** Gaps that differ by no more than this part of the diagonal are as wide. */
export const AS_NEAR = 0.0008;
const ROUNDING = 1e-9;
/** So many things that keep as far from one edge of the canvas stand in a row. */
const A_ROW = 3;

/**
 * Whether a painter would not have meant that two things come near each other. Meant is how a part lies on its thing
 * and how parts of one thing keep beside each other, a gap that is as wide at another place beside one of the two, as
 * between boards, and how tiles come near each other across the joints that they have with a third one.
 *
 * @param touchesOf all that an object comes near
 */
export function notMeant(
  plan: Plan,
  touchesOf: (object: number) => readonly Touch[],
): (touch: Touch) => boolean {
  let wholes: ReadonlyMap<number, number> | undefined;
  const wholeOf = (object: number): number | undefined => (wholes ??= wholesOf(plan)).get(object);
  const gaps = new Map<number, readonly Touch[]>();
  const gapsBeside = (object: number): readonly Touch[] => {
    const beside = gaps.get(object) ?? touchesOf(object).filter(({ along }) => along);
    gaps.set(object, beside);
    return beside;
  };
  const haveEvenGapsToAThird = (one: number, other: number): boolean =>
    gapsBeside(one).some((here) =>
      gapsBeside(other).some(
        (there) =>
          neighbourOf(one, here) === neighbourOf(other, there) && areAlike(here.gap, there.gap, plan.canvas),
      ),
    );
  return ({ one, other, gap, along, within }) => {
    if (within && isPartOf(other, one, wholeOf)) return false;
    if (!along) return !haveEvenGapsToAThird(one, other);
    const whole = wholeOf(one);
    if (whole !== undefined && whole === wholeOf(other)) return false;
    return ![one, other].some((object) =>
      gapsBeside(object).some(
        (beside) => (beside.one !== one || beside.other !== other) && areAlike(beside.gap, gap, plan.canvas),
      ),
    );
  };
}

/** Whether what keeps beside an edge of the canvas is none of a row that keeps as far from it. */
export function notOfSeveral(
  canvas: Pick<Canvas, 'diagonal'>,
  all: () => readonly EdgeTouch[],
): (touch: EdgeTouch) => boolean {
  let known: readonly EdgeTouch[] | undefined;
  return ({ along, side, gap }) => {
    if (!along) return true;
    known ??= all().filter((other) => other.along);
    return known.filter((other) => other.side === side && areAlike(other.gap, gap, canvas)).length < A_ROW;
  };
}

function neighbourOf(object: number, { one, other }: Touch): number {
  return object === one ? other : one;
}

function areAlike(one: number, other: number, { diagonal }: Pick<Canvas, 'diagonal'>): boolean {
  return Math.abs(one - other) <= (AS_NEAR + ROUNDING) * diagonal;
}

/** For every object that is part of a thing, that thing. */
function wholesOf(plan: Plan): ReadonlyMap<number, number> {
  return new Map(partsOf(plan).flatMap((parts, whole) => parts.map((part) => [part, whole] as const)));
}

function isPartOf(object: number, whole: number, wholeOf: (object: number) => number | undefined): boolean {
  for (let on = wholeOf(object); on !== undefined; on = wholeOf(on)) if (on === whole) return true;
  return false;
}
