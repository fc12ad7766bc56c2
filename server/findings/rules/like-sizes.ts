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
  const clear = `more than ${percent(limit)} apart they read as two sizes`;
  const how =
    pair.difference < EQUAL
      ? `of the same size, ${shares}; ${clear}`
      : `of almost the same size, ${shares}, ${percent(pair.difference)} apart; ${clear}`;
  return {
    message: `${inWords(names)} are ${how}.`,
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
    related: larger ? [{ location: larger.location, message: `${quoted(larger.name)} is as large.` }] : [],
    objects: [pair.one, pair.other],
  };
}

function adviceOf(plan: Plan, change: Resizing | undefined, { other }: Pair, limit: number): string {
  if (change) {
    return `Make ${objectName(plan, change.object)} ${percent(change.factor)} as wide and as high, which sets them plainly apart.`;
  }
  return `Make ${objectName(plan, other)} smaller or larger by ${percent(wanted(limit))} of its area, or let another object cover part of it.`;
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
