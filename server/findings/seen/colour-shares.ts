import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import type { Location, Plan } from '../../plan/plan.js';
import type { RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { doesNoHarm, givers, takers } from '../advice/budgets.js';
import { resizingFor, resizingWords, type Resizing } from '../advice/resizing.js';
import { isCheaper } from '../advice/costs.js';
import { changeOf, recolourings, recolouringFix, type Recolouring } from '../advice/recolouring.js';
import { heading, objectShare, percent, percentOutside, quoted } from '../words/words.js';

/** What is told of a colour role that is out of its budget. */
export function outOfColourBudget(plan: Plan, measures: Measures, entry: BudgetMeasure): RuleFinding {
  const most = measures.colours.roles.find(({ role }) => role === entry.key)?.objects[0];
  const object = most && plan.objects[most.object];
  return {
    message:
      `${subject(entry.name)} ${percentOutside(entry.share, entry.target, entry.tolerance)} of the picture; the budget is ${percent(entry.target)} within ${percent(entry.tolerance)}.` +
      (most ? ` Most of it is ${objectShare(plan, most)}.` : ''),
    remedy: () => tryOut(plan, measures, entry),
    location: entry.location ?? roleLocation(plan, entry.key),
    excess: Math.abs(entry.difference) - entry.tolerance,
    related: object ? [{ location: object.location, message: `${quoted(object.name)} carries it.` }] : [],
  };
}

/** Said in full, for an object may be dominant too. */
function subject(role: string): string {
  return role === 'neutral' || role === 'discord' ? `The ${role} colours cover` : `The ${role} colour covers`;
}

/** One object a little larger or smaller, which is a lesser change of the picture than another colour; else that. */
function tryOut(plan: Plan, measures: Measures, entry: BudgetMeasure): Pick<RuleFinding, 'advice' | 'fix'> {
  // A budget that nobody stated is not worth cutting the picture anew for.
  const stated = plan.colourBudget?.location !== undefined;
  const resizing = stated ? resizingFor(plan, measures, 'colour', entry) : undefined;
  if (resizing) return resizingAdvice(entry, resizing);
  return recolouringAdvice(plan, measures, entry) ?? { advice: amountAdvice(measures.colours.budget, entry) };
}

function resizingAdvice({ name }: BudgetMeasure, resizing: Resizing): Pick<RuleFinding, 'advice' | 'fix'> {
  const { object, share, fix } = resizing;
  return {
    advice: `Make ${quoted(object.name)} ${resizingWords(resizing)}, which brings ${roleWords(name)} to ${percent(share)}.`,
    fix,
  };
}

/** `the dominant colour`, `the discords` */
function roleWords(role: string): string {
  return role === 'neutral' || role === 'discord' ? `the ${role}s` : `the ${role} colour`;
}

function recolouringAdvice(
  plan: Plan,
  measures: Measures,
  entry: BudgetMeasure,
): Pick<RuleFinding, 'advice' | 'fix'> | undefined {
  const recolouring = bestRecolouring(plan, measures, entry);
  const fix = recolouring && recolouringFix(plan, recolouring);
  const name = recolouring && plan.colours[recolouring.colour]?.name;
  if (!recolouring || !fix || name === undefined) return undefined;
  const share = entry.share + changeOf(recolouring, entry.key);
  return {
    advice: `Give ${quoted(recolouring.object.name)} (${percent(recolouring.share)}) the colour ${quoted(name)}, which brings ${roleWords(entry.name)} to ${percent(share)}.`,
    fix,
  };
}

/**
 * The object that brings `entry` within its tolerance by another colour and takes no other entry farther from its own: what
 * comes nearest to all targets, then the smallest.
 */
function bestRecolouring(plan: Plan, measures: Measures, entry: BudgetMeasure): Recolouring | undefined {
  const budget = measures.colours.budget.map((each) => (each.key === entry.key ? entry : each));
  let best: { readonly one: Recolouring; readonly cost: readonly number[] } | undefined;
  for (const one of recolourings(plan, measures)) {
    const after = budget.map(({ key, difference }) => difference + changeOf(one, key));
    const mends = budget.every(
      (share, at) =>
        doesNoHarm(share, after[at] ?? 0) &&
        (share.key !== entry.key || !exceeds(Math.abs(after[at] ?? 0), share.tolerance)),
    );
    if (!mends) continue;
    const cost = [after.reduce((sum, difference) => sum + Math.abs(difference), 0), one.share];
    if (!best || isCheaper(cost, best.cost)) best = { one, cost };
  }
  return best?.one;
}

function amountAdvice(budget: readonly BudgetMeasure[], { difference, name, share }: BudgetMeasure): string {
  const amount = percent(Math.abs(difference));
  const words = (entry: BudgetMeasure): string => roleWords(entry.name);
  if (difference > 0) return `Give ${amount} of the picture to ${takers(budget, words) || 'another colour'}.`;
  const from = givers(budget, words);
  return share === 0
    ? `Nothing visible carries ${name === 'neutral' ? 'a neutral' : `the ${name}`} colour yet: give it ${amount} of the picture${from}.`
    : `Give it ${amount} more of the picture${from || ': use the colour elsewhere too'}.`;
}

/** Where the plan first gives something that role. */
function roleLocation(plan: Plan, role: string): Location {
  return (
    plan.colours.find((colour) => colour.role === role)?.location ??
    plan.objects.find(({ colour }) => colour?.role === role)?.location ??
    heading(plan)
  );
}
