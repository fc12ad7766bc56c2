import type { ColourRole } from '../../grammar/index.js';
import type { Plan } from '../plan/plan.js';
import { measureBudget } from './budget.js';
import type { ColourMeasure } from './measures.js';
import { allLargestFirst, largestFirst, totalShare } from './objects/objects.js';

const ROLES: readonly ColourRole[] = ['dominant', 'complement', 'discord', 'neutral'];

/**
 * How the picture is shared out among colours and their roles. `shares` are the visible shares in the order of
 * `plan.objects`; bare ground counts in its role when the plan gives it one.
 */
export function measureColours(plan: Plan, shares: readonly number[], bareShare: number): ColourMeasure {
  const groundRole = plan.canvas.ground.role;
  const roles = ROLES.map((role) => {
    const objects = largestFirst(shares, (object) => plan.objects[object]?.colour?.role === role);
    return { role, share: totalShare(objects) + (role === groundRole ? bareShare : 0), objects };
  });
  const named = new Float64Array(plan.colours.length);
  for (const { object, share } of allLargestFirst(shares)) {
    const colour = plan.objects[object]?.colour?.named;
    if (colour !== undefined) named[colour] = (named[colour] as number) + share;
  }
  return {
    roles,
    colours: Array.from(named, (share) => ({ share })),
    budget: measureBudget(plan.colourBudget, (key) => roles.find(({ role }) => role === key)?.share ?? 0),
    noRoleShare: totalShare(
      largestFirst(shares, (object) => plan.objects[object]?.colour?.role === undefined),
    ),
    bareShare: groundRole === undefined ? bareShare : 0,
  };
}
