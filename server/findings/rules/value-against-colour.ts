import { nameKey, t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { fractionalStep, nearestStep, valueOf } from '../../plan/colour/value.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import { stepEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds, hasFault } from '../limits.js';
import { repaintingOf } from '../advice/repainting.js';
import { quoted } from '../words/words.js';

export const valueAgainstColour: Rule = {
  id: 'value against colour',
  severity: 'hint',
  chapter: 'values',
  limit: { value: 0.5, unit: 'number', of: 'of a step' },
  perObject: true,
  summary: 'A colour written at an object is lighter or darker than the value written beside it.',
  explanation:
    'An object is painted at its value. A colour that goes by a name may be used at many values, but one that is written at the object itself has a value of its own, and where the two differ one of them is not meant.',
  formula: '|step of the colour’s own value, with fractions - value| > limit',
  source: 'common practice, no source; step k of N is Munsell value 10 (k - 0.5) / N',
  check: (plan, measures, limit) =>
    plan.objects.flatMap((object): RuleFinding[] => {
      const { colour, step, stepStated, valueLocation } = object;
      if (!colour || step === undefined || !stepStated || !valueLocation) return [];
      if (!isWrittenAtObject(plan, object) || hasFault(plan, object)) return [];
      const { steps } = plan.scale;
      const own = valueOf(colour.colour);
      const apart = Math.abs(fractionalStep(own, steps) - step);
      if (!exceeds(apart, limit)) return [];
      const fitting = nearestStep(own, steps);
      const way = fractionalStep(own, steps) > step ? 'lighter' : 'darker';
      const figures = [
        quoted(object.name),
        plainNumber(fractionalStep(own, steps), 1),
        plainNumber(own, 1),
        plainNumber(step),
        plainNumber(limit),
      ] as const;
      return [
        {
          message:
            way === 'lighter'
              ? t(
                  'The colour written at {0} lies at {1} on the value scale (Munsell value {2}), lighter than the `value {3}` beside it, which is what counts; up to {4} of a step is let pass.',
                  ...figures,
                )
              : t(
                  'The colour written at {0} lies at {1} on the value scale (Munsell value {2}), darker than the `value {3}` beside it, which is what counts; up to {4} of a step is let pass.',
                  ...figures,
                ),
          ...advice(plan, measures, object, fitting, way),
          location: valueLocation,
          related: [{ location: colour.location, message: t('The colour is written here.') }],
          objects: [object.index],
          excess: apart - limit,
        },
      ];
    }),
};

/** The step nearest to the colour, where it keeps what the plan says of light and dark; else another colour. */
function advice(
  plan: Plan,
  measures: Measures,
  object: PlanObject,
  fitting: number,
  way: 'lighter' | 'darker',
): Pick<RuleFinding, 'advice' | 'fix'> {
  const from = Math.round(object.step ?? fitting);
  const isTooLight = way === 'lighter';
  // With a narrower limit the step that is written may be the nearest already.
  if (fitting === object.step)
    return { advice: isTooLight ? t('Write a darker colour.') : t('Write a lighter colour.') };
  const repainting = repaintingOf(plan, measures);
  if (!repainting.breaksNothing(repainting.after({ object: object.index, from, to: fitting }))) {
    return {
      advice: isTooLight
        ? t(
            'Write a darker colour: `value {0}`, the step nearest to this one, would break what the plan says of light and dark elsewhere.',
            fitting,
          )
        : t(
            'Write a lighter colour: `value {0}`, the step nearest to this one, would break what the plan says of light and dark elsewhere.',
            fitting,
          ),
    };
  }
  return {
    advice: isTooLight
      ? t('Write `value {0}`, the step nearest to the colour, or a darker colour.', fitting)
      : t('Write `value {0}`, the step nearest to the colour, or a lighter colour.', fitting),
    fix: { title: t('Change to value {0}', fitting), edits: stepEdit(object, fitting) },
  };
}

/** A paint from the tube is meant to be taken lighter or darker, as a colour with a name is. */
function isWrittenAtObject({ palette }: Plan, { colour, node }: PlanObject): boolean {
  const written = every(node.children, 'colour').at(-1)?.statement.colour;
  if (colour?.named !== undefined || !written) return false;
  return written.kind !== 'name' || !palette?.paints.some(({ key }) => key === nameKey(written.text));
}
