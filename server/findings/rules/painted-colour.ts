import { t } from '../../../grammar/index.js';
import type { Measures } from '../../measure/measures.js';
import { computedColour, isNeutral, type Lab } from '../../plan/colour/model.js';
import { type Munsell, toMunsell } from '../../plan/colour/munsell.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { plannedMixture } from '../advice/painting.js';
import { exceeds } from '../limits.js';
import { heldToPlan, latestPhotograph } from '../seen/photographed.js';
import { sittingName } from '../words/days.js';
import { quoted } from '../words/words.js';

/** Munsell chroma by which a colour is said to be stronger or weaker. */
const SAID = 1;

export const paintedColour: Rule = {
  id: 'painted colour',
  severity: 'warning',
  chapter: 'record',
  limit: { value: 8, unit: 'number', of: 'of CIEDE2000 between the two at the planned value' },
  perObject: true,
  summary: 'In the latest photograph an object has another hue or chroma than planned.',
  explanation:
    'What is compared is the mean over what is seen of the object, without a narrow rim, and with the lightness of both as planned: whether it is too light or too dark is told by itself. About 5 is seen at a glance; 8 leaves room for the camera. After an underpainting nothing is said of colour, and of a glaze from the sitting that lays it. Without a grey patch in the photograph, when colours are as the camera balanced them, or where it has grave faults, this is a hint.',
  formula: 'CIEDE2000((L* planned, a* seen, b* seen), planned) > limit',
  source: 'CIEDE2000: Sharma, Wu, Dalal 2005; the limit is a heuristic',
  check: (plan, measures, limit) => {
    const latest = latestPhotograph(plan, measures);
    if (!latest) return [];
    return heldToPlan(plan, latest).flatMap(({ object, seen, against }): readonly RuleFinding[] => {
      const { colour, hueAndChroma } = against;
      if (!colour || hueAndChroma === undefined || !exceeds(hueAndChroma, limit)) return [];
      return [
        {
          message: t(
            'After {0} the colour of {1} is {2} off what is planned, at its planned value: {3} instead of {4}.',
            sittingName(plan, latest.sitting),
            quoted(object.name),
            plainNumber(hueAndChroma, 1),
            munsellOf(seen.colour).text,
            munsellOf(colour).text,
          ),
          remedy: () => ({ advice: adviceOn(plan, measures, object, seen.colour, colour) }),
          location: latest.location,
          related: [
            {
              location: object.colour?.location ?? object.location,
              message: t('{0} is planned here.', quoted(object.name)),
            },
          ],
          objects: [object.index],
          excess: hueAndChroma - limit,
          ...latest.colourGravity,
        },
      ];
    });
  },
};

function munsellOf(lab: Lab): Munsell {
  return toMunsell(computedColour(lab));
}

function adviceOn(plan: Plan, measures: Measures, object: PlanObject, seen: Lab, planned: Lab): string {
  const wanted = munsellOf(planned);
  const stronger = munsellOf(seen).chroma - wanted.chroma;
  const mixture = plannedMixture(plan, measures, object.index);
  const towards = isNeutral(computedColour(planned)) ? undefined : wanted.hue;
  if (stronger > SAID) return greyed(plainNumber(stronger, 1), towards, mixture);
  if (stronger < -SAID) return strengthened(plainNumber(-stronger, 1), towards, mixture);
  return turnedBack(towards, mixture);
}

function greyed(chroma: string, towards: string | undefined, mixture: string | undefined): string {
  if (towards === undefined)
    return mixture === undefined
      ? t('Grey it by {0} of chroma.', chroma)
      : t('Grey it by {0} of chroma: its planned colour is mixed from {1}.', chroma, mixture);
  return mixture === undefined
    ? t('Grey it by {0} of chroma, towards {1}.', chroma, towards)
    : t(
        'Grey it by {0} of chroma, towards {1}: its planned colour is mixed from {2}.',
        chroma,
        towards,
        mixture,
      );
}

function strengthened(chroma: string, towards: string | undefined, mixture: string | undefined): string {
  if (towards === undefined)
    return mixture === undefined
      ? t('Strengthen it by {0} of chroma.', chroma)
      : t('Strengthen it by {0} of chroma: its planned colour is mixed from {1}.', chroma, mixture);
  return mixture === undefined
    ? t('Strengthen it by {0} of chroma, towards {1}.', chroma, towards)
    : t(
        'Strengthen it by {0} of chroma, towards {1}: its planned colour is mixed from {2}.',
        chroma,
        towards,
        mixture,
      );
}

function turnedBack(towards: string | undefined, mixture: string | undefined): string {
  if (towards === undefined)
    return mixture === undefined
      ? t('Turn its hue back.')
      : t('Turn its hue back: its planned colour is mixed from {0}.', mixture);
  return mixture === undefined
    ? t('Turn its hue back, towards {0}.', towards)
    : t('Turn its hue back, towards {0}: its planned colour is mixed from {1}.', towards, mixture);
}
