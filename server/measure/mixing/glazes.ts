import { labDifference } from '../../plan/colour/difference.js';
import { type Colour, computedColour } from '../../plan/colour/model.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { fullestGlaze, type SeenGlaze, throughGlaze } from './glaze-book.js';
import type { GlazeMeasure, Swatch } from './mixing.js';
import { mixedSpectrum } from './mixtures.js';
import type { KnownPaint } from './paints.js';
import { plannedMixture, type UsablePaints } from './palette-set.js';
import { labOfSpectrum, type Spectrum } from './spectra/bands.js';
import { smoothSpectrum } from './spectra/smooth.js';

/** What glazes need to know of the palette and of what lies under them. */
export interface GlazeSurroundings {
  readonly known: readonly KnownPaint[];
  readonly set: UsablePaints;
  readonly swatches: readonly Swatch[];
  /** See `MixingMeasure.ofObjects`. */
  readonly ofObjects: readonly (number | undefined)[];
  /** One for each glaze that is given by a colour, in the order of the objects. */
  readonly found: readonly (SeenGlaze | undefined)[];
}

/** A layer as it is seen, and whether that is estimated. */
interface Layer {
  readonly spectrum: Spectrum;
  readonly isEstimate: boolean;
}

/**
 * The glazes of a plan, in the order of its objects, seen over the mixture of the body colour that has dried below. A
 * glaze given by a paint is that paint thinned until its colour is fullest; one given by a colour is the mixture that
 * looks like it over white. Where the palette can't give it, what is seen is estimated from smooth spectra of both
 * colours, the one multiplied by the other.
 */
export function measureGlazes(
  plan: Plan,
  surroundings: GlazeSurroundings,
): readonly (GlazeMeasure | undefined)[] {
  let next = 0;
  return plan.objects.map((object) => {
    const { glaze } = object;
    if (!glaze) return undefined;
    const found = glaze.paint === undefined ? surroundings.found[next++] : ofPaint(surroundings, glaze.paint);
    const below = bodyOf(plan, object, surroundings);
    return found
      ? mixedGlaze(object.index, glaze, found, below, surroundings)
      : guessedGlaze(object.index, glaze.colour, below);
  });
}

function ofPaint({ known, set }: GlazeSurroundings, paint: number): SeenGlaze | undefined {
  const key = known[paint]?.mixing?.key;
  const own = set.paints.findIndex((each) => each.key === key);
  return own < 0 ? undefined : fullestGlaze(set.paints, own);
}

/** The dry body colour: its mixture, or a guess at the spectrum of its colour, or of the ground's. */
function bodyOf(plan: Plan, object: PlanObject, { set, swatches, ofObjects }: GlazeSurroundings): Layer {
  const mixture = swatches[ofObjects[object.index] ?? -1]?.mixture;
  if (!mixture) {
    const { lab } = object.painted ?? plan.canvas.ground.colour;
    return { spectrum: smoothSpectrum(lab), isEstimate: true };
  }
  const parts = mixture.parts.map(({ paint, parts: count }) => ({
    paint: set.paints.findIndex((each) => each.paint === paint),
    parts: count,
  }));
  return { spectrum: mixedSpectrum(set.paints, parts), isEstimate: mixture.isEstimate };
}

function mixedGlaze(
  object: number,
  glaze: NonNullable<PlanObject['glaze']>,
  found: SeenGlaze,
  below: Layer,
  { set }: GlazeSurroundings,
): GlazeMeasure {
  const mixture = plannedMixture(set, found.parts, found.overWhite);
  const wanted = glaze.paint === undefined ? glaze.colour : mixture.colour;
  return {
    object,
    wanted,
    mixture: { ...mixture, medium: found.medium },
    difference: labDifference(wanted.lab, found.overWhite),
    seen: computedColour(labOfSpectrum(throughGlaze(set.paints, found, below.spectrum))),
    isEstimate: mixture.isEstimate || below.isEstimate,
  };
}

function guessedGlaze(object: number, wanted: Colour, below: Layer): GlazeMeasure {
  const through = smoothSpectrum(wanted.lab);
  const seen = below.spectrum.map((part, band) => part * (through[band] ?? 1));
  return { object, wanted, seen: computedColour(labOfSpectrum(seen)), isEstimate: true };
}
