import { millimetresPer } from '../../plan/lengths.js';
import type { Canvas } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';

/** What a painter measures with at the easel. */
export const rulers = ['cm', 'mm', 'in'] as const;
export type Ruler = (typeof rulers)[number];

const MILLIMETRES_PER_INCH = millimetresPer('in');
/** The finest marks of an inch rule. */
const SIXTEENTHS = 16;

/** The ruler for a canvas: inches for one in inches, else millimetres or centimetres; no rule is marked in metres. */
export function rulerFor({ unit }: Pick<Canvas, 'unit'>): Ruler {
  return unit === 'm' ? 'cm' : unit;
}

/** A length to the nearest mark of a ruler, in millimetres: whole millimetres, or sixteenths of an inch. */
export function onRuler(millimetres: number, ruler: Ruler): number {
  const mark = markOf(ruler);
  return Math.round(millimetres / mark) * mark;
}

/** Between two marks of a ruler, millimetres. */
export function markOf(ruler: Ruler): number {
  return ruler === 'in' ? MILLIMETRES_PER_INCH / SIXTEENTHS : 1;
}

/** A length as it is read off a ruler: `12.3 cm`, `123 mm`, `5 3/8 in`. */
export function ruled(millimetres: number, ruler: Ruler): string {
  return `${figureOn(millimetres, ruler)} ${ruler}`;
}

/** The same without its unit. */
export function figureOn(millimetres: number, ruler: Ruler): string {
  switch (ruler) {
    case 'mm':
      return plainNumber(millimetres, 0);
    case 'cm':
      return plainNumber(Math.round(millimetres) / 10, 1);
    case 'in':
      return inSixteenths(millimetres / MILLIMETRES_PER_INCH);
  }
}

/** Inches to the nearest sixteenth, the fraction reduced: `5 3/8`, `3/4`, `12`. */
export function inSixteenths(inches: number): string {
  const all = Math.round(Math.abs(inches) * SIXTEENTHS);
  const sign = inches < 0 && all > 0 ? '-' : '';
  const whole = Math.floor(all / SIXTEENTHS);
  let part = all % SIXTEENTHS;
  if (part === 0) return `${sign}${whole}`;
  let of = SIXTEENTHS;
  while (part % 2 === 0) {
    part /= 2;
    of /= 2;
  }
  return `${sign}${whole === 0 ? '' : `${whole} `}${part}/${of}`;
}

/** What rounding to the marks of a ruler moves the worst of some lengths by, millimetres. */
export function worstRounding(millimetres: readonly number[], ruler: Ruler): number {
  return millimetres.reduce((worst, each) => Math.max(worst, Math.abs(each - onRuler(each, ruler))), 0);
}
