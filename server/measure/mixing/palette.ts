import { pigmentOf } from '../../plan/materials/pigments.js';
import type { Palette, Plan } from '../../plan/plan.js';
import { colourMillilitres, paintAmounts } from './amounts.js';
import { measureGlazes } from './glazes.js';
import { missedBy } from './missed.js';
import type { Mixer } from './mixer.js';
import type { KnownPaint } from './paints.js';
import type { MixingMeasure, Mixture, PaintAddition, PaletteMeasure, Swatch } from './mixing.js';
import { paintedColours } from './painted-colours.js';
import { knownPaints, plannedMixture, type UsablePaints, usablePaints } from './palette-set.js';
import { measurePaint, measurePrimaries } from './primaries.js';
import { type Answer, BEYOND_REACH, keyOf, type Question, searchMixtures } from './search.js';
import { valueStrings, type WantedString } from './strings.js';
import type { Found } from './table.js';

/**
 * What is worked out about the palette of a plan; nothing without one. A patient mixer may leave out the mixtures until
 * they are there.
 *
 * @param shares visible shares in the order of `plan.objects`
 * @param bareShare what is seen of the ground
 */
export function measurePalette(
  plan: Plan,
  shares: readonly number[],
  bareShare: number,
  mixer: Mixer,
): PaletteMeasure | undefined {
  const { palette } = plan;
  if (!palette) {
    mixer.rest();
    return undefined;
  }
  const known = knownPaints(palette);
  const paints = palette.paints.map((paint, index) =>
    measurePaint(paint, known[index] ?? { basis: 'unknown' }),
  );
  const mixing = measureMixing(plan, palette, known, shares, bareShare, mixer);
  return {
    paints,
    tubes: paints.length,
    primaries: measurePrimaries(paints),
    ...(mixing ? { mixing } : {}),
  };
}

function measureMixing(
  plan: Plan,
  palette: Palette,
  known: readonly KnownPaint[],
  shares: readonly number[],
  bareShare: number,
  mixer: Mixer,
): MixingMeasure | undefined {
  const set = usablePaints(palette, known);
  const colours = paintedColours(plan, shares, bareShare);
  const strings = valueStrings(plan, shares);
  const question: Question = {
    set,
    painted: colours.map(({ colour: { lab }, isStated }) => ({ lab, isStated })),
    between: strings.flatMap(({ steps }) => steps.map(({ wanted }) => wanted.lab)),
    glazes: plan.objects.flatMap(({ glaze }) =>
      glaze && glaze.paint === undefined ? [glaze.colour.lab] : [],
    ),
  };
  const answer = mixer.ask(keyOf(question), () => searchMixtures(mixer.store, question));
  if (!answer) return undefined;
  const swatches = colours.map((colour, at): Swatch => ({
    wanted: colour.colour,
    objects: colour.objects,
    isGround: colour.isGround,
    isStated: colour.isStated,
    share: colour.share,
    ...mixtureOf(set, answer.painted[at]),
    millilitres: colourMillilitres(plan, shares, colour),
  }));
  const swatchOf = new Map(swatches.flatMap(({ objects }, at) => objects.map((object) => [object, at])));
  const ofObjects = plan.objects.map((_, object) => swatchOf.get(object));
  const glazes = measureGlazes(plan, { known, set, swatches, ofObjects, found: answer.glazes });
  const beyond = swatches.flatMap(({ wanted, mixture, isStated }, at) =>
    isStated && mixture && missedBy(wanted.lab, mixture.colour.lab) > BEYOND_REACH ? [at] : [],
  );
  const addition = additionOf(answer, beyond);
  return {
    swatches,
    ofObjects,
    glazes,
    strings: measuredStrings(set, strings, answer.between),
    amounts: paintAmounts(plan, shares, swatches, glazes),
    beyond,
    ...(addition ? { addition } : {}),
    reach: answer.reach,
  };
}

function mixtureOf(
  set: UsablePaints,
  found: Found | undefined,
): { readonly mixture?: Mixture; readonly difference?: number } {
  if (!found) return {};
  return { mixture: plannedMixture(set, found.parts, found.lab), difference: found.difference };
}

function measuredStrings(
  set: UsablePaints,
  strings: readonly WantedString[],
  found: Answer['between'],
): MixingMeasure['strings'] {
  let at = 0;
  return strings.map(({ name, steps }) => ({
    name,
    steps: steps.map((step) => ({ ...step, ...mixtureOf(set, found[at++]) })),
  }));
}

function additionOf({ addition }: Answer, beyond: readonly number[]): PaintAddition | undefined {
  const pigment = addition && pigmentOf(addition.index);
  if (!pigment) return undefined;
  return {
    pigment,
    differences: beyond.map((swatch, at) => ({ swatch, difference: addition.left[at] ?? 0 })),
  };
}
