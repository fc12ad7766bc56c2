import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import { largestFirst, type ObjectShare } from '../../measure/objects/objects.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { stepEdit } from '../edits.js';
import type { Fix, Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { Repainting } from '../advice/repainting.js';
import { givers, takers } from '../advice/budgets.js';
import { resizingFor, resizingWords } from '../advice/resizing.js';
import { stepWords, toneWords } from '../words/tones.js';
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
          message:
            `${subject(entry)} ${percentOutside(entry.share, entry.target, entry.tolerance)} of the picture; the budget is ${percent(entry.target)} within ${percent(entry.tolerance)}.` +
            (most ? ` Most of it is ${objectShare(plan, most)}.` : ''),
          remedy: () => advice(plan, measures, entry),
          location: entry.location ?? heading(plan),
          excess: Math.abs(entry.difference) - entry.tolerance,
          related: object
            ? [
                {
                  location: object.valueLocation ?? object.location,
                  message: `${quoted(object.name)} is on step ${object.step ?? ''}.`,
                },
              ]
            : [],
        },
      ];
    }),
};

/** `The lights cover`, `The middle values cover`, `Step 4 covers`. */
function subject(entry: BudgetMeasure): string {
  const { words, many } = toneWords(entry);
  return `${capitalised(words)} ${many ? 'cover' : 'covers'}`;
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
    const same = resized.object.index === repainted.object.index;
    return {
      advice: `${repainted.words}, or make ${same ? 'it' : quoted(resized.object.name)} ${resizingWords(resized)}: either brings ${words} within.`,
      fix: repainted.fix,
    };
  }
  if (repainted) return { advice: `${repainted.words}: that brings ${words} within.`, fix: repainted.fix };
  if (resized) {
    return {
      advice: `Make ${quoted(resized.object.name)} ${resizingWords(resized)}, which brings ${words} to ${percent(resized.share)}.`,
      fix: resized.fix,
    };
  }
  return { advice: amountAdvice(measures.values.budget, entry) };
}

function amountAdvice(budget: readonly BudgetMeasure[], { difference, share }: BudgetMeasure): string {
  const amount = percent(Math.abs(difference));
  const words = (one: BudgetMeasure): string => toneWords(one).words;
  if (difference > 0) return `Take ${amount} of the picture to ${takers(budget, words) || 'other steps'}.`;
  const from = givers(budget, words);
  return share === 0
    ? `Nothing lies on its steps yet: bring ${amount} of the picture there${from}.`
    : `Bring ${amount} more of the picture onto its steps${from}.`;
}

interface Repainted {
  readonly object: PlanObject;
  /** Take `wall` one step down, to step 3 */
  readonly words: string;
  readonly fix: Fix;
}

function repaintedFor(plan: Plan, measures: Measures, entry: BudgetMeasure): Repainted | undefined {
  const at = measures.values.budget.indexOf(entry);
  const change = new Repainting(plan, measures).smallestChange(
    ({ budget }) => !exceeds(Math.abs(budget[at] ?? 0), entry.tolerance),
  );
  const object = change && plan.objects[change.object];
  if (!change || !object) return undefined;
  const { from, to } = change;
  return {
    object,
    words: `Take ${quoted(object.name)} ${stepWords(from, to)}`,
    fix: { title: `Take ${quoted(object.name)} to step ${to}`, edits: stepEdit(object, to) },
  };
}
