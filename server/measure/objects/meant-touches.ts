import type { Canvas as WholeCanvas } from '../../plan/plan.js';
import { once } from '../memory.js';
import type { EdgeTouch, Touch } from './tangents.js';

type Canvas = Pick<WholeCanvas, 'diagonal'>;

/** Gaps that differ by no more than this part of the diagonal are as wide. */
export const AS_NEAR = 0.0008;
const ROUNDING = 1e-9;
/** So many things that keep as far from one edge of the canvas stand in a row. */
const A_ROW = 3;

/** What lies on each object. */
export type Parts = readonly (readonly number[])[];

/**
 * Whether a painter would not have meant that two things come near each other. Meant is how a part lies on its thing
 * and how parts of one thing keep beside each other, a gap that is as wide at another place beside one of the two, as
 * between boards, and how tiles come near each other across the joints that they have with a third one.
 *
 * @param parts what lies on each object
 * @param gapsOf all that an object keeps beside, with a gap
 */
export function notMeant(
  canvas: Canvas,
  parts: () => Parts,
  gapsOf: (object: number) => readonly Touch[],
): (touch: Touch) => boolean {
  const wholes = once(() => wholesOf(parts()));
  return (touch) => {
    const { one, other } = touch;
    if (touch.within && isPartOf(other, one, wholes())) return false;
    if (!touch.along) return !areEvenToAThird(one, gapsOf(one), other, gapsOf(other), canvas);
    const whole = wholes().get(one);
    if (whole !== undefined && whole === wholes().get(other)) return false;
    return !hasAnotherAsWide(touch, gapsOf(one), canvas) && !hasAnotherAsWide(touch, gapsOf(other), canvas);
  };
}

/** Whether two objects, each with the gaps beside it, keep gaps as wide to a third one. */
function areEvenToAThird(
  one: number,
  beside: readonly Touch[],
  other: number,
  besideOther: readonly Touch[],
  canvas: Canvas,
): boolean {
  for (const here of beside) {
    for (const there of besideOther) {
      if (neighbourOf(one, here) === neighbourOf(other, there) && areAlike(here.gap, there.gap, canvas))
        return true;
    }
  }
  return false;
}

/** Whether there is a gap as wide as that of a touch among gaps, of two others than these. */
function hasAnotherAsWide(touch: Touch, gaps: readonly Touch[], canvas: Canvas): boolean {
  for (const gap of gaps) {
    if ((gap.one !== touch.one || gap.other !== touch.other) && areAlike(gap.gap, touch.gap, canvas))
      return true;
  }
  return false;
}

/** Whether what keeps beside an edge of the canvas is none of a row that keeps as far from it. */
export function notOfSeveral(canvas: Canvas, all: () => readonly EdgeTouch[]): (touch: EdgeTouch) => boolean {
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

function areAlike(one: number, other: number, { diagonal }: Canvas): boolean {
  return Math.abs(one - other) <= (AS_NEAR + ROUNDING) * diagonal;
}

/** For every object that is part of a thing, that thing. */
function wholesOf(parts: Parts): ReadonlyMap<number, number> {
  const wholes = new Map<number, number>();
  for (const [whole, own] of parts.entries()) for (const part of own) wholes.set(part, whole);
  return wholes;
}

function isPartOf(object: number, whole: number, wholes: ReadonlyMap<number, number>): boolean {
  for (let on = wholes.get(object); on !== undefined; on = wholes.get(on)) if (on === whole) return true;
  return false;
}
