import type { BudgetMeasure, Measures } from '../measure/measures.js';
import type { Location, Plan } from '../plan/plan.js';
import type { RuleFinding } from './finding.js';
import { heading, objectShare, percent, percentOutside, quoted } from './words.js';

/** What each colour role out of its budget is told; `wanted` opens the clause that names the target. */
export function outOfColourBudget(plan: Plan, measures: Measures, wanted: string): readonly RuleFinding[] {
  return measures.colours.budget.flatMap((entry): RuleFinding[] => {
    if (entry.within) return [];
    const most = measures.colours.roles.find(({ role }) => role === entry.key)?.objects[0];
    const object = most && plan.objects[most.object];
    return [
      {
        message:
          `${subject(entry.name)} ${percentOutside(entry.share, entry.target, entry.tolerance)} of the picture; ${wanted} ${percent(entry.target)} within ${percent(entry.tolerance)}.` +
          (most ? ` Most of it is ${objectShare(plan, most)}.` : ''),
        advice: advice(entry),
        location: entry.location ?? roleLocation(plan, entry.key),
        related: object ? [{ location: object.location, message: `${quoted(object.name)} carries it.` }] : [],
      },
    ];
  });
}

/** Said in full, for an object may be dominant too. */
function subject(role: string): string {
  return role === 'neutral' || role === 'discord' ? `The ${role} colours cover` : `The ${role} colour covers`;
}

function advice({ difference, name, share }: BudgetMeasure): string {
  const amount = percent(Math.abs(difference));
  if (difference > 0)
    return `Give ${amount} of the picture to another colour, or make what carries it smaller.`;
  return share === 0
    ? `Nothing visible carries ${name === 'neutral' ? 'a neutral' : `the ${name}`} colour yet: give it ${amount} of the picture.`
    : `Give it ${amount} more of the picture: make what carries it larger, or use the colour elsewhere too.`;
}

/** Where the plan first gives something that role. */
function roleLocation(plan: Plan, role: string): Location {
  return (
    plan.colours.find((colour) => colour.role === role)?.location ??
    plan.objects.find(({ colour }) => colour?.role === role)?.location ??
    heading(plan)
  );
}
