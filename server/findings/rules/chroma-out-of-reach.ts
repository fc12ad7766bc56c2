import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { atValue } from '../../plan/colour/painted.js';
import { stepValue } from '../../plan/colour/value.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { stepEdit } from '../edits.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { repaintingOf } from '../advice/repainting.js';
import { isPrincipal } from '../words/principals.js';
import { toStep } from '../words/tones.js';
import { percent, quoted, someOf } from '../words/words.js';

/** Part of the picture under which an object is a touch, unless it is a principal. */
const TOUCH = 0.002;
const MOST_NAMED = 4;

export const chromaOutOfReach: Rule = {
  id: 'chroma out of reach',
  severity: 'hint',
  chapter: 'values',
  limit: { value: 0.4, unit: 'part', of: 'the chroma' },
  perObject: true,
  summary: 'A colour loses much of its chroma at the value it is to be painted at.',
  explanation:
    'Every hue is strongest at a value of its own: yellow is strong when it is light, blue and red are when they are dark. Taken far from there a colour can only be had paler or duller. The limit used here is what a screen can show (sRGB); tube paints reach further in some hues and less far in others, so take the figure as a warning, not as a measurement of paint.',
  formula:
    '1 - chroma that can be had at the value / chroma of the colour > limit (Munsell chroma, sRGB); touches under 0.2 % of the picture that are no principals are passed over',
  source: 'Munsell renotation (Newhall, Nickerson and Judd 1943) within sRGB (IEC 61966-2-1)',
  check: (plan, measures, limit) => {
    const alike = new Map<string, PlanObject[]>();
    for (const object of plan.objects) {
      if (!object.colour || !isLost(object, limit) || isTouch(object, measures)) continue;
      const key = `${object.colour.colour.lab.join(' ')} ${object.value ?? ''}`;
      alike.set(key, [...(alike.get(key) ?? []), object]);
    }
    return [...alike.values()].flatMap((objects) => finding(plan, measures, objects, limit));
  },
};

function isLost({ chroma }: PlanObject, limit: number): boolean {
  return chroma !== undefined && chroma.wanted > 0 && exceeds(1 - chroma.reached / chroma.wanted, limit);
}

function isTouch(object: PlanObject, { objects }: Measures): boolean {
  const share = objects[object.index]?.share ?? 0;
  return share === 0 || (share < TOUCH && !isPrincipal(object));
}

/** One finding for all objects of one colour at one value, told at the largest of them. */
function finding(
  plan: Plan,
  measures: Measures,
  objects: readonly PlanObject[],
  limit: number,
): readonly RuleFinding[] {
  const share = ({ index }: PlanObject): number => measures.objects[index]?.share ?? 0;
  const sorted = objects.toSorted((one, other) => share(other) - share(one));
  const [first] = sorted;
  if (!first?.colour || !first.chroma || first.value === undefined || first.step === undefined) return [];
  const { wanted, reached } = first.chroma;
  const named = plan.colours[first.colour.named ?? -1];
  const colour = named ? quoted(named.name) : t('Its colour');
  const names = someOf(
    sorted.map(({ name }) => quoted(name)),
    MOST_NAMED,
  );
  const figures = [
    colour,
    plainNumber(wanted, 1),
    plainNumber(first.step),
    names,
    plainNumber(reached, 1),
  ] as const;
  return [
    {
      message: `${
        sorted.length === 1
          ? t(
              '{0} has chroma {1}; at value {2}, where {3} is painted, a screen can show {4} of it, and paint may differ.',
              ...figures,
            )
          : t(
              '{0} has chroma {1}; at value {2}, where {3} are painted, a screen can show {4} of it, and paint may differ.',
              ...figures,
            )
      } ${t('Up to {0} less is let pass.', percent(limit))}`,
      ...advice(plan, measures, first, sorted.length, limit),
      location: first.valueLocation ?? first.colour.location,
      related: [{ location: first.colour.location, message: t('The colour is given here.') }],
      objects: sorted.map(({ index }) => index),
      excess: 1 - reached / wanted - limit,
    },
  ];
}

/** The nearest step at which the chroma can be had, as a fix when the other intentions about light and dark allow. */
function advice(
  plan: Plan,
  measures: Measures,
  object: PlanObject,
  count: number,
  limit: number,
): Pick<RuleFinding, 'advice' | 'fix'> {
  const { colour, step } = object;
  if (!colour || step === undefined) return {};
  const { steps } = plan.scale;
  const stepsThere = Array.from({ length: steps }, (_, at) => at + 1)
    .map((to) => ({ to, painted: atValue(colour.colour, stepValue(to, steps)) }))
    .filter(({ painted }) => !exceeds(1 - painted.chromaReached / painted.chromaWanted, limit))
    .sort(
      (one, other) =>
        Math.abs(one.to - step) - Math.abs(other.to - step) ||
        other.painted.chromaReached - one.painted.chromaReached,
    );
  const [nearest] = stepsThere;
  if (!nearest) {
    return { advice: t('No step of the scale has room for so much of it: plan with a quieter colour.') };
  }
  const { to, painted } = nearest;
  const repainting = repaintingOf(plan, measures);
  const keeps =
    count === 1 &&
    repainting.breaksNothing(repainting.after({ object: object.index, from: Math.round(step), to }));
  const had = plainNumber(painted.chromaReached, 1);
  const name = quoted(object.name);
  if (keeps) {
    return {
      advice: t(
        'Take {0} to step {1}: at value {1} chroma {2} can be had. Or accept the paler colour.',
        name,
        to,
        had,
      ),
      fix: { title: toStep(name, to), edits: stepEdit(object, to) },
    };
  }
  return {
    advice: t(
      'Accept the paler colour, or let a part of {0} be darker or lighter: at value {1} chroma {2} can be had.',
      name,
      to,
      had,
    ),
  };
}
