import { t } from '../../../grammar/index.js';
import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import type { Location, Plan } from '../../plan/plan.js';
import type { RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { doesNoHarm, givers, takers } from '../advice/budgets.js';
import { resizingFor, resizingWords, type Resizing } from '../advice/resizing.js';
import { isCheaper } from '../advice/costs.js';
import { changeOf, recolourings, recolouringFix, type Recolouring } from '../advice/recolouring.js';
import { roleWords } from '../words/colours.js';
import { heading, objectShare, percent, percentOutside, quoted } from '../words/words.js';

/** What is told of a colour role that is out of its budget. */
export function outOfColourBudget(plan: Plan, measures: Measures, entry: BudgetMeasure): RuleFinding {
  const most = measures.colours.roles.find(({ role }) => role === entry.key)?.objects[0];
  const object = most && plan.objects[most.object];
  return {
    message: coverage(entry) + (most ? ` ${t('Most of it is {0}.', objectShare(plan, most))}` : ''),
    remedy: () => tryOut(plan, measures, entry),
    location: entry.location ?? roleLocation(plan, entry.key),
    excess: Math.abs(entry.difference) - entry.tolerance,
    related: object
      ? [{ location: object.location, message: t('{0} carries it.', quoted(object.name)) }]
      : [],
  };
}

/** Said in full, for an object may be dominant too. */
function coverage({ name, share, target, tolerance }: BudgetMeasure): string {
  const figures = [percentOutside(share, target, tolerance), percent(target), percent(tolerance)] as const;
  switch (name) {
    case 'neutral':
      return t('The neutral colours cover {0} of the picture; the budget is {1} within {2}.', ...figures);
    case 'discord':
      return t('The discord colours cover {0} of the picture; the budget is {1} within {2}.', ...figures);
    case 'complement':
      return t('The complement colour covers {0} of the picture; the budget is {1} within {2}.', ...figures);
    default:
      return t('The dominant colour covers {0} of the picture; the budget is {1} within {2}.', ...figures);
  }
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
    advice: t(
      'Make {0} {1}, which brings {2} to {3}.',
      quoted(object.name),
      resizingWords(resizing),
      roleInFull(name),
      percent(share),
    ),
    fix,
  };
}

/** `the dominant colour`, `the complement colour`, `the discords` */
function roleInFull(role: string): string {
  return role === 'complement' ? t('the complement colour') : roleWords(role);
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
    advice: t(
      'Give {0} ({1}) the colour {2}, which brings {3} to {4}.',
      quoted(recolouring.object.name),
      percent(recolouring.share),
      quoted(name),
      roleInFull(entry.name),
      percent(share),
    ),
    fix,
  };
}

/**
 * The object that brings `entry` within its tolerance by another colour and takes no other entry farther from its own:
 * what comes nearest to all targets, then the smallest.
 */
function bestRecolouring(plan: Plan, measures: Measures, entry: BudgetMeasure): Recolouring | undefined {
  const budget = measures.colours.budget.map((each) => (each.key === entry.key ? entry : each));
  const differenceAfter = ({ key, difference }: BudgetMeasure, one: Recolouring): number =>
    difference + changeOf(one, key);
  const mends = (one: Recolouring): boolean =>
    !exceeds(Math.abs(differenceAfter(entry, one)), entry.tolerance) &&
    budget.every((share) => doesNoHarm(share, differenceAfter(share, one)));
  let best: { readonly one: Recolouring; readonly cost: readonly number[] } | undefined;
  for (const one of recolourings(plan, measures, mends)) {
    const miss = budget.reduce((sum, share) => sum + Math.abs(differenceAfter(share, one)), 0);
    const cost = [miss, one.share];
    if (!best || isCheaper(cost, best.cost)) best = { one, cost };
  }
  return best?.one;
}

function amountAdvice(budget: readonly BudgetMeasure[], { difference, name, share }: BudgetMeasure): string {
  const amount = percent(Math.abs(difference));
  const words = (entry: BudgetMeasure): string => roleInFull(entry.name);
  if (difference > 0)
    return t('Give {0} of the picture to {1}.', amount, takers(budget, words) || t('another colour'));
  const from = givers(budget, words);
  if (share === 0) {
    const wanted =
      from === ''
        ? t('Give it {0} of the picture.', amount)
        : t('Give it {0} of the picture, from {1}.', amount, from);
    return `${carriedByNothing(name)} ${wanted}`;
  }
  return from === ''
    ? t('Give it {0} more of the picture: use the colour elsewhere too.', amount)
    : t('Give it {0} more of the picture, from {1}.', amount, from);
}

function carriedByNothing(role: string): string {
  switch (role) {
    case 'neutral':
      return t('Nothing visible carries a neutral colour yet.');
    case 'discord':
      return t('Nothing visible carries the discord colour yet.');
    case 'complement':
      return t('Nothing visible carries the complement colour yet.');
    default:
      return t('Nothing visible carries the dominant colour yet.');
  }
}

/** Where the plan first gives something that role. */
function roleLocation(plan: Plan, role: string): Location {
  return (
    plan.colours.find((colour) => colour.role === role)?.location ??
    plan.objects.find(({ colour }) => colour?.role === role)?.location ??
    heading(plan)
  );
}
