import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { TANGENT_REACH, type Touch } from '../../measure/objects/tangents.js';
import { boxDiagonal } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { opposite, shiftsAlong } from '../moves/away.js';
import { firstClear } from '../moves/clear-of-tangents.js';
import { remembered } from '../moves/remembered.js';
import {
  type Shift,
  distanceWords,
  isMovable,
  placedTogether,
  shiftFix,
  withItsParts,
} from '../moves/shift.js';
import { againstLimit, longerThan, objectName, quoted } from '../words/words.js';

export const nearTangent: Rule = {
  id: 'near tangent',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.008, unit: 'part', of: 'the diagonal', most: TANGENT_REACH },
  perObject: true,
  summary: 'Two outlines just touch or just miss each other.',
  explanation:
    'Where two outlines kiss, the eye cannot tell which is in front, the space between them goes flat, and the spot draws attention to itself. Part the two clearly, or let one plainly cover the other. Meant are outlines that come together at a point, over a short stretch or all along a side: of two things side by side, or of a thing that lies on another and just reaches its border, as a head does below the line of the horizon. Not meant are shapes that cross, parts that lie on a thing, outlines that are lost, borders that are drawn as one line, things that the plan places by each other, and even gaps: all round a thing, between parts of one thing, or one beside the other, as between boards and tiles.',
  formula:
    'distance between the seen borders of two shapes that do not cross / diagonal <= limit; where that is as near within 0.08 % of the diagonal for more than 1/3 of the smaller one across, also > 0.05 % of the diagonal, for no more than 60 % of the smaller border, and at no other place beside one of the two as near',
  source: 'common practice, no source',
  mostTold: 3,
  check: (plan, measures, limit) => {
    const found: RuleFinding[] = [];
    for (const touch of measures.tangents.touches) {
      const { one, other, shareOfDiagonal } = touch;
      // Nearest first: in a large picture five in six are farther apart.
      if (exceeds(shareOfDiagonal, limit + NEARLY_ALIKE)) break;
      if (exceeds(shareOfDiagonal, limit) || isFaulty(plan, one) || isFaulty(plan, other)) continue;
      if (!placedTogether(plan, one, other)) found.push(findingOf(plan, measures, touch, limit));
    }
    return found;
  },
};

/** Part of the diagonal: of two touches whose gaps differ by less, the one farther apart may come first. */
const NEARLY_ALIKE = 1e-4;

function isFaulty(plan: Plan, index: number): boolean {
  const object = plan.objects[index];
  return !object || hasFault(plan, object);
}

function findingOf(plan: Plan, measures: Measures, touch: Touch, limit: number): RuleFinding {
  const front = plan.objects[touch.other];
  const behind = plan.objects[touch.one];
  return {
    // Of a crowd few are told.
    get message() {
      return meets(plan, touch, limit);
    },
    remedy: () => {
      const shift = remembered(plan, touch.other, `near tangent ${touch.one}`, limit, () =>
        wayOut(plan, measures, touch, limit),
      );
      return {
        advice: advice(plan, measures, touch, limit, shift),
        fix: shift && shiftFix(plan, measures.parts, shift),
      };
    },
    location: front?.shapeLocation ?? front?.location ?? { line: 0, start: 0, end: 0 },
    get related() {
      return behind
        ? [{ location: behind.location, message: t('The other outline: {0}.', quoted(behind.name)) }]
        : [];
    },
    objects: [touch.one, touch.other],
    at: touch.at,
  };
}

function meets(plan: Plan, { one, other, shareOfDiagonal, within, along }: Touch, limit: number): string {
  const [behind, front] = [objectName(plan, one), objectName(plan, other)];
  const { measured, wanted, isNothing } = againstLimit(shareOfDiagonal, limit, plan.canvas);
  if (along) {
    return within
      ? t(
          '{0} runs along the border of {1} only {2} inside it; more than {3} is clear.',
          front,
          behind,
          measured,
          wanted,
        )
      : t(
          '{0} and {1} run along each other only {2} apart; more than {3} is clear.',
          behind,
          front,
          measured,
          wanted,
        );
  }
  if (within) {
    return isNothing
      ? t(
          '{0} just reaches the border of {1} and does not cross it; more than {2} apart they are clear.',
          front,
          behind,
          wanted,
        )
      : t(
          '{0} ends only {1} short of the border of {2}; more than {3} is clear.',
          front,
          measured,
          behind,
          wanted,
        );
  }
  return isNothing
    ? t('{0} and {1} just touch; more than {2} apart they are clear.', behind, front, wanted)
    : t('{0} and {1} just miss each other, by {2}; more than {3} is clear.', behind, front, measured, wanted);
}

/** Away from each other, or over each other's border, whichever is first clear of all tangents. */
function wayOut(plan: Plan, measures: Measures, touch: Touch, limit: number): Shift | undefined {
  const { other, gap, away } = touch;
  const clear = limit * plan.canvas.diagonal;
  const shifts = moversOf(plan, measures, touch).flatMap((mover) => {
    const off = mover === other ? away : opposite(away);
    return [
      ...shiftsAlong(mover, off, clear - gap, plan.canvas),
      ...shiftsAlong(mover, opposite(off), clear + gap, plan.canvas),
    ];
  });
  return firstClear(
    plan,
    measures,
    shifts,
    ({ touches }) =>
      touches.some(
        (left) =>
          left.one === touch.one && left.other === touch.other && !exceeds(left.shareOfDiagonal, limit),
      ),
    { pair: [touch.one, touch.other] },
  );
}

/** What moves most easily comes first: not the dominant, and the smaller of two. */
function moversOf(plan: Plan, measures: Measures, { one, other }: Touch): readonly number[] {
  const ease = (index: number): number => {
    const object = plan.objects[index];
    return (object?.role === 'dominant' ? 1e9 : 0) + (object ? boxDiagonal(object.outline.box) : 0);
  };
  const free = [
    ...(isMovable(plan, measures.parts, other, one) ? [other] : []),
    ...(isMovable(plan, measures.parts, one, other) ? [one] : []),
  ];
  return free.sort((one, other) => ease(one) - ease(other));
}

function advice(
  plan: Plan,
  measures: Measures,
  { one, other, gap, away }: Touch,
  limit: number,
  shift: Shift | undefined,
): string {
  const { canvas } = plan;
  if (!shift) {
    const apart = longerThan(limit * canvas.diagonal - gap, canvas);
    return t(
      'Draw one of the two anew there, {0} farther away or plainly over the other; no short move of {1} or {2} as a whole does it cleanly.',
      apart,
      objectName(plan, one),
      objectName(plan, other),
    );
  }
  const off = shift.object === other ? away : opposite(away);
  const parts = shift.right * off.x + shift.down * off.y > 0;
  const moved = [withItsParts(plan, measures.parts, shift.object), distanceWords(shift, canvas)] as const;
  return parts
    ? t('Move {0} {1}, which parts them.', ...moved)
    : t('Move {0} {1}, which lets one plainly cover the other.', ...moved);
}
