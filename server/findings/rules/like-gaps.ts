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
const MOST_TOLD = 3;

export const likeGaps: Rule = {
  id: 'like gaps',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.08, unit: 'part', of: 'the larger of two gaps' },
  perObject: true,
  summary: 'Three principal objects in a row stand at almost equal distances.',
  explanation:
    'Equal intervals beat like a metronome; unequal ones group things and lead the eye. A gap is the clear space between what is seen of two principals that stand side by side, or one above the other, each the other’s nearest there. What stands closer than 1 % of the diagonal stands together and has no gap.',
  formula:
    '|gap - next gap| / larger gap <= limit, for two gaps across or two gaps down that share the object between them',
  source: 'common practice, no source',
  check: (plan, measures, limit) =>
    measures.spacing.gapPairs
      .filter(
        (pair) =>
          !exceeds(pair.difference, limit) &&
          rowOf(pair).every((index) => {
            const object = plan.objects[index];
            return object !== undefined && !hasFault(plan, object);
          }),
      )
      .slice(0, MOST_TOLD)
      .map((pair) => findingOf(plan, measures, pair, limit)),
};

/** The three objects, left to right or top to bottom. */
function rowOf({ one, other }: GapPair): readonly [number, number, number] {
  return [one.between[0], one.between[1], other.between[1]];
}

function findingOf(plan: Plan, measures: Measures, pair: GapPair, limit: number): RuleFinding {
  const row = rowOf(pair);
  const names = row.map((index) => objectName(plan, index));
  const middle = objectName(plan, row[1]);
  const { canvas } = plan;
  const location = plan.objects[row[1]]?.location ?? { line: 0, start: 0, end: 0 };
  return {
    message: `${inWords(names)} stand ${pair.one.along === 'across' ? 'side by side' : 'one above the other'} at ${distances(pair, canvas, limit)}.`,
    remedy: () => {
      const shift = remembered(plan, row[1], `like gaps ${row.join(' ')}`, limit, () =>
        uneven(plan, measures, pair, limit),
      );
      return {
        advice: shift
          ? `Move ${withItsParts(plan, measures.parts, shift.object)} ${distanceWords(shift, canvas)}, which makes one gap plainly the wider.`
          : `Bring one of them ${longerThan(nearer(pair, limit), canvas)} nearer to ${middle}; none can go there as a whole without covering or touching something else.`,
        fix: shift && shiftFix(plan, measures.parts, shift),
      };
    },
    location,
    related: [row[0], row[2]].flatMap((index) => {
      const object = plan.objects[index];
      return object
        ? [{ location: object.location, message: `${quoted(object.name)} stands next to it.` }]
        : [];
    }),
    objects: row,
  };
}

function distances({ one, other, difference }: GapPair, canvas: Plan['canvas'], limit: number): string {
  const [first, second] = [length(one.size, canvas), length(other.size, canvas)];
  const uneven = `more than ${percent(limit)} apart reads as uneven`;
  if (difference < EQUAL) return `equal distances, ${first} each; ${uneven}`;
  return `almost equal distances, ${first} and ${second}, ${percent(difference)} apart; ${uneven}`;
}

function ratio(limit: number): number {
  return Math.min(0.9, Math.max(PLAINLY, TIMES_THE_LIMIT * limit));
}

/** How much one gap has to shrink to be plainly the narrower. */
function nearer({ one, other }: GapPair, limit: number): number {
  return Math.max(one.size, other.size) - Math.min(one.size, other.size) * (1 - ratio(limit));
}

/** The shortest move of one of the three along the row after which no two gaps are alike for it. */
function uneven(plan: Plan, measures: Measures, pair: GapPair, limit: number): Shift | undefined {
  const [first, middle, last] = rowOf(pair);
  const { along, size: before } = pair.one;
  const after = pair.other.size;
  const less = 1 - ratio(limit);
  const halfway = (wide: number, narrow: number): number => (narrow - less * wide) / (1 + less);
  const ways = [
    // One end nearer to the middle one, or farther from it.
    { object: first, far: before - after * less },
    { object: first, far: before - after / less },
    { object: last, far: before * less - after },
    { object: last, far: before / less - after },
    // The middle one nearer to either end.
    { object: middle, far: -halfway(after, before) },
    { object: middle, far: halfway(before, after) },
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

/** Whether two pairs of gaps are between the same three, in whatever order they stand. */
function isOf(one: GapPair, other: GapPair): boolean {
  return rowOf(one).every((object) => rowOf(other).includes(object));
}
