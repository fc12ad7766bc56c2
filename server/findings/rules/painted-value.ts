import type { Measures } from '../../measure/measures.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { plannedMixture } from '../advice/painting.js';
import { exceeds } from '../limits.js';
import { heldToPlan, type Judged, latestPhotograph } from '../seen/photographed.js';
import { afterSitting, offInSteps, stepsInWords } from '../words/photographs.js';
import { quoted } from '../words/words.js';

/** An object so near to its step can be matched to. */
const MATCHES = 0.25;

export const paintedValue: Rule = {
  id: 'painted value',
  severity: 'warning',
  chapter: 'record',
  limit: { value: 0.75, unit: 'number', of: 'steps of the scale' },
  perObject: true,
  summary: 'In the latest photograph an object is lighter or darker than planned.',
  explanation:
    'Value carries the picture, and wet paint, a strong ground or a bright lamp mislead about it. What is compared is the mean over what is seen of the object, without a narrow rim. Three quarters of a step are let pass: half a step is the next step’s border, and a photograph may be off by some of the rest. An object that no sitting has painted yet is left alone, and where the photograph has grave faults this is a hint.',
  formula:
    '|step of the mean colour in the photograph - step that is to stand there after the sitting| > limit',
  source: 'the plan states it; the limit is common practice, no source',
  check: (plan, measures, limit) => {
    const latest = latestPhotograph(plan, measures);
    if (!latest) return [];
    return heldToPlan(plan, latest).flatMap(({ object, seen, against }): readonly RuleFinding[] => {
      if (!exceeds(Math.abs(against.stepsOff), limit)) return [];
      return [
        {
          message: `${afterSitting(plan, latest.sitting)} ${quoted(object.name)} is ${offInSteps(against.stepsOff)} than planned: step ${plainNumber(seen.step, 1)} in the photograph, ${plainNumber(against.step, 1)} in the plan.`,
          remedy: () => ({ advice: adviceOn(plan, measures, latest, object, against) }),
          location: latest.location,
          related: [
            {
              location: object.valueLocation ?? object.location,
              message: `${quoted(object.name)} is planned here.`,
            },
          ],
          objects: [object.index],
          excess: Math.abs(against.stepsOff) - limit,
          ...latest.gravity,
        },
      ];
    });
  },
};

function adviceOn(
  plan: Plan,
  measures: Measures,
  latest: Judged,
  object: PlanObject,
  { step, stepsOff, colour }: { readonly step: number; readonly stepsOff: number; readonly colour?: unknown },
): string {
  const way = stepsOff < 0 ? 'Lighten' : 'Darken';
  const mixture = colour === undefined ? undefined : plannedMixture(plan, measures, object.index);
  if (mixture) return `${way} it by ${stepsInWords(stepsOff)}: its planned colour is mixed from ${mixture}.`;
  const match = heldToPlan(plan, latest).find(
    ({ object: other, against }) =>
      other.index !== object.index &&
      Math.abs(against.step - step) < MATCHES &&
      Math.abs(against.stepsOff) < MATCHES,
  );
  return match
    ? `${way} it by ${stepsInWords(stepsOff)}, until it is as light as ${quoted(match.object.name)}, which is on its step.`
    : `${way} it by ${stepsInWords(stepsOff)}.`;
}
