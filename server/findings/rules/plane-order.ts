import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import type { PlaneMeasure } from '../../measure/values/planes.js';
import { stepValue } from '../../plan/colour/value.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { stepEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { disorderedPlanes } from '../seen/plane-order.js';
import { repaintingOf } from '../advice/repainting.js';
import { planeWords, stepsInWords, toStep } from '../words/tones.js';
import { heading, quoted } from '../words/words.js';

type Trend = 'lighten' | 'darken';

export const planeOrder: Rule = {
  id: 'plane order',
  severity: 'warning',
  chapter: 'values',
  perObject: false,
  summary: 'The planes do not lighten, or darken, with distance as the plan says.',
  explanation:
    'Air lightens what is far away; a lamp, a doorway or a dark wood behind does the opposite. Where the plan says which, each plane must be lighter, or darker, than the nearer one in the mean of all that is seen of it.',
  formula:
    'mean value of a plane <= that of the nearer one (lighten), or >= (darken); means weighed by visible area',
  source: 'the plan states it; lighter behind and darker in front is common practice, no source',
  check: (plan, measures) => {
    const trend = plan.scale.trend;
    if (!trend) return [];
    const values = measures.planes.map(({ value }) => value);
    return disorderedPlanes(trend.value, values).flatMap((farther) =>
      finding(plan, measures, trend.value, farther),
    );
  },
};

interface Neighbours {
  readonly farther: PlaneMeasure;
  readonly nearer: PlaneMeasure;
}

function finding(plan: Plan, measures: Measures, trend: Trend, at: number): readonly RuleFinding[] {
  const farther = measures.planes[at];
  const nearer = measures.planes.slice(at + 1).find(({ value }) => value !== undefined);
  if (farther?.value === undefined || nearer?.value === undefined) return [];
  const gap = Math.abs(farther.value - nearer.value);
  const decimals = gap > 0 && gap < 0.1 ? 2 : 1;
  const figures = [
    planeWords(farther.plane),
    planeWords(nearer.plane),
    plainNumber(farther.value, decimals),
    plainNumber(nearer.value, decimals),
  ] as const;
  return [
    {
      message:
        trend === 'lighten'
          ? t(
              'The {0} is to be lighter than the {1} and is not: their mean values are {2} and {3} (Munsell value, 0 to 10).',
              ...figures,
            )
          : t(
              'The {0} is to be darker than the {1} and is not: their mean values are {2} and {3} (Munsell value, 0 to 10).',
              ...figures,
            ),
      remedy: () => advice(plan, measures, trend, at, { farther, nearer }),
      location: plan.scale.trend?.location ?? heading(plan),
      objects: plan.objects
        .filter(({ plane, index }) => plane === farther.plane && (measures.objects[index]?.share ?? 0) > 0)
        .map(({ index }) => index),
    },
  ];
}

function asAWhole(trend: Trend, steps: number, farther: PlaneMeasure, nearer: PlaneMeasure): string {
  const told = [planeWords(farther.plane), stepsInWords(steps), planeWords(nearer.plane)] as const;
  return trend === 'lighten'
    ? t('The {0} as a whole would have to be {1} lighter, or the {2} as much darker.', ...told)
    : t('The {0} as a whole would have to be {1} darker, or the {2} as much lighter.', ...told);
}

/** The one object to repaint; else the steps by which one of the two planes as a whole would have to change. */
function advice(
  plan: Plan,
  measures: Measures,
  trend: Trend,
  at: number,
  { farther, nearer }: Neighbours,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const ofThese = plan.objects
    .filter(({ plane }) => plane === farther.plane || plane === nearer.plane)
    .map(({ index }) => index);
  const change = repaintingOf(plan, measures).smallestChange(
    ({ planes }) => !disorderedPlanes(trend, planes).includes(at),
    ofThese,
  );
  const object = change && plan.objects[change.object];
  if (change && object) {
    const { from, to } = change;
    const told = [quoted(object.name), planeWords(object.plane), stepsInWords(to - from), to] as const;
    return {
      advice:
        to > from
          ? t('Take {0}, in the {1}, {2} up, to step {3}: then they are in order.', ...told)
          : t('Take {0}, in the {1}, {2} down, to step {3}: then they are in order.', ...told),
      fix: { title: toStep(quoted(object.name), to), edits: stepEdit(object, to) },
    };
  }
  const step = stepValue(2, plan.scale.steps) - stepValue(1, plan.scale.steps);
  const gap = Math.abs((farther.value ?? 0) - (nearer.value ?? 0));
  const steps = Math.floor(gap / step + 1e-9) + 1;
  return {
    advice: `${
      plan.valueBudget
        ? t('No single object sets it right within the value budget.')
        : t('No single object sets it right.')
    } ${asAWhole(trend, steps, farther, nearer)}`,
  };
}
