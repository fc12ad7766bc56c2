import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';

/** With more of a picture than this without value or colour there is nothing to weigh yet. */
const UNPLANNED = 0.1;

/** Whether no more than 10 % of the picture has neither value nor colour: until then its weights say little. */
export function isLaidIn(plan: Plan, { objects }: Measures): boolean {
  return isMostlyPlanned(
    plan,
    objects.map(({ share }, area) => ({ area, share })),
    1,
  );
}

/**
 * Whether a picture is laid in so far that its emphasis can be judged: on the whole, of what is seen round the focal
 * point, and wherever anything dominant is seen.
 */
export function isEmphasisLaidIn(plan: Plan, measures: Measures): boolean {
  const { objects, emphasis } = measures;
  const there = emphasis.focal?.seenThere ?? [];
  const shareThere = there.reduce((sum, { share }) => sum + share, 0);
  const isOpen = plan.objects.some(
    ({ role }, index) => role === 'dominant' && (objects[index]?.share ?? 0) > 0 && !isPlanned(plan, index),
  );
  return !isOpen && isLaidIn(plan, measures) && isMostlyPlanned(plan, there, shareThere);
}

function isMostlyPlanned(
  plan: Plan,
  seen: readonly { readonly area: number; readonly share: number }[],
  whole: number,
): boolean {
  const open = seen.reduce((sum, { area, share }) => (isPlanned(plan, area) ? sum : sum + share), 0);
  return !exceeds(open, UNPLANNED * whole);
}

/** The bare ground always is. */
function isPlanned({ objects }: Plan, area: number): boolean {
  const object = objects[area];
  return !object || (object.painted !== undefined && !object.colourLost);
}
