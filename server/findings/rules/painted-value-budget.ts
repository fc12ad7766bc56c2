import { t } from '../../../grammar/index.js';
import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import type { RecordObject } from '../../measure/photograph/record.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule } from '../finding.js';
import { type Explanation, missedBudget } from '../seen/missed-budget.js';
import { isReadable, type Judged, latestPhotograph } from '../seen/photographed.js';
import { offInSteps } from '../words/photographs.js';
import { stepsInWords, toneWords } from '../words/tones.js';
import { objectName, percent } from '../words/words.js';

/** Steps from which on an object is said to be darker or lighter. */
const SAID = 0.2;

export const paintedValueBudget: Rule = {
  id: 'painted value budget',
  severity: 'warning',
  chapter: 'record',
  perObject: false,
  summary: 'In the latest photograph a group of values covers more or less of the canvas than its budget.',
  explanation:
    'The plan keeps the budget and the painting does not: somewhere an object has drifted into other values. It is held to the budget once all that is seen has been painted, be it in grey. The object that explains most of the difference is told. Where the plan itself misses the budget, that is told instead.',
  formula:
    '|pixels of the group / all pixels - target| > tolerance, with all of the picture painted and the plan within the tolerance',
  source: 'the plan states it',
  check: (plan, measures) => {
    const latest = latestPhotograph(plan, measures);
    if (!latest?.figures.isWhole.values || !isReadable(plan)) return [];
    return missedBudget(plan, latest, {
      painted: latest.figures.valueBudget,
      planned: measures.values.budget,
      subjectOf: toneWords,
      explain: (entry) => explained(plan, measures, latest, entry),
    }).map((found) => ({ ...found, ...latest.gravity }));
  },
};

function explained(plan: Plan, measures: Measures, latest: Judged, entry: BudgetMeasure): Explanation {
  const most = causeOf(plan, measures, latest, entry);
  if (!most) {
    return {
      advice: t('Look at it through half-closed eyes beside the plan’s view `values`.'),
      objects: [],
    };
  }
  return {
    cause: causeInWords(plan, most, toneWords(entry).many),
    advice: adviceOn(plan, most, entry),
    objects: [most.seen.object],
  };
}

interface Cause {
  readonly seen: RecordObject;
  /** More of it on the steps of the group than planned, as a part of the canvas; below nought less. */
  readonly more: number;
}

/** The object that the most of a difference comes from. */
function causeOf(
  { objects, scale }: Plan,
  { values }: Measures,
  { figures }: Judged,
  { key, difference }: BudgetMeasure,
): Cause | undefined {
  const group = values.groups.find((one) => one.key === key) ?? { from: Number(key), to: Number(key) };
  const holds = (step: number): boolean => step >= group.from && step <= group.to;
  const causes = figures.objects.map((seen): Cause => {
    const painted = seen.steps.reduce((sum, share, index) => sum + (holds(index + 1) ? share : 0), 0);
    const step = Math.min(scale.steps, Math.max(1, Math.round(objects[seen.object]?.step ?? 0)));
    return { seen, more: painted - (holds(step) ? seen.share : 0) };
  });
  const sign = Math.sign(difference);
  const most = causes.reduce<Cause | undefined>(
    (one, other) => (one && sign * one.more >= sign * other.more ? one : other),
    undefined,
  );
  return most && sign * most.more > 0 ? most : undefined;
}

function causeInWords(plan: Plan, { seen, more }: Cause, many: boolean): string {
  const name = objectName(plan, seen.object);
  const off = seen.against?.stepsOff ?? 0;
  const share = percent(Math.abs(more));
  if (Math.abs(off) < SAID) {
    if (more > 0)
      return many
        ? t('Most of that is {0}: with it {1} of the canvas has come to them.', name, share)
        : t('Most of that is {0}: with it {1} of the canvas has come to it.', name, share);
    return many
      ? t('Most of that is {0}: with it {1} of the canvas has left them.', name, share)
      : t('Most of that is {0}: with it {1} of the canvas has left it.', name, share);
  }
  const figures = [name, offInSteps(off), share] as const;
  if (more > 0)
    return many
      ? t('Most of that is {0}, {1} than planned: with it {2} of the canvas has come to them.', ...figures)
      : t('Most of that is {0}, {1} than planned: with it {2} of the canvas has come to it.', ...figures);
  return many
    ? t('Most of that is {0}, {1} than planned: with it {2} of the canvas has left them.', ...figures)
    : t('Most of that is {0}, {1} than planned: with it {2} of the canvas has left it.', ...figures);
}

function adviceOn(plan: Plan, { seen, more }: Cause, entry: BudgetMeasure): string {
  const { words } = toneWords(entry);
  const off = seen.against?.stepsOff ?? 0;
  const name = objectName(plan, seen.object);
  const after = percent(Math.max(0, entry.share - more));
  if (Math.abs(off) < SAID)
    return t(
      'Bring the lights and darks within {0} together, onto its step of the plan: that brings {1} to {2}.',
      name,
      words,
      after,
    );
  const steps = stepsInWords(off);
  return off < 0
    ? t('Lighten {0} by {1}: that brings {2} to {3}.', name, steps, words, after)
    : t('Darken {0} by {1}: that brings {2} to {3}.', name, steps, words, after);
}
