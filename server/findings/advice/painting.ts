import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { partsInWords } from '../words/paints.js';

/** The mixture of an object's planned colour: `3 white : 1 ultra`; nothing without a palette that has one. */
export function plannedMixture(plan: Plan, { palette }: Measures, object: number): string | undefined {
  const mixing = palette?.mixing;
  const mixture = mixing?.swatches[mixing.ofObjects[object] ?? -1]?.mixture;
  return mixture && partsInWords(mixture.parts, plan);
}
