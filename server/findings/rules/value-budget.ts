import { t } from '../../../grammar/index.js';
import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import { largestFirst, type ObjectShare } from '../../measure/objects/objects.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { stepEdit } from '../edits.js';
import type { Fix, Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { repaintingOf } from '../advice/repainting.js';
import { givers, takers } from '../advice/budgets.js';
import { resizingFor, resizingWords } from '../advice/resizing.js';
import { stepsInWords, toneWords, toStep } from '../words/tones.js';
import { heading, objectShare, percent, percentOutside, quoted } from '../words/words.js';
import { capitalised } from '../../plan/problems.js';

export const valueBudget: Rule = {
  id: 'value budget',
  severity: 'warning',
  chapter: 'values',
  perObject: false,
  summary: 'A group of values covers more or less of the picture than its budget.',
  explanation:
    'Light and dark are shared out before the painting starts. Each share is measured from what is seen of the shapes; bare ground counts at the step nearest to its own value.',
  formula: '|visible area of the group / area of the canvas - target| > tolerance',
  source: 'the plan states it',
  check: (plan, measures) =>
    measures.values.budget.flatMap((entry): RuleFinding[] => {
      if (entry.within) return [];
      const most = objectsOf(plan, measures, entry)[0];
      const object = most && plan.objects[most.object];
      return [
        {
          message: coverage(entry) + (most ? ` ${t('Most of it is {0}.', objectShare(plan, most))}` : ''),
          remedy: () => advice(plan, measures, entry),
          location: entry.location ?? heading(plan),
          excess: Math.abs(entry.difference) - entry.tolerance,
          related: object
            ? [
                {
                  location: object.valueLocation ?? object.location,
                  message: t('{0} is on step {1}.', quoted(object.name), object.step ?? ''),
                },
              ]
            : [],
        },
      ];
    }),
};

/** What `The lights cover`, or `Step 4 covers`, against the budget. */
function coverage(entry: BudgetMeasure): string {
  const { words, many } = toneWords(entry);
  const { share, target, tolerance } = entry;
  const figures = [
    capitalised(words),
    percentOutside(share, target, tolerance),
    percent(target),
    percent(tolerance),
  ] as const;
  return many
    ? t('{0} cover {1} of the picture; the budget is {2} within {3}.', ...figures)
    : t('{0} covers {1} of the picture; the budget is {2} within {3}.', ...figures);
}

function objectsOf(
  plan: Plan,
  { values, objects }: Measures,
  { key }: BudgetMeasure,
): readonly ObjectShare[] {
  const group = values.groups.find((candidate) => candidate.key === key);
  if (group) return group.objects;
  const shares = objects.map(({ share }) => share);
  return largestFirst(shares, (object) => Math.round(plan.objects[object]?.step ?? 0) === Number(key));
}

/** One object on another step, or of another size; else how much of the picture has to change. */
function advice(plan: Plan, measures: Measures, entry: BudgetMeasure): Pick<RuleFinding, 'advice' | 'fix'> {
  const repainted = repaintedFor(plan, measures, entry);
  const resized = resizingFor(plan, measures, 'value', entry);
  const { words } = toneWords(entry);
  if (repainted && resized) {
    const name = quoted(resized.object.name);
    const size = resizingWords(resized);
    return {
      advice:
        resized.object.index === repainted.object.index
          ? repaintedOrResized(repainted, size, words)
          : repaintedOrOtherResized(repainted, name, size, words),
      fix: repainted.fix,
    };
  }
  if (repainted) return { advice: repaintedAlone(repainted, words), fix: repainted.fix };
  if (resized) {
    return {
      advice: t(
        'Make {0} {1}, which brings {2} to {3}.',
        quoted(resized.object.name),
        resizingWords(resized),
        words,
        percent(resized.share),
      ),
      fix: resized.fix,
    };
  }
  return { advice: amountAdvice(measures.values.budget, entry) };
}

function amountAdvice(budget: readonly BudgetMeasure[], { difference, share }: BudgetMeasure): string {
  const amount = percent(Math.abs(difference));
  const words = (one: BudgetMeasure): string => toneWords(one).words;
  if (difference > 0)
    return t('Take {0} of the picture to {1}.', amount, takers(budget, words) || t('other steps'));
  const from = givers(budget, words);
  if (share === 0)
    return from === ''
      ? t('Nothing lies on its steps yet: bring {0} of the picture there.', amount)
      : t('Nothing lies on its steps yet: bring {0} of the picture there, from {1}.', amount, from);
  return from === ''
    ? t('Bring {0} more of the picture onto its steps.', amount)
    : t('Bring {0} more of the picture onto its steps, from {1}.', amount, from);
}

interface Repainted {
  readonly object: PlanObject;
  readonly isUp: boolean;
  /** The object, and by how many steps to which one. */
  readonly told: readonly [string, string, number];
  readonly fix: Fix;
}

function repaintedAlone({ isUp, told }: Repainted, group: string): string {
  return isUp
    ? t('Take {0} {1} up, to step {2}: that brings {3} within.', ...told, group)
    : t('Take {0} {1} down, to step {2}: that brings {3} within.', ...told, group);
}

function repaintedOrResized({ isUp, told }: Repainted, size: string, group: string): string {
  return isUp
    ? t('Take {0} {1} up, to step {2}, or make it {3}: either brings {4} within.', ...told, size, group)
    : t('Take {0} {1} down, to step {2}, or make it {3}: either brings {4} within.', ...told, size, group);
}

function repaintedOrOtherResized(
  { isUp, told }: Repainted,
  other: string,
  size: string,
  group: string,
): string {
  const rest = [other, size, group] as const;
  return isUp
    ? t('Take {0} {1} up, to step {2}, or make {3} {4}: either brings {5} within.', ...told, ...rest)
    : t('Take {0} {1} down, to step {2}, or make {3} {4}: either brings {5} within.', ...told, ...rest);
}

function repaintedFor(plan: Plan, measures: Measures, entry: BudgetMeasure): Repainted | undefined {
  const at = measures.values.budget.indexOf(entry);
  const change = repaintingOf(plan, measures).smallestChange(
    ({ budget }) => !exceeds(Math.abs(budget[at] ?? 0), entry.tolerance),
  );
  const object = change && plan.objects[change.object];
  if (!change || !object) return undefined;
  const { from, to } = change;
  return {
    object,
    isUp: to > from,
    told: [quoted(object.name), stepsInWords(to - from), to],
    fix: { title: toStep(quoted(object.name), to), edits: stepEdit(object, to) },
  };
}
