import { computedColour, type Lab } from '../../plan/colour/model.js';
import type { Paint } from '../../plan/plan.js';
import { familyByLooks, familyOf, sideByHue } from './family.js';
import { mix, opaqueSpectrum } from './kubelka-munk.js';
import type { PaintMeasure, PrimaryMeasure } from './mixing.js';
import { type KnownPaint, lacksTint, TITANIUM_WHITE, TOLD_TINT } from './paints.js';
import { labOfSpectrum } from './spectra/bands.js';

const PRIMARIES = ['yellow', 'red', 'blue'] as const;
type Primary = PrimaryMeasure['primary'];

const SIDES = ['warm', 'cool'] as const;

/** Iron oxides and other earths: they darken and dull what a yellow or red would make bright. From memory. */
export const EARTHS: ReadonlySet<string> = new Set(['PY42', 'PY43', 'PY119', 'PR101', 'PR102', 'PR233']);

/**
 * What is told of a paint: its tones, family and side. What the plan states goes before what is known of its pigment.
 */
export function measurePaint(paint: Paint, known: KnownPaint): PaintMeasure {
  const { basis, pigment, mixing } = known;
  const tones = mixing && {
    full: labOfSpectrum(opaqueSpectrum(mixing.absorbing)),
    tint: labOfSpectrum(
      opaqueSpectrum(
        mix([
          { paint: mixing.absorbing, parts: TOLD_TINT.paint },
          { paint: TITANIUM_WHITE, parts: TOLD_TINT.white },
        ]),
      ),
    ),
  };
  const family =
    pigment?.family ??
    (paint.index === undefined ? undefined : familyOf(paint.index)) ??
    (tones && familyByLooks(tones.full, tones.tint));
  const full = paint.full ?? (tones && computedColour(tones.full));
  return {
    basis,
    ...(lacksTint(paint, known) ? { strengthGuessed: true } : {}),
    ...(pigment ? { pigment } : {}),
    ...(family ? { family } : {}),
    ...sideOf(paint, pigment?.side, family, tones),
    ...(full ? { full } : {}),
    ...(tones ? { tint: computedColour(tones.tint) } : {}),
  };
}

function sideOf(
  paint: Paint,
  pigmentSide: 'warm' | 'cool' | undefined,
  family: PaintMeasure['family'],
  tones: { readonly full: Lab; readonly tint: Lab } | undefined,
): Pick<PaintMeasure, 'side' | 'sideFrom'> {
  if (paint.temperature) return { side: paint.temperature, sideFrom: 'plan' };
  if (!isPrimary(family)) return {};
  if (pigmentSide) return { side: pigmentSide, sideFrom: 'pigment' };
  return tones ? { side: sideByHue(family, tones.full, tones.tint), sideFrom: 'hue' } : {};
}

function isPrimary(family: PaintMeasure['family']): family is Primary {
  return PRIMARIES.some((primary) => primary === family);
}

/**
 * The split primaries of a palette: which paints give the warm and the cool side of yellow, red and blue. An earth
 * counts where the plan itself says to which side it leans, and where the palette has no brighter paint of its primary;
 * browns never do.
 */
export function measurePrimaries(paints: readonly PaintMeasure[]): readonly PrimaryMeasure[] {
  return PRIMARIES.map((primary) => {
    const own = paints.flatMap(({ family }, index) => (family === primary ? [index] : []));
    const bright = own.filter(
      (index) => paints[index]?.sideFrom === 'plan' || !EARTHS.has(paints[index]?.pigment?.index ?? ''),
    );
    const counted = bright.length > 0 ? bright : own;
    const [warm, cool] = SIDES.map((side) => counted.filter((index) => paints[index]?.side === side));
    return {
      primary,
      warm: warm ?? [],
      cool: cool ?? [],
      undecided: counted.filter((index) => paints[index]?.side === undefined),
      lacks: SIDES.filter((side) => counted.every((index) => paints[index]?.side !== side)),
    };
  });
}
