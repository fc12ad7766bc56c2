import { t } from '../../../grammar/index.js';
import type { PaintMeasure } from '../../measure/mixing/mixing.js';
import { hueDistance } from '../../plan/colour/hue.js';
import { type Colour, labHueDegrees } from '../../plan/colour/model.js';
import type { Plan } from '../../plan/plan.js';
import { inWords } from '../../plan/problems.js';
import type { Rule, RuleFinding } from '../finding.js';
import { quoted } from '../words/words.js';

export const opaqueGlaze: Rule = {
  id: 'opaque glaze',
  severity: 'hint',
  chapter: 'palette',
  perObject: true,
  summary: 'A glaze is of a paint that is opaque.',
  explanation:
    'A glaze is a transparent layer: light goes through it, is sent back by the dry paint below and goes through it again, which is where its depth comes from. An opaque paint, such as a cadmium or titanium white, sends light back itself, however thin it is laid; that makes a veil, or a scumble. How transparent a pigment is differs by maker, and is from memory.',
  formula: 'a paint of the glaze whose pigment is known to be opaque, and no black',
  source: 'common practice, no source',
  check: (plan, { palette }) =>
    (palette?.mixing?.glazes ?? []).flatMap((glaze) => {
      const opaque = (glaze?.mixture?.parts ?? []).filter(({ paint }) => veils(palette?.paints[paint]));
      return glaze && palette && opaque.length > 0
        ? finding(
            plan,
            palette.paints,
            glaze.object,
            opaque.map(({ paint }) => paint),
          )
        : [];
    }),
};

/** A black takes light away and sends none back. */
function veils(paint: PaintMeasure | undefined): boolean {
  return paint?.pigment?.transparency === 'opaque' && paint.family !== 'black';
}

function finding(
  plan: Plan,
  paints: readonly PaintMeasure[],
  index: number,
  opaque: readonly number[],
): readonly RuleFinding[] {
  const object = plan.objects[index];
  if (!object?.glaze) return [];
  const named = opaque.map((paint) => {
    const known = paints[paint]?.pigment?.name;
    const name = quoted(plan.palette?.paints[paint]?.name ?? '');
    return known === undefined ? name : `${name} (${known})`;
  });
  return [
    {
      message:
        named.length === 1
          ? t(
              '{0} is to be glazed with {1}, which is opaque: it will veil what is below rather than glow.',
              quoted(object.name),
              inWords(named),
            )
          : t(
              '{0} is to be glazed with {1}, which are opaque: it will veil what is below rather than glow.',
              quoted(object.name),
              inWords(named),
            ),
      advice: adviceOf(plan, paints, object.glaze.colour),
      location: object.glaze.location,
      objects: [index],
    },
  ];
}

/** The transparent paint of the palette whose hue is nearest. */
function adviceOf({ palette }: Plan, paints: readonly PaintMeasure[], wanted: Colour): string {
  const [nearest] = paints
    .flatMap(({ pigment, tint }, index) =>
      pigment &&
      tint &&
      ['transparent', 'semi-transparent'].includes(pigment.transparency) &&
      pigment.family !== 'white'
        ? [{ index, pigment, away: hueDistance(labHueDegrees(tint.lab), labHueDegrees(wanted.lab)) }]
        : [],
    )
    .sort((one, other) => one.away - other.away);
  if (!nearest) return t('Put a transparent paint of this hue on the palette, or lay it as a scumble.');
  const name = quoted(palette?.paints[nearest.index]?.name ?? '');
  return t('Of the palette’s transparent paints {0} is nearest in hue; or lay this as a scumble.', name);
}
