import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';

/** With more of a picture than this without value or colour there is nothing to weigh yet. */
const UNPLANNED = 0.1;

/** Whether no more than 10 % of the picture has neither value nor colour: until then its weights say little. */
export function isLaidIn(plan: Plan, { objects }: Measures): boolean {
  let open = 0;
  objects.forEach(({ share }, area) => {
    if (!isPlanned(plan, area)) open += share;
  });
  return !exceeds(open, UNPLANNED);
}

const kept = new WeakMap<Measures, { readonly plan: Plan; readonly isLaidIn: boolean }>();

/**
 * Whether a picture is laid in so far that its emphasis can be judged: on the whole, of what is seen round the focal
 * point, and wherever anything dominant is seen. Worked out for the first of the rules that ask.
 */
export function isEmphasisLaidIn(plan: Plan, measures: Measures): boolean {
  const known = kept.get(measures);
  if (known?.plan === plan) return known.isLaidIn;
  const isLaidIn = findEmphasisLaidIn(plan, measures);
  kept.set(measures, { plan, isLaidIn });
  return isLaidIn;
}

function findEmphasisLaidIn(plan: Plan, measures: Measures): boolean {
  const { objects, emphasis } = measures;
  const there = emphasis.focal?.seenThere ?? [];
  const shareThere = there.reduce((sum, { share }) => sum + share, 0);
  const isOpen = plan.objects.some(
    ({ role }, index) => role === 'dominant' && (objects[index]?.share ?? 0) > 0 && !isPlanned(plan, index),
  );
  const open = there.reduce((sum, { area, share }) => (isPlanned(plan, area) ? sum : sum + share), 0);
  return !isOpen && isLaidIn(plan, measures) && !exceeds(open, UNPLANNED * shareThere);
}

/** The bare ground always is. */
function isPlanned({ objects }: Plan, area: number): boolean {
  const object = objects[area];
  return !object || (object.painted !== undefined && !object.colourLost);
}
