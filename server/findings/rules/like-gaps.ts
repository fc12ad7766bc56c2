import { t } from '../../../grammar/index.js';
import { partsOf } from '../../measure/areas/parts.js';
import type { Measures } from '../../measure/measures.js';
import { type GapPair, measureSpacing } from '../../measure/objects/spacing.js';
import { measureTangents } from '../../measure/objects/tangents.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { leavesTheRest } from '../moves/clear-of-tangents.js';
import { remembered } from '../moves/remembered.js';
import {
  type Shift,
  distanceWords,
  isMovable,
  movedWith,
  roundedOn,
  shiftFix,
  shifted,
  withItsParts,
} from '../moves/shift.js';
import { length, longerThan, objectName, percent, quoted } from '../words/words.js';

/** Gaps as 3 to 4 are plainly unlike. */
const PLAINLY = 0.25;
const TIMES_THE_LIMIT = 1.5;
const TANGENT = 0.008;
const EQUAL = 0.001;

export const likeGaps: Rule = {
  id: 'like gaps',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.08, unit: 'part', of: 'the larger of two gaps' },
  perObject: true,
  summary: 'Two gaps between principal objects in a row are almost equal.',
  explanation:
    'Equal intervals beat like a metronome; unequal ones group things and lead the eye. A gap is the clear space between what is seen of two principals that stand side by side, or one above the other, each the other’s nearest there; every gap of a row is held against every other. What stands closer than 1 % of the diagonal stands together and has no gap.',
  formula: '|gap - other gap| / larger gap <= limit, for two gaps across or two gaps down of one row',
  source: 'common practice, no source',
  mostTold: 3,
  check: (plan, measures, limit) => {
    const like = alike(measures.spacing, limit).filter((pair) =>
      objectsOf(pair).every((index) => {
        const object = plan.objects[index];
        return object !== undefined && !hasFault(plan, object);
      }),
    );
    return like.filter((pair) => !isLinked(pair, like)).map((pair) => findingOf(plan, measures, pair, limit));
  },
};

/** The objects left to right or top to bottom: three, or four when the gaps share none. */
function objectsOf({ one, other }: GapPair): readonly number[] {
  return [...new Set([...one.between, ...other.between])];
}

/** Whether gaps that lie nearer to each other lead from the one to the other, so that they are told by those. */
function isLinked({ one, other, apart }: GapPair, like: readonly GapPair[]): boolean {
  const nearer = like.filter((pair) => pair.apart < apart);
  const reached = new Set([one]);
  for (const gap of reached) {
    for (const pair of nearer) {
      if (pair.one === gap) reached.add(pair.other);
      if (pair.other === gap) reached.add(pair.one);
    }
  }
  return reached.has(other);
}

function findingOf(plan: Plan, measures: Measures, pair: GapPair, limit: number): RuleFinding {
  const { canvas } = plan;
  const row = objectsOf(pair);
  const [first = 0, second = 0] = row;
  const at = pair.apart === 0 ? second : first;
  return {
    message: standWords(plan, pair, limit),
    remedy: () => {
      const shift = remembered(plan, at, `like gaps ${row.join(' ')}`, limit, () =>
        uneven(plan, measures, pair, limit),
      );
      return {
        advice: shift
          ? t(
              'Move {0} {1}, which makes one gap plainly the wider.',
              withItsParts(plan, measures.parts, shift.object),
              distanceWords(shift, canvas),
            )
          : broughtNearer(plan, pair, longerThan(nearer(pair, limit), canvas)),
        fix: shift && shiftFix(plan, measures.parts, shift),
      };
    },
    location: plan.objects[at]?.location ?? { line: 0, start: 0, end: 0 },
    related: row.flatMap((index) => {
      const object = plan.objects[index];
      return object && index !== at
        ? [{ location: object.location, message: t('{0} stands next to it.', quoted(object.name)) }]
        : [];
    }),
    objects: row,
  };
}

function namesOf(plan: Plan, objects: readonly number[]): string {
  return inWords(objects.map((index) => objectName(plan, index)));
}

function standWords(plan: Plan, pair: GapPair, limit: number): string {
  const { one, other, difference, apart } = pair;
  const isAcross = one.along === 'across';
  const names =
    apart === 0
      ? ([namesOf(plan, objectsOf(pair))] as const)
      : ([namesOf(plan, one.between), namesOf(plan, other.between)] as const);
  const first = length(one.size, plan.canvas);
  if (difference < EQUAL) return standEqual(isAcross, names, [first, percent(limit)]);
  const figures = [first, length(other.size, plan.canvas), percent(difference), percent(limit)] as const;
  return standAlmostEqual(isAcross, names, figures);
}

/** What stands in one row of gaps, or beside the one gap and beside the other. */
type Standing = readonly [string] | readonly [string, string];

