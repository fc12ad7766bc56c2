import type { GlazeMeasure, MixingMeasure, Mixture, PaletteMeasure } from '../measure/mixing/mixing.js';
import { toMunsell } from '../plan/colour/munsell.js';
import { toHex } from '../plan/colour/srgb.js';
import type { Palette, Plan } from '../plan/plan.js';
import { round } from './figures.js';
import type { MixDocument } from './schema/mix.js';

type Part = NonNullable<MixDocument['palette']>;
type MixtureDocument = NonNullable<Part['colours'][number]['mixture']>;

/** What the colours of a plan are mixed of, for programs; its schema is `schema/mix-1.json`. */
export function mixDocument(
  file: string,
  plan: Plan,
  measure: PaletteMeasure | undefined,
  errors: number,
): MixDocument {
  const { palette } = plan;
  const mixing = measure?.mixing;
  return {
    schema: 'mahlstick/schema/mix-1.json',
    version: 1,
    file,
    errors,
    ...(plan.title ? { title: plan.title.value } : {}),
    ...(palette && measure && mixing ? { palette: palettePart(plan, palette, measure, mixing) } : {}),
  };
}

function palettePart(plan: Plan, palette: Palette, measure: PaletteMeasure, mixing: MixingMeasure): Part {
  const nameOf = (paint: number): string => palette.paints[paint]?.name ?? '';
  const beyond = new Set(mixing.beyond);
  const { addition } = mixing;
  return {
    paints: palette.paints.map((_, at) => paintPart(palette, measure, mixing, at)),
    ...(palette.mother ? { mother: palette.mother.value } : {}),
    primaries: measure.primaries.map(({ primary, warm, cool, undecided, lacks }) => ({
      primary,
      warm: warm.map(nameOf),
      cool: cool.map(nameOf),
      undecided: undecided.map(nameOf),
      lacks: [...lacks],
    })),
    colours: mixing.swatches.map((swatch, at) => ({
      wanted: toHex(swatch.wanted),
      munsell: toMunsell(swatch.wanted).text,
      objects: swatch.objects.map((object) => plan.objects[object]?.name ?? ''),
      ground: swatch.isGround,
      stated: swatch.isStated,
      share: round(swatch.share),
      millilitres: round(swatch.millilitres),
      ...mixturePart(nameOf, swatch),
      beyond: beyond.has(at),
    })),
    glazes: mixing.glazes.flatMap((glaze) => (glaze ? [glazePart(plan, nameOf, glaze)] : [])),
    strings: mixing.strings.map(({ name, steps }) => ({
      name,
      steps: steps.map((step) => ({
        step: step.step,
        wanted: toHex(step.wanted),
        ...mixturePart(nameOf, step),
      })),
    })),
    ...(addition
      ? {
          addition: {
            index: addition.pigment.index,
            name: addition.pigment.name,
            left: addition.differences.flatMap(({ swatch, difference }) => {
              const wanted = mixing.swatches[swatch]?.wanted;
              return wanted ? [{ wanted: toHex(wanted), difference: round(difference) }] : [];
            }),
          },
        }
      : {}),
    reach: mixing.reach.map(round),
  };
}

function paintPart(
  palette: Palette,
  { paints }: PaletteMeasure,
  { amounts }: MixingMeasure,
  at: number,
): Part['paints'][number] {
  const measure = paints[at];
  const { name = '', index } = palette.paints[at] ?? {};
  const amount = amounts[at];
  return {
    name,
    ...(index === undefined ? {} : { index: measure?.pigment?.index ?? index }),
    ...(measure?.pigment ? { pigment: measure.pigment.name } : {}),
    basis: measure?.basis ?? 'unknown',
    strengthGuessed: measure?.strengthGuessed === true,
    ...(measure?.family ? { family: measure.family } : {}),
    ...(measure?.side ? { side: measure.side } : {}),
    ...(measure?.sideFrom ? { sideFrom: measure.sideFrom } : {}),
    ...(measure?.pigment ? { transparency: measure.pigment.transparency } : {}),
    ...(measure?.full ? { full: toHex(measure.full) } : {}),
    ...(measure?.tint ? { tint: toHex(measure.tint) } : {}),
    millilitres: round(amount?.millilitres ?? 0),
    ...(amount?.tubes === undefined ? {} : { tubes: round(amount.tubes) }),
  };
}

function mixturePart(
  nameOf: (paint: number) => string,
  { mixture, difference }: { readonly mixture?: Mixture; readonly difference?: number },
): { mixture?: MixtureDocument; difference?: number } {
  return {
    ...(mixture ? { mixture: partsOf(nameOf, mixture) } : {}),
    ...(difference === undefined ? {} : { difference: round(difference) }),
  };
}

function partsOf(nameOf: (paint: number) => string, { parts, colour, isEstimate }: Mixture): MixtureDocument {
  return {
    parts: parts.map(({ paint, parts: count }) => ({ paint: nameOf(paint), parts: count })),
    colour: toHex(colour),
    estimate: isEstimate,
  };
}

function glazePart(
  plan: Plan,
  nameOf: (paint: number) => string,
  { object, wanted, mixture, difference, seen, isEstimate }: GlazeMeasure,
): Part['glazes'][number] {
  return {
    object: plan.objects[object]?.name ?? '',
    wanted: toHex(wanted),
    ...(mixture ? { mixture: partsOf(nameOf, mixture), mediumParts: mixture.medium } : {}),
    ...(difference === undefined ? {} : { difference: round(difference) }),
    seen: toHex(seen),
    estimate: isEstimate,
  };
}
