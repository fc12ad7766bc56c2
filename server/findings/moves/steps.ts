import { type BalanceMeasure, asPainted, hung, principalsHung } from '../../measure/objects/balance.js';
import type { Measures } from '../../measure/measures.js';
import { atValue } from '../../plan/colour/painted.js';
import { stepValue } from '../../plan/colour/value.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';

/** An object on another step of the value scale. */
export interface StepChange {
  readonly object: number;
  readonly from: number;
  readonly to: number;
}

/** Taken further than a quarter of the scale it would be another object. */
const FURTHEST_PART_OF_SCALE = 1 / 4;

/**
 * Every small change of one step of the objects given that takes no share out of its value budget: the fewest steps
 * first.
 */
export function stepChanges(
  plan: Plan,
  measures: Measures,
  objects: readonly number[],
): readonly StepChange[] {
  const { steps } = plan.scale;
  const furthest = Math.max(1, Math.round(steps * FURTHEST_PART_OF_SCALE));
  return objects
    .flatMap((object): StepChange[] => {
      const step = plan.objects[object]?.step;
      if (step === undefined) return [];
      const from = Math.round(step);
      return Array.from({ length: steps }, (_, index) => ({ object, from, to: index + 1 })).filter(
        ({ to }) => to !== from && Math.abs(to - from) <= furthest,
      );
    })
    .filter((change) => keepsBudget(plan, measures, change))
    .sort((one, other) => Math.abs(one.to - one.from) - Math.abs(other.to - other.from));
}

function keepsBudget(plan: Plan, { values, objects }: Measures, { object, from, to }: StepChange): boolean {
  const share = objects[object]?.share ?? 0;
  return values.budget.every(({ key, difference, tolerance, within }) => {
    const change = share * (Number(holds(plan, key, to)) - Number(holds(plan, key, from)));
    return !within || !exceeds(Math.abs(difference + change), tolerance);
  });
}

function holds({ scale }: Plan, key: string, step: number): boolean {
  const group = scale.groups.find((candidate) => candidate.key === key);
  return group ? step >= group.from && step <= group.to : Number(key) === step;
}

/** How the picture would hang with the change. */
export function balanceWith(plan: Plan, { balance, parts }: Measures, change: StepChange): BalanceMeasure {
  const laid = laidWith(plan, balance, change);
  return laid ? hung(plan, laid, balance.laidGround, parts) : balance;
}

/** What the principals would weigh with the change. */
export function principalsWith(
  plan: Plan,
  { balance, parts }: Measures,
  change: StepChange,
): BalanceMeasure['principals'] {
  const laid = laidWith(plan, balance, change);
  return laid ? principalsHung(plan, laid, balance.laidGround, parts) : balance.principals;
}

function laidWith(
  plan: Plan,
  { laid }: BalanceMeasure,
  { object, to }: StepChange,
): BalanceMeasure['laid'] | undefined {
  const area = laid[object];
  if (!area) return undefined;
  const value = stepValue(to, plan.scale.steps);
  const colour = plan.objects[object]?.colour?.colour;
  return laid.with(object, { ...area, ...asPainted(value, colour && atValue(colour, value).shown) });
}
