import { marked, said, type Side, t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { higherFirst, inSteps } from '../../measure/areas/place-order.js';
import { TANGENT_REACH, type EdgeTouch } from '../../measure/objects/tangents.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { opposite, shiftsAlong } from '../moves/away.js';
import { firstClear } from '../moves/clear-of-tangents.js';
import { remembered } from '../moves/remembered.js';
import { type Shift, distanceWords, isMovable, shiftFix, withItsParts } from '../moves/shift.js';
import { againstLimit, length, longerThan, objectName } from '../words/words.js';

/** Part of an object that may be cut off by letting it run off plainly. */
const RUNNING_OFF = 0.15;

export const kissedEdge: Rule = {
  id: 'kissed edge',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.008, unit: 'part', of: 'the diagonal', most: TANGENT_REACH },
  perObject: true,
  summary: 'An outline just reaches, misses or runs over an edge of the canvas.',
  explanation:
    'An outline that just kisses the edge ties the object to the frame and stops the eye there. Keep it clear of the edge, or let it run off plainly. Meant is a point, a curve or a straight side that comes so near. A side that lies on the edge is bounded by it, and an even margin is drawn on purpose: as far from two opposite edges, or from one edge for three things in a row. Neither is told, nor an outline that is lost.',
  formula:
    '|distance from the outermost place of the outline to the edge| / diagonal <= limit; as near for more than 1/3 of its extent along the edge only when it ends more than 0.05 % of the diagonal inside it',
  source: 'common practice, no source',
  mostTold: 3,
  check: (plan, measures, limit) =>
    measures.tangents.edges
      .filter(({ object, shareOfDiagonal }) => {
        const of = plan.objects[object];
        return of !== undefined && !hasFault(plan, of) && !exceeds(shareOfDiagonal, limit);
      })
      .toSorted(
        (one, other) =>
          inSteps(one.shareOfDiagonal, 1) - inSteps(other.shareOfDiagonal, 1) ||
          higherFirst(plan.canvas)(one.at, other.at),
      )
      .map((touch) => findingOf(plan, measures, touch, limit)),
};

function findingOf(plan: Plan, measures: Measures, touch: EdgeTouch, limit: number): RuleFinding {
  const { object, side, gap, shareOfDiagonal, at, along } = touch;
  const of = plan.objects[object];
  const name = objectName(plan, object);
  const { measured, wanted, isNothing } = againstLimit(shareOfDiagonal, limit, plan.canvas);
  const kind = along ? 'along' : gap > 0 ? 'inside' : 'over';
  const message = isNothing
    ? said(MESSAGES.touching[side], name, wanted)
    : said(MESSAGES[kind][side], name, measured, wanted);
  return {
    message,
    remedy: () => {
      const shift = remembered(plan, object, `kissed edge ${side}`, limit, () =>
        wayOut(plan, measures, touch, limit),
      );
      return {
        advice: advice(plan, measures, touch, limit, shift),
        fix: shift && shiftFix(plan, measures.parts, shift),
      };
    },
    location: of?.shapeLocation ?? of?.location ?? { line: 0, start: 0, end: 0 },
    objects: [object],
    at,
  };
}

/** What is said of an outline at each edge. */
const MESSAGES = {
  touching: {
    left: marked('{0} just touches the left edge of the canvas; more than {1} off it is clear.'),
    right: marked('{0} just touches the right edge of the canvas; more than {1} off it is clear.'),
    top: marked('{0} just touches the top edge of the canvas; more than {1} off it is clear.'),
    bottom: marked('{0} just touches the bottom edge of the canvas; more than {1} off it is clear.'),
  },
  along: {
    left: marked('{0} runs along the left edge of the canvas only {1} inside it; more than {2} is clear.'),
    right: marked('{0} runs along the right edge of the canvas only {1} inside it; more than {2} is clear.'),
    top: marked('{0} runs along the top edge of the canvas only {1} inside it; more than {2} is clear.'),
    bottom: marked(
      '{0} runs along the bottom edge of the canvas only {1} inside it; more than {2} is clear.',
    ),
  },
  inside: {
    left: marked('{0} ends only {1} short of the left edge of the canvas; more than {2} is clear.'),
    right: marked('{0} ends only {1} short of the right edge of the canvas; more than {2} is clear.'),
    top: marked('{0} ends only {1} short of the top edge of the canvas; more than {2} is clear.'),
    bottom: marked('{0} ends only {1} short of the bottom edge of the canvas; more than {2} is clear.'),
  },
  over: {
    left: marked('{0} runs over the left edge of the canvas by only {1}; more than {2} is plain.'),
    right: marked('{0} runs over the right edge of the canvas by only {1}; more than {2} is plain.'),
    top: marked('{0} runs over the top edge of the canvas by only {1}; more than {2} is plain.'),
    bottom: marked('{0} runs over the bottom edge of the canvas by only {1}; more than {2} is plain.'),
  },
} as const satisfies Readonly<Record<string, Readonly<Record<Side, string>>>>;

function inward(side: Side): Point {
  switch (side) {
    case 'left':
      return { x: 1, y: 0 };
    case 'right':
      return { x: -1, y: 0 };
    case 'top':
      return { x: 0, y: 1 };
    case 'bottom':
      return { x: 0, y: -1 };
  }
}

/**
 * In from the edge, or plainly over it; what runs over it already goes on, and a side that keeps beside it is cut off
 * by it.
 */
function wayOut(
  plan: Plan,
  measures: Measures,
  { object, side, gap, along }: EdgeTouch,
  limit: number,
): Shift | undefined {
  if (!isMovable(plan, measures.parts, object)) return undefined;
  const clear = limit * plan.canvas.diagonal;
  const ways = [
    ...shiftsAlong(object, inward(side), clear - gap, plan.canvas),
    ...shiftsAlong(object, opposite(inward(side)), along ? gap : clear + gap, plan.canvas),
  ];
  const shortest = ways.toSorted(
    (one, other) => Math.abs(one.right + one.down) - Math.abs(other.right + other.down),
  );
  return firstClear(
    plan,
    measures,
    shortest,
    ({ edges }) =>
      edges.some(
        (left) => left.object === object && left.side === side && !exceeds(left.shareOfDiagonal, limit),
      ),
    { runningOff: RUNNING_OFF },
  );
}

function advice(
  plan: Plan,
  measures: Measures,
  { object, side, gap, along }: EdgeTouch,
  limit: number,
  shift: Shift | undefined,
): string {
  const { canvas } = plan;
  const clear = limit * canvas.diagonal;
  if (!shift && along) {
    return t(
      'Let {0} reach the edge, {1} farther out, or end there {2} or more farther in; moving it as a whole does not do it cleanly.',
      objectName(plan, object),
      length(gap, canvas),
      longerThan(clear - gap, canvas),
    );
  }
  if (!shift) {
    return t(
      'Draw the outline of {0} there {1} or more farther in, or {2} farther out; moving it as a whole does not do it cleanly.',
      objectName(plan, object),
      longerThan(clear - gap, canvas),
      longerThan(clear + gap, canvas),
    );
  }
  const isIn = shift.right * inward(side).x + shift.down * inward(side).y > 0;
  const moved = [withItsParts(plan, measures.parts, object), distanceWords(shift, canvas)] as const;
  if (isIn) return t('Move {0} {1}, which takes it clear of the edge.', ...moved);
  return along
    ? t('Move {0} {1}, which lets the edge cut it off.', ...moved)
    : t('Move {0} {1}, which lets it run off plainly.', ...moved);
}
