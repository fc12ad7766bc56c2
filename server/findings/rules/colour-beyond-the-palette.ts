import { t } from '../../../grammar/index.js';
import type { MixingMeasure, Swatch } from '../../measure/mixing/mixing.js';
import { missedBy } from '../../measure/mixing/missed.js';
import type { Measures } from '../../measure/measures.js';
import type { Colour } from '../../plan/colour/colour.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { exceeds } from '../limits.js';
import { partsInWords } from '../words/paints.js';
import { isPrincipal } from '../words/principals.js';
import { heading, quoted, someOf } from '../words/words.js';

/** Part of the picture under which a colour is a touch, unless a principal object or the ground has it. */
const TOUCH = 0.002;
const MOST_NAMED = 4;

/** Less than this taken off a difference is not worth a tube. CIEDE2000; a heuristic. */
const WORTH_A_TUBE = 1;

export const colourBeyondThePalette: Rule = {
  id: 'colour beyond the palette',
  severity: 'warning',
  chapter: 'palette',
  limit: { value: 5, unit: 'number', of: 'by CIEDE2000' },
  perObject: true,
  summary: 'No mixture of the palette comes near enough to a colour of the picture.',
  explanation:
    'A limited palette holds a picture together, and it can’t mix everything. The mixtures are predictions from measured or estimated spectra; a difference of 1 can just be seen side by side, and one of 5 is another colour. Where one paint that was measured would bring the colours beyond the palette nearer, it is named. A colour darker than value 1.9 is judged as if it were wanted at that value: the measured paints are not darker, because the light that their surface sends back was measured too, and a glossy or varnished surface looks darker.',
  formula:
    'CIEDE2000 from the colour as it will be painted to the nearest mixture of at most three paints and white, in whole parts, L* of the colour at least that of the darkest measured paint > limit; objects that have a value and no colour, and touches under 0.2 % of the picture that are no principals, are passed over',
  source: 'common practice, no source; mixtures by the two-constant theory of Kubelka and Munk',
  check: (plan, measures, limit) => {
    const mixing = measures.palette?.mixing;
    if (!mixing) return [];
    return mixing.swatches.flatMap((swatch, at) =>
      !swatch.isStated || isTouch(plan, swatch) ? [] : finding(plan, measures, mixing, at, limit),
    );
  },
};

function isTouch(plan: Plan, { share, objects, isGround }: Swatch): boolean {
  if (share === 0 && !isGround) return true;
  return (
    share < TOUCH &&
    !isGround &&
    objects.every((index) => {
      const object = plan.objects[index];
      return !object || !isPrincipal(object);
    })
  );
}

function finding(
  plan: Plan,
  { palette }: Measures,
  mixing: MixingMeasure,
  at: number,
  limit: number,
): readonly RuleFinding[] {
  const swatch = mixing.swatches[at];
  const { mixture } = swatch ?? {};
  if (!palette || !swatch || !mixture) return [];
  const difference = missedBy(swatch.wanted.lab, mixture.colour.lab);
  if (!exceeds(difference, limit)) return [];
  const first = plan.objects[swatch.objects[0] ?? -1];
  const told = plainNumber(difference, exceeds(Number(plainNumber(difference, 1)), limit) ? 1 : 2);
  const made = partsInWords(mixture.parts, plan).replaceAll('\u00A0', ' ');
  const figures = [
    whereOf(plan, swatch),
    munsellOf(swatch.wanted),
    made,
    munsellOf(mixture.colour),
    told,
    plainNumber(limit),
  ] as const;
  return [
    {
      message: mixture.isEstimate
        ? t(
            'No mixture of the palette comes near to the colour of {0}, {1}: the nearest, {2}, is about {3}, which is {4} off by estimate. Up to {5} is let pass.',
            ...figures,
          )
        : t(
            'No mixture of the palette comes near to the colour of {0}, {1}: the nearest, {2}, is about {3}, which is {4} off by prediction. Up to {5} is let pass.',
            ...figures,
          ),
      advice: advice(mixing, at, difference, mixture.colour),
      location:
        first?.colour?.location ??
        first?.valueLocation ??
        first?.location ??
        plan.canvas.ground.location ??
        heading(plan),
      related: plan.palette
        ? [{ location: plan.palette.location, message: t('The palette is chosen here.') }]
        : [],
      objects: swatch.objects,
      excess: difference - limit,
    },
  ];
}

function whereOf(plan: Plan, { objects, isGround }: Swatch): string {
  const names = objects.map((index) => quoted(plan.objects[index]?.name ?? ''));
  return someOf(isGround ? [...names, t('the toned ground')] : names, MOST_NAMED);
}

function munsellOf(colour: Colour): string {
  return toMunsell(colour).text;
}

function advice({ addition }: MixingMeasure, at: number, now: number, reached: Colour): string {
  const left = addition?.differences.find(({ swatch }) => swatch === at)?.difference;
  const settled = munsellOf(reached);
  if (!addition || left === undefined || now - left < WORTH_A_TUBE) {
    return t('Choose a paint nearer to this colour, or plan with what can be had, {0}.', settled);
  }
  const { name, index } = addition.pigment;
  return t(
    'With {0} ({1}) on the palette the nearest mixture is predicted to be {2} off. Or plan with what can be had, {3}.',
    name,
    index,
    plainNumber(left, 1),
    settled,
  );
}