function standEqual(isAcross: boolean, names: Standing, figures: readonly [string, string]): string {
  if (names.length === 1)
    return isAcross
      ? t(
          '{0} stand side by side at equal distances, {1} each; more than {2} apart reads as uneven.',
          ...names,
          ...figures,
        )
      : t(
          '{0} stand one above the other at equal distances, {1} each; more than {2} apart reads as uneven.',
          ...names,
          ...figures,
        );
  return isAcross
    ? t(
        'In one row, side by side, {0} stand as far from each other as {1}, {2} each; more than {3} apart reads as uneven.',
        ...names,
        ...figures,
      )
    : t(
        'In one row, one above the other, {0} stand as far from each other as {1}, {2} each; more than {3} apart reads as uneven.',
        ...names,
        ...figures,
      );
}

function standAlmostEqual(
  isAcross: boolean,
  names: Standing,
  figures: readonly [string, string, string, string],
): string {
  if (names.length === 1)
    return isAcross
      ? t(
          '{0} stand side by side at almost equal distances, {1} and {2}, {3} apart; more than {4} apart reads as uneven.',
          ...names,
          ...figures,
        )
      : t(
          '{0} stand one above the other at almost equal distances, {1} and {2}, {3} apart; more than {4} apart reads as uneven.',
          ...names,
          ...figures,
        );
  return isAcross
    ? t(
        'In one row, side by side, {0} stand almost as far from each other as {1}, {2} and {3}, {4} apart; more than {5} apart reads as uneven.',
        ...names,
        ...figures,
      )
    : t(
        'In one row, one above the other, {0} stand almost as far from each other as {1}, {2} and {3}, {4} apart; more than {5} apart reads as uneven.',
        ...names,
        ...figures,
      );
}

function broughtNearer(plan: Plan, { one, other, apart }: GapPair, by: string): string {
  return apart === 0
    ? t(
        'Bring one of them nearer to {0} by {1}; none can go there as a whole without covering or touching something else.',
        objectName(plan, other.between[0]),
        by,
      )
    : t(
        'Bring {0} nearer to each other, or {1}, by {2}; none can go there as a whole without covering or touching something else.',
        namesOf(plan, one.between),
        namesOf(plan, other.between),
        by,
      );
}

function ratio(limit: number): number {
  return Math.min(0.9, Math.max(PLAINLY, TIMES_THE_LIMIT * limit));
}

/** How much one gap has to shrink to be plainly the narrower. */
function nearer({ one, other }: GapPair, limit: number): number {
  return Math.max(one.size, other.size) - Math.min(one.size, other.size) * (1 - ratio(limit));
}

/** The shortest move of one of them along the row after which fewer gaps are alike, and not these. */
function uneven(plan: Plan, measures: Measures, pair: GapPair, limit: number): Shift | undefined {
  const { along, size: before } = pair.one;
  const after = pair.other.size;
  const less = 1 - ratio(limit);
  const [first, second] = pair.one.between;
  const [third, last] = pair.other.between;
  const halfway = (wide: number, narrow: number): number => (narrow - less * wide) / (1 + less);
  const inner =
    second === third
      ? // The one in the middle nearer to either end.
        [
          { object: second, far: -halfway(after, before) },
          { object: second, far: halfway(before, after) },
        ]
      : [
          { object: second, far: after * less - before },
          { object: second, far: after / less - before },
          { object: third, far: after - before * less },
          { object: third, far: after - before / less },
        ];
  const ways = [
    // One end nearer to its neighbour, or farther from it.
    { object: first, far: before - after * less },
    { object: first, far: before - after / less },
    { object: last, far: before * less - after },
    { object: last, far: before / less - after },
    ...inner,
  ];
  const known = alike(measures.spacing, limit).length;
  return ways
    .filter(
      ({ object }) => isMovable(plan, measures.parts, object) && plan.objects[object]?.role !== 'dominant',
    )
    .map(({ object, far }): Shift => {
      const rounded = roundedOn(far, plan.canvas);
      return along === 'across' ? { object, right: rounded, down: 0 } : { object, right: 0, down: rounded };
    })
    .toSorted((one, other) => Math.abs(one.right + one.down) - Math.abs(other.right + other.down))
    .find((shift) => {
      const trial = shifted(plan, measures, shift);
      const left = alike(measureSpacing(trial.plan, trial.areas, partsOf(trial.plan)), limit);
      if (left.length >= known || left.some((other) => isOf(other, pair))) return false;
      if (!leavesTheRest(plan, measures, trial)) return false;
      const moved = new Set(movedWith(plan, measures.parts, shift.object));
      const { touches, edges } = measureTangents(trial.plan, trial.areas, moved);
      return ![...touches, ...edges].some(({ shareOfDiagonal }) => !exceeds(shareOfDiagonal, TANGENT));
    });
}

function alike({ gapPairs }: Measures['spacing'], limit: number): readonly GapPair[] {
  return gapPairs.filter(({ difference }) => !exceeds(difference, limit));
}

/** Whether two pairs of gaps are between the same objects, in whatever order they stand. */
function isOf(one: GapPair, other: GapPair): boolean {
  const objects = objectsOf(other);
  return objectsOf(one).every((object) => objects.includes(object));
}
