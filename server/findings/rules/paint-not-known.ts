import { nameKey, t } from '../../../grammar/index.js';
import type { PaintMeasure } from '../../measure/mixing/mixing.js';
import { knownPigments, type Pigment } from '../../plan/materials/pigments.js';
import type { Paint, Plan } from '../../plan/plan.js';
import type { Rule, RuleFinding } from '../finding.js';
import { eitherOf, quoted } from '../words/words.js';

export const paintNotKnown: Rule = {
  id: 'paint not known',
  severity: 'hint',
  chapter: 'palette',
  perObject: false,
  summary: 'Too little is known of a paint to work out mixtures with it.',
  explanation:
    'Mixtures are worked out from how a paint absorbs and scatters light. That is measured for thirteen pigments and remembered for many more, which are known by their Colour Index names. Of any other paint two colours tell enough for an estimate: its full tone, and a tint of known parts with white, which shows how strong it is.',
  formula:
    'neither a measured spectrum, nor the tones of its pigment, nor a full tone; or a full tone without a tint',
  source: 'the two-constant theory of Kubelka and Munk needs two figures of a paint',
  check: (plan, { palette }) =>
    (palette?.paints ?? []).flatMap((measure, index) => {
      const paint = plan.palette?.paints[index];
      return paint ? finding(plan, paint, measure) : [];
    }),
};

function finding(
  plan: Plan,
  paint: Paint,
  { basis, strengthGuessed, pigment }: PaintMeasure,
): readonly RuleFinding[] {
  if (basis !== 'unknown' && !strengthGuessed) return [];
  const { name, location, index } = paint;
  const isMother = plan.palette?.mother && nameKey(plan.palette.mother.value) === paint.key;
  if (strengthGuessed) {
    return [
      {
        message: t(
          'Of {0} the full tone is known and no tint, so that its strength in mixtures is a guess: that of a middling pigment.',
          quoted(name),
        ),
        advice: t(
          'Paint out a tint with white and give it with its parts, such as `tint #e8a0b0 at 1 to 9`.',
        ),
        location,
      },
    ];
  }
  return [
    {
      message:
        messageOn(name, pigment, index) +
        (isMother ? ` ${t('It is the mother colour, so it is left out of all mixtures.')}` : ''),
      advice: adviceOn(pigment, index),
      location,
    },
  ];
}

function messageOn(name: string, pigment: Pigment | undefined, index: string | undefined): string {
  if (pigment)
    return t(
      'No mixtures can be worked out with {0}: {1}, {2}, can be very different paints, and the plan gives no tones of it.',
      quoted(name),
      index ?? pigment.index,
      pigment.name,
    );
  return index === undefined
    ? t(
        'No mixtures can be worked out with {0}: it has no Colour Index name, and the plan gives no tones of it.',
        quoted(name),
      )
    : t(
        'No mixtures can be worked out with {0}: nothing is known of the pigment {1}, and the plan gives no tones of it.',
        quoted(name),
        index,
      );
}

/** Some names stand for several paints, and then what the paint is called tells which. */
function kindsOf(pigment: Pigment | undefined): readonly string[] {
  const kinds = knownPigments().filter(({ index, remembered }) => index === pigment?.index && remembered);
  const names = kinds.map(({ name }) => `\`${name.toLowerCase().replaceAll(' ', '-')}\``);
  return names;
}

function adviceOn(pigment: Pigment | undefined, index: string | undefined): string {
  const tones = '`full #7a1030 tint #e8a0b0 at 1 to 9`';
  const kinds = kindsOf(pigment);
  if (kinds.length > 0) {
    return index === undefined
      ? t(
          'Call it what it is, {0}, or give its full tone and a tint with white that you have painted out, such as {1}, or its Colour Index name from the tube.',
          eitherOf(kinds),
          tones,
        )
      : t(
          'Call it what it is, {0}, or give its full tone and a tint with white that you have painted out, such as {1}.',
          eitherOf(kinds),
          tones,
        );
  }
  return index === undefined
    ? t(
        'Give its full tone and a tint with white that you have painted out, such as {0}, or its Colour Index name from the tube.',
        tones,
      )
    : t('Give its full tone and a tint with white that you have painted out, such as {0}.', tones);
}
