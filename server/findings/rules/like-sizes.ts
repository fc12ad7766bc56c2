import { t } from '../../../grammar/index.js';
import { partsOf } from '../../measure/areas/parts.js';
import type { Measures } from '../../measure/measures.js';
import { measureSpacing } from '../../measure/objects/spacing.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { leavesTheRest } from '../moves/clear-of-tangents.js';
import { remembered } from '../moves/remembered.js';
import { type Resizing, resized, resizingFix } from '../moves/resize.js';
import { bothShares, objectName, percent, quoted } from '../words/words.js';

type Pair = Measures['spacing']['sizePairs'][number];

/** Sizes that differ by so much of the larger are plainly unlike. */
const PLAINLY = 0.2;
const TIMES_THE_LIMIT = 1.5;
const EQUAL = 0.001;

export const likeSizes: Rule = {
  id: 'like sizes',
  severity: 'hint',
  chapter: 'objects',
  limit: { value: 0.08, unit: 'part', of: 'the larger of two areas' },
  perObject: true,
  summary: 'Two principal objects are of almost the same size.',
  explanation:
    'Two things of one size read as a pair, and the eye goes to and fro between them. Large, middling and small keeps it moving and says which matters. A size is the visible area of a principal with what lies on it; one drawn as several shapes counts by the largest of them.',
  formula: '1 - smaller area / larger area <= limit, for principals next to each other in size',
  source: 'common practice, no source',
  mostTold: 3,
  check: (plan, measures, limit) =>
    measures.spacing.sizePairs
      .filter(({ one, other, difference }) => {
        const pair = [plan.objects[one], plan.objects[other]];
        return !exceeds(difference, limit) && pair.every((object) => object && !hasFault(plan, object));
      })
      .map((pair) => findingOf(plan, measures, pair, limit)),
};

function findingOf(plan: Plan, measures: Measures, pair: Pair, limit: number): RuleFinding {
  const [larger, smaller] = [plan.objects[pair.one], plan.objects[pair.other]];
  const sizes = new Map(measures.spacing.principals.map(({ object, size }) => [object, size]));
  const names = [pair.one, pair.other].map((object) => objectName(plan, object));
  const shares = bothShares(sizes.get(pair.one) ?? 0, sizes.get(pair.other) ?? 0);
  return {
    message:
      pair.difference < EQUAL
        ? t(
            '{0} are of the same size, {1}; more than {2} apart they read as two sizes.',
            inWords(names),
            shares,
            percent(limit),
          )
        : t(
            '{0} are of almost the same size, {1}, {2} apart; more than {3} apart they read as two sizes.',
            inWords(names),
            shares,
            percent(pair.difference),
            percent(limit),
          ),
    remedy: () => {
      const change = remembered(plan, pair.other, `like sizes ${pair.one}`, limit, () =>
        apart(plan, measures, pair, limit),
      );
      return {
        advice: adviceOf(plan, change, pair, limit),
        fix: change && resizingFix(plan, measures.parts, change),
      };
    },
    location: smaller?.location ?? { line: 0, start: 0, end: 0 },
    related: larger
      ? [{ location: larger.location, message: t('{0} is as large.', quoted(larger.name)) }]
      : [],
    objects: [pair.one, pair.other],
  };
}

function adviceOf(plan: Plan, change: Resizing | undefined, { other }: Pair, limit: number): string {
  if (change) {
    return t(
      'Make {0} {1} as wide and as high, which sets them plainly apart.',
      objectName(plan, change.object),
      percent(change.factor),
    );
  }
  return t(
    'Make {0} smaller or larger by {1} of its area, or let another object cover part of it.',
    objectName(plan, other),
    percent(wanted(limit)),
  );
}

function wanted(limit: number): number {
  return Math.max(PLAINLY, TIMES_THE_LIMIT * limit);
}

/**
 * One of the two at another size, the dominant rather larger and another rather smaller, so that no two principals
 * are alike for it. Each is tried on the picture.
 */
function apart(plan: Plan, measures: Measures, pair: Pair, limit: number): Resizing | undefined {
  const sizes = new Map(measures.spacing.principals.map(({ object, size }) => [object, size]));
  const [large, small] = [sizes.get(pair.one) ?? 0, sizes.get(pair.other) ?? 0];
  const less = 1 - wanted(limit);
  // Factors of length that make the one of the two the smaller, or the larger, by as much as is wanted.
  const smaller = [
    { object: pair.other, factor: Math.sqrt((large * less) / small) },
    { object: pair.one, factor: Math.sqrt((small * less) / large) },
  ];
  const larger = [
    { object: pair.one, factor: Math.sqrt(small / less / large) },
    { object: pair.other, factor: Math.sqrt(large / less / small) },
  ];
  const isDominant = ({ object }: Resizing): boolean => plan.objects[object]?.role === 'dominant';
  const ways = [
    ...smaller.filter((way) => !isDominant(way)),
    ...larger.filter(isDominant),
    ...larger.filter((way) => !isDominant(way)),
  ];
  const known = alike(measures.spacing, limit).length;
  return ways.map(rounded).find((way) => {
    const trial = resized(plan, measures, way);
    const spacing = measureSpacing(trial.plan, trial.areas, partsOf(trial.plan));
    const left = alike(spacing, limit);
    if (left.length >= known || left.some((other) => isOf(other, pair))) return false;
    return way.factor < 1 || leavesTheRest(plan, measures, trial);
  });
}

function alike({ sizePairs }: Measures['spacing'], limit: number): readonly Pair[] {
  return sizePairs.filter(({ difference }) => !exceeds(difference, limit));
}

/** Whether two pairs are the same two objects, whichever is the larger. */
function isOf(one: Pair, other: Pair): boolean {
  return [one.one, one.other].every((object) => object === other.one || object === other.other);
}

/** To whole percent, on from what is there. */
function rounded({ object, factor }: Resizing): Resizing {
  return { object, factor: (factor < 1 ? Math.floor(factor * 100) : Math.ceil(factor * 100)) / 100 };
}
