import type { Plan } from '../../plan/plan.js';
import type { GlazeMeasure, Mixture, PaintAmount, Swatch } from './mixing.js';
import { GLAZE_FILM_MM } from './glaze-book.js';
import type { PaintedColour } from './painted-colours.js';

/** A usual brushed film, millimetres. */
const USUAL_FILM_MM = 0.15;

/** A wash that tones the ground, part of a usual film, unless a sitting says how thick. An estimate, from memory. */
const IMPRIMATURA_PART = 0.2;

const CUBIC_MM_PER_ML = 1000;

/** The canvas under a film of a millimetre, millilitres. */
function millilitresPerMillimetre({ canvas: { width, height, millimetresPerUnit } }: Plan): number {
  return (width * height * millimetresPerUnit ** 2) / CUBIC_MM_PER_ML;
}

/**
 * What a colour of the picture takes of paint, millilitres: the visible area x film, and the whole canvas for its tone.
 */
export function colourMillilitres(plan: Plan, shares: readonly number[], colour: PaintedColour): number {
  const film = plan.palette?.filmThickness?.value ?? USUAL_FILM_MM;
  const body = colour.objects.reduce((sum, object) => sum + (shares[object] ?? 0), 0);
  return millilitresPerMillimetre(plan) * (body * film + (colour.isGround ? imprimaturaFilm(plan, film) : 0));
}

function imprimaturaFilm({ sittings }: Plan, film: number): number {
  const sitting = sittings.find(({ layer }) => layer?.value === 'imprimatura');
  return sitting?.filmThickness?.value ?? IMPRIMATURA_PART * film;
}

/** What the whole picture takes of each paint of the palette, in its order: body colour, toned ground and glazes. */
export function paintAmounts(
  plan: Plan,
  shares: readonly number[],
  swatches: readonly Swatch[],
  glazes: readonly (GlazeMeasure | undefined)[],
): readonly PaintAmount[] {
  const millilitres = new Float64Array(plan.palette?.paints.length ?? 0);
  const add = ({ parts }: Mixture, all: number, medium = 0): void => {
    const sum = parts.reduce((total, each) => total + each.parts, medium);
    for (const each of parts) {
      millilitres[each.paint] = (millilitres[each.paint] ?? 0) + (all * each.parts) / sum;
    }
  };
  for (const { mixture, millilitres: all } of swatches) if (mixture) add(mixture, all);
  for (const glaze of glazes) {
    if (!glaze?.mixture) continue;
    const all = millilitresPerMillimetre(plan) * (shares[glaze.object] ?? 0) * GLAZE_FILM_MM;
    add(glaze.mixture, all, glaze.mixture.medium);
  }
  const tube = plan.palette?.tube?.value;
  return Array.from(millilitres, (amount) => ({
    millilitres: amount,
    ...(tube === undefined ? {} : { tubes: amount / tube }),
  }));
}
