import type { BudgetMeasure } from '../../measure/measures.js';
import type { Budget, StepGroup } from '../../plan/plan.js';
import { capitalised, inWords, plainNumber } from '../../plan/problems.js';
import { roleSubject } from '../words/colours.js';
import { toneWords } from '../words/tones.js';
import { percent, type Subject } from '../words/words.js';
import { type Change, type Compared, byKey, changeOf, otherNow, places, type Topic } from './change.js';
import { LEAST_SHARE } from './wording.js';

/** What differs in the value scale, the shares of light and dark, key and range. */
export function valueChanges({ earlier, later }: Compared): readonly Change[] {
  const [before, now] = [earlier.plan, later.plan];
  const [was, is] = [earlier.measures.values, later.measures.values];
  const scaleAt = places(before.scale.location, now.scale.location);
  const groups = (of: readonly StepGroup[]) =>
    inWords(of.map(({ name, from, to }) => `${name} ${from === to ? from : `${from} to ${to}`}`));
  const shares = byKey(was.groups, is.groups, ({ key }) => key).both.flatMap(([old, group]) =>
    measuredChange('values', toneWords(group), old.share, group.share, {}),
  );
  return [
    ...otherNow(
      'values',
      [String(before.scale.steps), String(now.scale.steps)],
      (steps, old) => `The value scale has ${steps} steps instead of ${old}.`,
      scaleAt,
    ),
    ...(before.scale.steps === now.scale.steps
      ? otherNow(
          'values',
          [groups(before.scale.groups), groups(now.scale.groups)],
          (parts, old) => `The scale is parted into ${parts} instead of ${old}.`,
          scaleAt,
        )
      : []),
    ...changeOf(
      'values',
      [before.scale.trend?.value, now.scale.trend?.value],
      {
        new: (trend) => `Values are to ${trend} with distance.`,
        gone: (trend) => `Values are no longer to ${trend} with distance.`,
        changed: (trend, old) => `Values are to ${trend} with distance, no longer to ${old}.`,
      },
      places(before.scale.trend?.location, now.scale.trend?.location),
    ),
    ...plannedChanges('values', before.valueBudget, now.valueBudget, (name) => toneWords({ name })),
    ...shares,
    ...keyChanges({ earlier, later }),
  ];
}

/** What differs in a budget as it is stated. */
export function plannedChanges(
  topic: Topic,
  before: Budget | undefined,
  now: Budget | undefined,
  wordsOf: (name: string) => Subject,
): readonly Change[] {
  const whose = topic === 'values' ? 'value' : 'colour';
  const where = places(before?.location, now?.location);
  if (before === undefined || now === undefined)
    return changeOf(
      topic,
      [before && '', now && ''],
      {
        new: () => `There is a ${whose} budget now.`,
        gone: () => `There is no ${whose} budget any more.`,
        changed: () => '',
      },
      where,
    );
  const { both, come, gone } = byKey(before.shares, now.shares, ({ key }) => key);
  const planned = (share: { readonly name: string; readonly target: number }) =>
    `${capitalised(wordsOf(share.name).words)} ${wordsOf(share.name).many ? 'are' : 'is'} to cover ${percent(share.target)}`;
  return [
    ...come.map((share): Change => ({
      topic,
      kind: 'new',
      message: `${planned(share)} of the picture, which is new in the budget.`,
      ...places(undefined, share.location ?? now.location),
    })),
    ...gone.map((share): Change => ({
      topic,
      kind: 'gone',
      message: `The budget has no share of ${wordsOf(share.name).words} any more; it was ${percent(share.target)}.`,
      ...places(share.location ?? before.location, undefined),
    })),
    ...both
      .filter(([old, share]) => percent(old.target) !== percent(share.target))
      .map(([old, share]): Change => ({
        topic,
        kind: 'changed',
        message: `${planned(share)} instead of ${percent(old.target)}.`,
        figure: { from: old.target, to: share.target, unit: 'part of the picture' },
        ...places(old.location ?? before.location, share.location ?? now.location),
      })),
    ...otherNow(
      topic,
      [percent(before.tolerance), percent(now.tolerance)],
      (tolerance, old) => `The ${whose} budget is to be kept within ${tolerance} instead of ${old}.`,
      where,
    ),
  ];
}

/** How a measured share has changed, where that can be seen in whole per cent. */
function measuredChange(
  topic: Topic,
  { words, many }: Subject,
  from: number,
  to: number,
  where: Pick<Change, 'earlier' | 'later'>,
): readonly Change[] {
  if (Math.abs(to - from) < LEAST_SHARE) return [];
  return [
    {
      topic,
      kind: 'changed',
      message: `${capitalised(words)} ${many ? 'go' : 'goes'} from ${percent(from)} to ${percent(to)} of the picture, as measured.`,
      figure: { from, to, unit: 'part of the picture' },
      ...where,
    },
  ];
}

/** Munsell value by which a mean must differ, and either end of the range. */
const LEAST_MEAN = 0.1;
const LEAST_END = 0.5;

function keyChanges({ earlier, later }: Pick<Compared, 'earlier' | 'later'>): readonly Change[] {
  const [was, is] = [earlier.measures.values, later.measures.values];
  if (was.mean === undefined || is.mean === undefined) return [];
  const key =
    was.key === is.key
      ? `still a ${is.key ?? ''} key`
      : `a ${is.key ?? ''} key instead of a ${was.key ?? ''} one`;
  const way = is.mean > was.mean ? 'lighter' : 'darker';
  const mean: readonly Change[] =
    Math.abs(is.mean - was.mean) < LEAST_MEAN
      ? []
      : [
          {
            topic: 'values',
            kind: way,
            message: `The picture as a whole is ${way}: mean value ${plainNumber(is.mean, 1)} instead of ${plainNumber(was.mean, 1)}, ${key}.`,
            figure: { from: was.mean, to: is.mean, unit: 'Munsell value' },
          },
        ];
  if (was.range === undefined || is.range === undefined) return mean;
  const isAlike =
    Math.abs(was.range.from - is.range.from) < LEAST_END && Math.abs(was.range.to - is.range.to) < LEAST_END;
  if (isAlike) return mean;
  const range = ({ from, to }: typeof is.range) => `${plainNumber(from, 1)} to ${plainNumber(to, 1)}`;
  const span = (of: typeof is.range): number => of.to - of.from;
  const wider = span(is.range) - span(was.range);
  const contrast = Math.abs(wider) < LEAST_END ? '' : wider > 0 ? ', a wider range' : ', a narrower range';
  return [
    ...mean,
    {
      topic: 'values',
      kind: 'changed',
      message: `Values run from ${range(is.range)} instead of from ${range(was.range)}${contrast}.`,
    },
  ];
}

/** What differs in the colour budget as measured, by role. */
export function roleChanges(
  before: readonly BudgetMeasure[],
  now: readonly BudgetMeasure[],
): readonly Change[] {
  return byKey(before, now, ({ key }) => key).both.flatMap(([old, share]) =>
    measuredChange(
      'colours',
      roleSubject(share.key),
      old.share,
      share.share,
      places(old.location, share.location),
    ),
  );
}
