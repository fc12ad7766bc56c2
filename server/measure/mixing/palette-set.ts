import { nameKey } from '../../../grammar/index.js';
import { computedColour, type Lab } from '../../plan/colour/model.js';
import type { Palette } from '../../plan/plan.js';
import type { Mixture } from './mixing.js';
import type { MixingPaint, PaintParts, PaintSet } from './mixtures.js';
import { type KnownPaint, knownPaint } from './paints.js';

/** The paints of a palette as far as mixtures can be worked out of them. */
export interface UsablePaints extends PaintSet {
  readonly paints: readonly UsablePaint[];
}

export interface UsablePaint extends MixingPaint {
  /** Index into the paints of the plan. */
  readonly paint: number;
  readonly isEstimate: boolean;
  readonly isOpaque: boolean;
}

/** More paints than anybody sets out; what is beyond plays no part in mixtures, which bounds the work. */
const MOST_COLOURED = 300;
const MOST_WHITES = 6;

/**
 * The paints of which something is known, each once, and by what they are rather than as they stand in the text, so
 * that a palette written in another order mixes the same. The mother colour goes into every mixture, unless nothing is
 * known of it.
 */
export function usablePaints(palette: Palette, known: readonly KnownPaint[]): UsablePaints {
  const byKey = new Map<string, UsablePaint>();
  known.forEach(({ mixing, basis, pigment }, paint) => {
    if (!mixing || byKey.has(mixing.key)) return;
    byKey.set(mixing.key, {
      ...mixing,
      paint,
      isEstimate: basis === 'estimated',
      // A black takes light away and sends none back, so a touch of it dulls a glaze without veiling it.
      isOpaque: pigment?.transparency === 'opaque' && pigment.family !== 'black',
    });
  });
  const all = [...byKey.values()].sort((one, other) => (one.key < other.key ? -1 : 1));
  const paints = [
    ...all.filter(({ isWhite }) => isWhite).slice(0, MOST_WHITES),
    ...all.filter(({ isWhite }) => !isWhite).slice(0, MOST_COLOURED),
  ];
  const motherName = palette.mother && nameKey(palette.mother.value);
  const mother = palette.paints.findIndex(({ key }) => key === motherName);
  const motherKey = known[mother]?.mixing?.key;
  const required = paints.findIndex(({ key }) => key === motherKey);
  return { paints, required: required < 0 ? [] : [required] };
}

/** What is known of each paint of a palette, in its order. */
export function knownPaints(palette: Palette): readonly KnownPaint[] {
  return palette.paints.map(knownPaint);
}

/** Parts of the usable paints as a mixture of the plan, those of most parts first. */
export function plannedMixture({ paints }: UsablePaints, found: readonly PaintParts[], lab: Lab): Mixture {
  const parts = found.flatMap(({ paint, parts: count }) => {
    const tube = paints[paint];
    return tube ? [{ paint: tube.paint, parts: count }] : [];
  });
  return {
    parts: parts.sort((one, other) => other.parts - one.parts || one.paint - other.paint),
    colour: computedColour(lab),
    isEstimate: found.some(({ paint }) => paints[paint]?.isEstimate === true),
  };
}
