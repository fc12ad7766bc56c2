import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { plannedMixture } from '../advice/painting.js';
import { exceeds } from '../limits.js';
import { heldToPlan, type Judged, latestPhotograph } from '../seen/photographed.js';
import { sittingName } from '../words/days.js';
import { offInSteps } from '../words/photographs.js';
import { stepsInWords } from '../words/tones.js';
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
          message: t(
            'After {0} {1} is {2} than planned: step {3} in the photograph, {4} in the plan.',
            sittingName(plan, latest.sitting),
            quoted(object.name),
            offInSteps(against.stepsOff),
            plainNumber(seen.step, 1),
            plainNumber(against.step, 1),
          ),
          remedy: () => ({ advice: adviceOn(plan, measures, latest, object, against) }),
          location: latest.location,
          related: [
            {
              location: object.valueLocation ?? object.location,
              message: t('{0} is planned here.', quoted(object.name)),
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
  const steps = stepsInWords(stepsOff);
  const isLightened = stepsOff < 0;
  const mixture = colour === undefined ? undefined : plannedMixture(plan, measures, object.index);
  if (mixture)
    return isLightened
      ? t('Lighten it by {0}: its planned colour is mixed from {1}.', steps, mixture)
      : t('Darken it by {0}: its planned colour is mixed from {1}.', steps, mixture);
  const match = heldToPlan(plan, latest).find(
    ({ object: other, against }) =>
      other.index !== object.index &&
      Math.abs(against.step - step) < MATCHES &&
      Math.abs(against.stepsOff) < MATCHES,
  );
  if (!match) return isLightened ? t('Lighten it by {0}.', steps) : t('Darken it by {0}.', steps);
  const name = quoted(match.object.name);
  return isLightened
    ? t('Lighten it by {0}, until it is as light as {1}, which is on its step.', steps, name)
    : t('Darken it by {0}, until it is as light as {1}, which is on its step.', steps, name);
}
