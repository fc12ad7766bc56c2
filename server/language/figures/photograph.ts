import { reasonInWords, t } from '../../../grammar/index.js';
import { doubtInWords, offInSteps } from '../../findings/words/photographs.js';
import { objectName, percent } from '../../findings/words/words.js';
import { sittingName } from '../../findings/words/days.js';
import { toneWords } from '../../findings/words/tones.js';
import type { RecordFigures, SittingRecord } from '../../measure/photograph/record.js';
import type { Plan } from '../../plan/plan.js';
import { inWords, plainNumber } from '../../plan/problems.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import type { Paragraphs } from './paragraphs.js';
import { sittingOn } from './sitting.js';

/** So many objects are named. */
const MOST_NAMED = 3;
/** Steps from which on an object is said to be off. */
const SAID = 0.25;

/**
 * What the photograph of a sitting shows: values, what is farthest from the plan, what came nearer, what can't be
 * trusted.
 */
export function photographFigures({ plan, measures }: Snapshot, line: number, style: Style): Paragraphs {
  const at = sittingOn(plan, line);
  const record = measures.record?.sittings.find(({ sitting }) => sitting === at);
  if (record === undefined) return [];
  return recordInWords(plan, record).map((words) => style.text(words.replaceAll('`', '')));
}

function recordInWords(plan: Plan, record: SittingRecord): readonly string[] {
  switch (record.is) {
    case 'on its way':
      return [t('The photograph is being measured.')];
    case 'unreadable':
      return [reasonInWords(record.reason)];
    case 'measured':
      return figuresInWords(plan, record.figures);
  }
}

function figuresInWords(plan: Plan, figures: RecordFigures): readonly string[] {
  const { key, range, groups, comparedWith, doubts } = figures;
  const shares = groups.map((group) => `${toneWords(group).words} ${percent(group.share)}`);
  const values = [range.darkest, range.lightest, key].map((value) => plainNumber(value, 1));
  return [
    shares.length === 0
      ? t('Values from {0} to {1} of ten, {2} on average.', ...values)
      : t('Values from {0} to {1} of ten, {2} on average: {3}.', ...values, inWords(shares)),
    ...offFromPlan(plan, figures),
    ...(comparedWith === undefined ? [] : moved(plan, figures, comparedWith)),
    ...doubts.map((doubt) => doubtInWords(plan, doubt)),
  ];
}

function offFromPlan(plan: Plan, { objects }: RecordFigures): readonly string[] {
  const held = objects.filter(({ against }) => against !== undefined);
  if (held.length === 0) return [t('Nothing that the plan has a value for is painted yet.')];
  const stepsOff = (one: (typeof held)[number]): number => one.against?.stepsOff ?? 0;
  const off = held
    .filter((one) => Math.abs(stepsOff(one)) >= SAID)
    .sort((one, other) => Math.abs(stepsOff(other)) - Math.abs(stepsOff(one)));
  if (off.length === 0) return [t('All that is painted is within a quarter of a step of its planned value.')];
  const named = off
    .slice(0, MOST_NAMED)
    .map((one) => `${objectName(plan, one.object)} ${offInSteps(stepsOff(one))}`);
  return [t('Farthest from its planned value: {0}.', inWords(named))];
}

function moved(plan: Plan, { objects }: RecordFigures, before: number): readonly string[] {
  const named = (went: 'nearer' | 'away'): string =>
    inWords(
      objects.filter(({ since }) => since?.went === went).map(({ object }) => objectName(plan, object)),
    );
  const since = sittingName(plan, before);
  const [nearer, away] = [named('nearer'), named('away')];
  return [
    ...(nearer === '' ? [] : [t('Nearer to the plan since {0}: {1}.', since, nearer)]),
    ...(away === '' ? [] : [t('Farther from the plan since {0}: {1}.', since, away)]),
  ];
}
