import type { ColourRole } from '../../../grammar/index.js';
import type { BudgetMeasure, Measures } from '../../measure/measures.js';
import type { RecordObject } from '../../measure/photograph/record.js';
import type { Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { isReadable, type Judged, latestPhotograph, missedBudgets } from '../seen/photographed.js';
import { roleWords } from '../words/colours.js';
import { afterSitting, missedToo } from '../words/photographs.js';
import { objectShare, percent, percentOutside, quoted } from '../words/words.js';

export const paintedColourBudget: Rule = {
  id: 'painted colour budget',
  severity: 'warning',
  chapter: 'record',
  perObject: false,
  summary: 'In the latest photograph a colour role covers more or less of the canvas than its budget.',
  explanation:
    'Each place of the photograph counts to the role whose colour it is nearest to. It is held to the budget once all that is seen has been painted in colour, and where the plan itself keeps the budget. Without a grey patch in the photograph, or where it has grave faults, this is a hint.',
  formula:
    '|pixels nearest in CIEDE2000 to a colour of the role / all pixels - target| > tolerance, with all of the picture painted in colour and the plan within the tolerance',
  source: 'the plan states it',
  check: (plan, measures) => {
    const latest = latestPhotograph(plan, measures);
    if (!plan.colourBudget?.location || !latest?.figures.isWhole.colours || !isReadable(plan)) return [];
    const missed = missedBudgets(latest.figures.colourBudget, measures.colours.budget);
    const others = missed.slice(1).map(({ painted }) => roleWords(painted.key));
    return missed
      .slice(0, 1)
      .map(({ painted, planned }) => found(plan, measures, latest, painted, planned, others));
  },
};

function found(
  plan: Plan,
  measures: Measures,
  latest: Judged,
  entry: BudgetMeasure,
  planned: BudgetMeasure,
  others: readonly string[],
): RuleFinding {
  const cause = causeOf(plan, latest, entry);
  const role = roleWords(entry.key);
  const many = role.endsWith('s');
  return {
    message:
      `${afterSitting(plan, latest.sitting)} ${role} ${many ? 'cover' : 'covers'} ${percentOutside(entry.share, entry.target, entry.tolerance)} of the canvas; the budget is ${percent(entry.target)} within ${percent(entry.tolerance)}, the plan has ${percent(planned.share)}.` +
      (cause ? ` ${causeInWords(plan, cause)}` : '') +
      missedToo(others),
    advice: cause
      ? `Bring the hue and chroma of ${quoted(plan.objects[cause.object]?.name ?? '')} back to the plan: that brings ${role} to ${percent(Math.max(0, entry.share - Math.sign(entry.difference) * cause.share))}.`
      : 'Hold the photograph beside the plan’s view `colour`: no single object is taken for another colour, so parts of several are.',
    location: latest.location,
    objects: cause ? [cause.object] : [],
    excess: Math.abs(entry.difference) - entry.tolerance,
    ...latest.colourGravity,
  };
}

/** The largest object that is nearer to another role's colour than to its own, in the direction of the difference. */
function causeOf(
  { objects }: Plan,
  { figures }: Judged,
  { key, difference }: BudgetMeasure,
): RecordObject | undefined {
  const taken = figures.objects.filter(({ object, nearestRole }) => {
    const own = objects[object]?.colour?.role;
    return difference > 0 ? nearestRole === key && own !== key : own === key && nearestRole !== key;
  });
  return taken.reduce<RecordObject | undefined>(
    (one, other) => (one && one.share >= other.share ? one : other),
    undefined,
  );
}

function causeInWords(plan: Plan, seen: RecordObject): string {
  const named = (role: ColourRole | undefined): string =>
    role === undefined ? 'a colour without a role' : roleWords(role);
  const own = plan.objects[seen.object]?.colour?.role;
  return `${objectShare(plan, seen)} has come nearer to ${named(seen.nearestRole)} than to ${named(own)}.`;
}
