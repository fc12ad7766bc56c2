import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { higherFirst, inSteps } from '../../measure/areas/place-order.js';
import { containsPoint, distanceToOutline } from '../../measure/areas/areas.js';
import type { Outline } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import { spotOf } from '../../plan/places.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { every } from '../../plan/select.js';
import { crossingsNear } from '../seen/crossings.js';
import { focusFix } from '../advice/focus.js';
import { placeEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, isOff } from '../limits.js';
import { ontoFocus } from '../moves/onto-point.js';
import { distanceWords, isPlacedByFocus, movedWith, shiftFix, withItsParts } from '../moves/shift.js';
import { middleOf } from '../seen/seen.js';
import { againstLimit, quoted } from '../words/words.js';

export const dominantOffFocus: Rule = {
  id: 'dominant off focus',
  severity: 'warning',
  chapter: 'centre of interest',
  limit: { value: 0.05, unit: 'part', of: 'the diagonal' },
  perObject: true,
  summary: 'The dominant object is not at the focal point.',
  explanation:
    'The plan says where the eye is to rest and which object is to rule; they belong together. The object is at the point when what is seen of it holds the point, or its border is close by.',
  formula: 'point outside the visible shape, and distance to its border / diagonal > limit',
  source: 'common practice, no source',
  check: (plan, measures, limit): readonly RuleFinding[] => {
    const { focus } = measures;
    if (!plan.focus || !focus || isOff(plan.focus.at, plan.canvas)) return [];
    // That there are several is told elsewhere; one of them at the point is enough, and one that is not seen is told
    // too.
    const seen = focus.dominants.flatMap(({ object: index, distanceShare, holds }) => {
      const object = plan.objects[index];
      return object && distanceShare !== undefined ? { object, distanceShare, holds } : [];
    });
    if (seen.some(({ holds, distanceShare }) => holds || !exceeds(distanceShare, limit))) return [];
    const [first] = seen.toSorted(
      (one, other) =>
        inSteps(one.distanceShare, 1) - inSteps(other.distanceShare, 1) ||
        higherFirst(plan.canvas)(middleOf(one.object), middleOf(other.object)),
    );
    if (!first) return [];
    const { object, distanceShare } = first;
    const { measured, wanted } = againstLimit(distanceShare, limit, plan.canvas);
    return [
      {
        message: t(
          '{0} is dominant but ends {1} from the focal point; up to {2} is close.',
          quoted(object.name),
          measured,
          wanted,
        ),
        ...(aLittle(plan, measures, object, plan.focus.at, distanceShare, limit) ??
          together(plan, measures, object, plan.focus.at)),
        location: object.location,
        related: [{ location: plan.focus.location, message: t('The focal point.') }],
        objects: [object.index],
        at: plan.focus.at,
      },
    ];
  },
};

/** Within so many times the limit a small move is told, not where to set the object down. */
const NEARBY = 2;

/** A small move of an object that lies nearly there, by a focal point that is not itself placed by the object. */
function aLittle(
  plan: Plan,
  measures: Measures,
  object: PlanObject,
  focus: Point,
  distanceShare: number,
  limit: number,
): Pick<RuleFinding, 'advice' | 'fix'> | undefined {
  if (!plan.focus?.crossing || exceeds(distanceShare, NEARBY * limit)) return undefined;
  const shift = ontoFocus(plan, measures, object.index, focus, distanceShare * plan.canvas.diagonal);
  const fix = shift && shiftFix(plan, measures.parts, shift);
  if (!shift || !fix) return undefined;
  return {
    advice: t(
      'Move {0} {1}, over the focal point, or move the focal point to it.',
      withItsParts(plan, measures.parts, object.index),
      distanceWords(shift, plan.canvas),
    ),
    fix,
  };
}

/** Of the diagonal; flattened curves stand off their boxes by less. */
const ON_BORDER = 0.001;

/** The object to the point where it would be seen there, else the point to a crossing where the object is seen. */
function together(
  plan: Plan,
  measures: Measures,
  object: PlanObject,
  focus: Point,
): Pick<RuleFinding, 'advice' | 'fix'> {
  if (isSeenWhenMoved(plan, object, focus)) {
    return {
      advice: t('Write `at focus` under {0}, or move the focal point to it.', quoted(object.name)),
      fix: {
        title: t('Move {0} to the focal point', quoted(object.name)),
        edits: placeEdit(object, 'focus'),
      },
    };
  }
  const visible = measures.areas.layers[plan.coveringOrder.indexOf(object.index)]?.visible ?? [];
  const crossing = staysWhereItIs(plan, measures, object)
    ? crossingsNear(plan, middleOf(object)).find(({ at }) => containsPoint(visible, at))
    : undefined;
  const fix = focusFix(plan, crossing?.words);
  return {
    advice: crossing
      ? t('Move the focal point to {0}, which lies on {1}.', crossing.words, quoted(object.name))
      : t('Move {0} to the focal point, or the focal point to it.', quoted(object.name)),
    ...(fix ? { fix } : {}),
  };
}

/** Whether a place is inside of an outline; most of a crowd lie elsewhere, as their boxes tell. */
function holds({ box, rings, fillRule }: Outline, { x, y }: Point): boolean {
  if (x < box.left || x > box.right || y < box.top || y > box.bottom) return false;
  return containsPoint(rings, { x, y }, fillRule);
}

/**
 * Whether an object and all in front of it stay where they are when the focal point moves: none of them is placed by
 * it.
 */
function staysWhereItIs(plan: Plan, { parts }: Measures, object: PlanObject): boolean {
  const placedByFocus = plan.objects.filter(isPlacedByFocus);
  const moved = new Set(placedByFocus.flatMap(({ index }) => movedWith(plan, parts, index)));
  const position = plan.coveringOrder.indexOf(object.index);
  return plan.coveringOrder.slice(position).every((other) => !moved.has(other));
}

/**
 * Whether it would be seen at the point, set down there by its middle or by what its `at` says: with nothing in front,
 * nor with what lies there on it now and may move with it. A focal point that is no crossing may itself be placed by
 * the object.
 */
function isSeenWhenMoved(plan: Plan, object: PlanObject, focus: Point): boolean {
  const { outline, node, index } = object;
  if (!plan.focus?.crossing || every(node.children, 'repeat').length > 0) return false;
  const by = every(node.children, 'at').at(-1)?.statement.by?.choice ?? 'centre';
  const heldBy = spotOf(outline.box, by);
  if (!holds(outline, heldBy) && distanceToOutline(outline.rings, heldBy) > ON_BORDER * plan.canvas.diagonal)
    return false;
  const inFront = plan.coveringOrder.slice(plan.coveringOrder.indexOf(index) + 1);
  return inFront.every((other) => {
    const cover = plan.objects[other]?.outline ?? outline;
    return !holds(cover, focus) && !holds(cover, heldBy);
  });
}
