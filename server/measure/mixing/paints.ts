import { parseColour } from '../../plan/colour/colour.js';
import { memoise } from '../../plan/colour/memo.js';
import type { Colour, Lab } from '../../plan/colour/model.js';
import { type Pigment, pigmentOf } from '../../plan/materials/pigments.js';
import type { Paint } from '../../plan/plan.js';
import { estimateAbsorbing, estimateWhite, type PaintedTint } from './estimate.js';
import { familyOf, seemsWhite } from './family.js';
import type { Absorbing } from './kubelka-munk.js';
import type { MixingPaint } from './mixtures.js';
import type { PaintMeasure } from './mixing.js';
import { MEASURED_PAINTS } from './spectra/measured.js';

/** What mixtures know of a paint of the plan. */
export interface KnownPaint {
  readonly basis: PaintMeasure['basis'];
  readonly pigment?: Pigment;
  /** Missing when nothing is known that mixtures can be worked out from. */
  readonly mixing?: MixingPaint;
}

const measured = new Map<string, MixingPaint>(
  MEASURED_PAINTS.map(({ index, k, s }) => [
    index.toUpperCase(),
    {
      key: index,
      absorbing: { k: Float64Array.from(k), s: Float64Array.from(s) },
      isWhite: index.startsWith('PW'),
    },
  ]),
);

/** The measured paint of a Colour Index name, however its letters are cased. */
export function measuredPaint(index: string): MixingPaint | undefined {
  return measured.get(index.toUpperCase());
}

/** Titanium white, in whose scattering all others are measured. */
export const TITANIUM_WHITE: Absorbing = measured.get('PW6')?.absorbing ?? estimateWhite([97, 0, 0]);

/** The tint whose colour is remembered of a pigment, and told of a paint: one part of paint in ten of white. */
export const TOLD_TINT = { paint: 1, white: 10 } as const;

const remember = memoise<MixingPaint>(256);

/**
 * What is known of a paint: a full tone and a tint that the plan gives go before all else, since they are of the
 * painter's own tube; then the measured spectrum of its pigment; then the tones of its pigment that are remembered, or
 * the full tone of the plan in their place; and a full tone alone, of which the strength in mixtures is a guess. A
 * white needs no tint: it is the white of its own tints.
 */
export function knownPaint(paint: Paint): KnownPaint {
  const pigment = paint.index === undefined ? undefined : pigmentOf(paint.index, paint.name);
  const spectrum = paint.index === undefined ? undefined : measuredPaint(paint.index);
  const about = pigment ? { pigment } : {};
  if (spectrum && !(paint.full && paint.tint)) return { basis: 'measured', mixing: spectrum, ...about };
  const mixing = estimated(paint, pigment);
  return mixing ? { basis: 'estimated', mixing, ...about } : { basis: 'unknown', ...about };
}

/** Whether a paint is known by a full tone alone, so that nothing says how strong it is in a mixture. */
export function lacksTint(paint: Paint, { basis, mixing, pigment }: KnownPaint): boolean {
  return (
    basis === 'estimated' &&
    mixing?.isWhite === false &&
    paint.tint === undefined &&
    pigment?.remembered?.tint === undefined
  );
}

function estimated(paint: Paint, pigment: Pigment | undefined): MixingPaint | undefined {
  const full = (paint.full ?? toned(pigment?.remembered?.full))?.lab;
  if (!full) return undefined;
  const isWhite = isWhitePaint(paint, pigment, full);
  const remembered = toned(pigment?.remembered?.tint)?.lab;
  const tint: PaintedTint | undefined = paint.tint
    ? { lab: paint.tint.colour.lab, paint: paint.tint.paint, white: paint.tint.white }
    : remembered && { lab: remembered, ...TOLD_TINT };
  const key = JSON.stringify(isWhite ? ['white', full] : [full, tint]);
  return remember(key, () => ({
    key,
    isWhite,
    absorbing: isWhite ? estimateWhite(full) : estimateAbsorbing(full, tint, TITANIUM_WHITE),
  }));
}

function isWhitePaint({ index }: Paint, pigment: Pigment | undefined, full: Lab): boolean {
  const family = pigment?.family ?? (index === undefined ? undefined : familyOf(index));
  return family === undefined ? seemsWhite(full) : family === 'white';
}

function toned(hex: string | undefined): Colour | undefined {
  const reading = hex === undefined ? undefined : parseColour(hex);
  return reading?.ok ? reading.colour : undefined;
}
