import { t } from '../../../grammar/index.js';
import type { Stop } from '../../measure/eye-path/eye-path.js';
import type { Measures } from '../../measure/measures.js';
import { dominantsAtFocus } from '../../measure/emphasis/at-focus.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { EyePath, Plan } from '../../plan/plan.js';
import { replace, rightBehind } from '../edits/edit.js';
import type { Fix, Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { seenAt } from '../seen/seen.js';
import { howStrongly } from '../words/emphasis.js';
import { counted, objectName, percent, quoted } from '../words/words.js';

export const pathOrder: Rule = {
  id: 'path order',
  severity: 'hint',
  chapter: 'eye path',
  limit: { value: 0.1, unit: 'part', of: 'the emphasis of a stop, below the one before' },
  perObject: false,
  summary: 'The stops of the path do not rise to the focal point.',
  explanation:
    'The eye goes from what is weaker to what is stronger. A path that it is to take rises from stop to stop up to the first one at the focal point, or the eye leaps over what is weak; all stops there are one centre of interest, and after it the eye may wander off over weaker ones and come back. A stop of which nothing is seen is none; that is a warning, for the plan leads the eye there. The emphasis of a stop is that of the strongest place along its borders, of a stop at the focal point at least that of the focal point.',
  formula:
    'a stop of which nothing is seen; or no stop whose visible shape holds the focal point or comes within 5 % of the diagonal of it; or, up to the first such stop, emphasis < (1 - limit) x that of the stop before, the strongest stop at the focal point counting for all there; or a later stop away from it with (1 - limit) x its emphasis > that',
  source: 'common practice, no source',
  check: (plan, measures, limit) => {
    const { path } = plan;
    const { stops } = measures.eyePath;
    if (!path || stops.length === 0 || !isFarEnough(plan, stops)) return [];
    const unseen = stops.filter(({ isSeen }) => !isSeen);
    if (unseen.length > 0) return [unseenStops(plan, path, stops, unseen)];
    if (!plan.focus) return [];
    const first = stops.findIndex(({ isAtFocus }) => isAtFocus);
    if (first < 0) return neverArrives(plan, measures, path, stops);
    return outOfOrder(plan, path, stops, first, limit);
  },
};

/** Without values and colours nothing has emphasis yet. */
function isFarEnough({ objects, problems }: Plan, stops: readonly Stop[]): boolean {
  if (problems.some(({ code }) => code === 'unknown name')) return false;
  return (
    stops.every(({ object }) => objects[object]?.waiting === false) &&
    stops.some(({ strength }) => strength > 0)
  );
}

function unseenStops(
  plan: Plan,
  path: EyePath,
  stops: readonly Stop[],
  unseen: readonly Stop[],
): RuleFinding {
  const names = [...new Set(unseen.map(({ object }) => objectName(plan, object)))];
  const told = inWords(names);
  const left = stops.filter(({ isSeen }) => isSeen);
  return {
    message: t('The path stops at {0}, of which nothing is seen.', told),
    severity: 'warning',
    advice:
      names.length > 1
        ? t('Take {0} out of the path, or bring them to light.', told)
        : t('Take {0} out of the path, or bring it to light.', told),
    location: path.location,
    objects: unseen.map(({ object }) => object),
    ...(left.length > 0 ? { fix: order(plan, path, left, t('Take {0} out of the path', told)) } : {}),
  };
}

/** The dominant object is where the eye is to end up, when it lies at the focal point. */
function neverArrives(
  plan: Plan,
  measures: Measures,
  path: EyePath,
  stops: readonly Stop[],
): readonly RuleFinding[] {
  const end = stops.at(-1);
  if (!end) return [];
  const [there = -1] = dominantsAtFocus(measures.focus);
  const dominant = plan.objects[there];
  return [
    {
      message: t(
        'The path ends at {0} and none of its stops is at the focal point.',
        objectName(plan, end.object),
      ),
      advice: dominant ? t('Let it go on to {0}.', quoted(dominant.name)) : elsewhere(plan, measures, end),
      location: path.location,
      at: end.at,
      objects: [end.object],
      ...(dominant
        ? {
            fix: {
              title: t('Let the path go on to {0}', quoted(dominant.name)),
              edits: [replace(rightBehind(path.stopsLocation), `, ${dominant.name}`)],
            },
          }
        : {}),
    },
  ];
}

/** Where nothing dominant lies there, by what is seen there. */
function elsewhere(plan: Plan, measures: Measures, end: Stop): string {
  const seen = plan.focus && seenAt(plan, measures, plan.focus.at);
  const last = objectName(plan, end.object);
  if (!seen || seen.plane === 'background')
    return t('Set an object there and let it go on to that, or bring {0} there.', last);
  return t('Let it go on to {0}, which is seen there, or bring {1} there.', quoted(seen.name), last);
}

function outOfOrder(
  plan: Plan,
  path: EyePath,
  stops: readonly Stop[],
  first: number,
  limit: number,
): readonly RuleFinding[] {
  const faults = faultsOf(stops, first, limit);
  const [worst] = [...faults].sort((one, other) => other.fall - one.fall || one.from - other.from);
  const [before, after] = [stops[worst?.from ?? -1], stops[worst?.to ?? -1]];
  if (!worst || !before || !after) return [];
  const better = exchanged(plan, path, stops, first, limit);
  const more = faults.length - 1;
  const told = [
    objectName(plan, before.object),
    objectName(plan, after.object),
    after.strength > 0 ? howStrongly(after.strength, before.strength) : t('not at all'),
    percent(1 - limit),
  ] as const;
  return [
    {
      message:
        (after.isAtFocus
          ? t(
              'The path is to rise to the focal point, but {0} draws the eye more than {1}, which is at the focal point and draws it {2}; from {3} on is let pass.',
              ...told,
            )
          : t(
              'The path is to rise to the focal point, but {0} draws the eye more than {1}, to which it leads and which draws it {2}; from {3} on is let pass.',
              ...told,
            )) + moreStops(more),
      advice: better?.advice ?? strengthened(plan, before, after, limit),
      location: path.location,
      at: before.at,
      objects: [before.object, after.object],
      ...(better ? { fix: better.fix } : {}),
    },
  ];
}

function moreStops(count: number): string {
  if (count === 0) return '';
  return ` ${count === 1 ? t('So it is at one more stop.') : t('So it is at {0} more stops.', counted(count))}`;
}

/** What the weaker stop lacks, where no other order of the stops mends it. */
function strengthened(plan: Plan, before: Stop, after: Stop, limit: number): string {
  const name = objectName(plan, after.object);
  const times = ((1 - limit) * before.strength) / after.strength;
  if (!Number.isFinite(times)) return t('Set {0} off from what is round it, in value or in colour.', name);
  return times < 2
    ? t(
        'Give {0} more contrast or harder edges: its borders have to draw the eye {1} % more strongly.',
        name,
        Math.ceil(100 * (times - 1)),
      )
    : t(
        'Give {0} more contrast or harder edges: its borders have to draw the eye {1} times as strongly.',
        name,
        plainNumber(Math.ceil(times * 10) / 10, 1),
      );
}

interface Fault {
  readonly from: number;
  readonly to: number;
  /** Part of the emphasis of the one before. */
  readonly fall: number;
}

/** Steps that fall by more than the limit up to the focal point, and later stops that draw more than what is there. */
function faultsOf(stops: readonly Stop[], first: number, limit: number): readonly Fault[] {
  const focal = strongestAtFocus(stops);
  return stops.flatMap((stop, index): Fault[] => {
    if (stop.isAtFocus) return [];
    const to = index + 1 < first ? index + 1 : focal;
    const next = stops[to];
    const fall = next && stop.strength > 0 ? 1 - next.strength / stop.strength : 0;
    return exceeds(fall, limit) ? [{ from: index, to, fall }] : [];
  });
}

function strongestAtFocus(stops: readonly Stop[]): number {
  const strongest = stops
    .filter(({ isAtFocus }) => isAtFocus)
    .reduce<Stop | undefined>(
      (most, stop) => (most && most.strength >= stop.strength ? most : stop),
      undefined,
    );
  return strongest ? stops.indexOf(strongest) : -1;
}

/**
 * Two stops that, exchanged, make the path rise; else all that come before the focal point in the order of their
 * emphasis.
 */
function exchanged(
  plan: Plan,
  path: EyePath,
  stops: readonly Stop[],
  first: number,
  limit: number,
): { readonly advice: string; readonly fix: Fix } | undefined {
  for (let one = 0; one < first; one++) {
    for (let other = one + 1; other < first; other++) {
      const [a, b] = [stops[one], stops[other]];
      if (!a || !b) continue;
      const trial = stops.with(one, b).with(other, a);
      if (faultsOf(trial, first, limit).length > 0) continue;
      const words = t('Exchange {0} and {1}', objectName(plan, a.object), objectName(plan, b.object));
      return {
        advice: t('{0}, and the path rises.', words),
        fix: order(plan, path, trial, words),
      };
    }
  }
  const rising = [...stops.slice(0, first)].sort((one, other) => one.strength - other.strength);
  const trial = [...rising, ...stops.slice(first)];
  if (faultsOf(trial, first, limit).length > 0) return undefined;
  const names = inWords(rising.map(({ object }) => objectName(plan, object)));
  return {
    advice: t('Lead from the weaker to the stronger: {0}, and then on to the focal point.', names),
    fix: order(plan, path, trial, t('Put the stops in the order of their emphasis')),
  };
}

function order({ objects }: Plan, { stopsLocation }: EyePath, stops: readonly Stop[], title: string): Fix {
  const names = stops.map(({ object }) => objects[object]?.name ?? '');
  return { title, edits: [replace(stopsLocation, names.join(', '))] };
}
