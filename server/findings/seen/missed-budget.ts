import { t } from '../../../grammar/index.js';
import type { BudgetMeasure } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import type { RuleFinding } from '../finding.js';
import { sittingName } from '../words/days.js';
import { missedToo } from '../words/photographs.js';
import { percent, percentOutside, type Subject } from '../words/words.js';
import type { Judged } from './photographed.js';

/** A kind of budget as a photograph and the plan have it. */
export interface PaintedBudget {
  readonly painted: readonly BudgetMeasure[];
  /** The same entries in the same order. */
  readonly planned: readonly BudgetMeasure[];
  readonly subjectOf: (entry: BudgetMeasure) => Subject;
  readonly explain: (entry: BudgetMeasure) => Explanation;
}

/** What a missed entry comes from. */
export interface Explanation {
  /** A sentence; missing where no object is to blame. */
  readonly cause?: string;
  readonly advice: string;
  readonly objects: readonly number[];
}

/** The entry that a photograph misses by most and the plan keeps, with the names of the others that it misses so. */
export function missedBudget(plan: Plan, latest: Judged, budget: PaintedBudget): readonly RuleFinding[] {
  const [worst, ...others] = missedEntries(budget);
  if (!worst) return [];
  const { painted: entry, planned } = worst;
  const { words, many } = budget.subjectOf(entry);
  const { cause, advice, objects } = budget.explain(entry);
  const figures = [
    sittingName(plan, latest.sitting),
    words,
    percentOutside(entry.share, entry.target, entry.tolerance),
    percent(entry.target),
    percent(entry.tolerance),
    percent(planned.share),
  ] as const;
  return [
    {
      message:
        (many
          ? t(
              'After {0} {1} cover {2} of the canvas; the budget is {3} within {4}, the plan has {5}.',
              ...figures,
            )
          : t(
              'After {0} {1} covers {2} of the canvas; the budget is {3} within {4}, the plan has {5}.',
              ...figures,
            )) +
        (cause === undefined ? '' : ` ${cause}`) +
        missedToo(others.map(({ painted }) => budget.subjectOf(painted))),
      advice,
      location: latest.location,
      objects,
      excess: excessOf(entry),
    },
  ];
}

/** The worst first. */
function missedEntries({
  painted,
  planned,
}: PaintedBudget): readonly { readonly painted: BudgetMeasure; readonly planned: BudgetMeasure }[] {
  return painted
    .flatMap((entry, index) => {
      const inPlan = planned[index];
      return entry.within || !inPlan?.within ? [] : [{ painted: entry, planned: inPlan }];
    })
    .sort((one, other) => excessOf(other.painted) - excessOf(one.painted));
}

function excessOf({ difference, tolerance }: BudgetMeasure): number {
  return Math.abs(difference) - tolerance;
}
