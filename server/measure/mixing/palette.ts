import { pigmentOf } from '../../plan/materials/pigments.js';
import type { Palette, Plan } from '../../plan/plan.js';
import type { Memory } from '../memory.js';
import { keptWordless } from '../wordless.js';
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
  memory: Memory,
): PaletteMeasure | undefined {
  const { palette } = plan;
  if (!palette) {
    mixer.rest();
    return undefined;
  }
  const wordless = keptWordless(plan, memory);
  const asked = memory.recall('mixtures asked for', '', [wordless], () =>
    askedOf(plan, palette, shares, bareShare),
  );
  const answer = mixer.ask(asked.key, () => searchMixtures(mixer.store, asked.question));
  return memory.recall('palette', '', [wordless, answer], (): PaletteMeasure => {
    const paints = palette.paints.map((paint, index) =>
      measurePaint(paint, asked.known[index] ?? { basis: 'unknown' }),
    );
    return {
      paints,
      tubes: paints.length,
      primaries: measurePrimaries(paints),
      ...(answer ? { mixing: measureMixing(plan, shares, asked, answer) } : {}),
    };
  });
}

/** What a plan asks of its palette, and what that is put together from. */
interface Asked {
  readonly known: readonly KnownPaint[];
  readonly colours: ReturnType<typeof paintedColours>;
  readonly strings: readonly WantedString[];
  readonly question: Question;
  readonly key: string;
}

function askedOf(plan: Plan, palette: Palette, shares: readonly number[], bareShare: number): Asked {
  const known = knownPaints(palette);
  const colours = paintedColours(plan, shares, bareShare);
  const strings = valueStrings(plan, shares);
  const question: Question = {
    set: usablePaints(palette, known),
    painted: colours.map(({ colour: { lab }, isStated }) => ({ lab, isStated })),
    between: strings.flatMap(({ steps }) => steps.map(({ wanted }) => wanted.lab)),
    glazes: plan.objects.flatMap(({ glaze }) =>
      glaze && glaze.paint === undefined ? [glaze.colour.lab] : [],
    ),
  };
  return { known, colours, strings, question, key: keyOf(question) };
}

function measureMixing(
  plan: Plan,
  shares: readonly number[],
  { known, colours, strings, question: { set } }: Asked,
  answer: Answer,
): MixingMeasure {
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
