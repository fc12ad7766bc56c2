import { t } from '../../../grammar/localised.js';
import type { Handling, Spot } from '../../../server/drawing/scene.js';

export type Unit = Handling['unit'];

/** How far an arrow key moves something, canvas units: a millimetre or a centimetre, a sixteenth or half an inch. */
export const steps: Readonly<Record<Unit, { readonly small: number; readonly large: number }>> = {
  mm: { small: 1, large: 10 },
  cm: { small: 0.1, large: 1 },
  m: { small: 0.001, large: 0.01 },
  in: { small: 1 / 16, large: 1 / 2 },
};

/** A length as a ruler has it, so that what is written is no finer than a hand is. */
export function toStep(length: number, step: number | undefined): number {
  return step === undefined ? length : Math.round(length / step) * step;
}

const decimals: Readonly<Record<Exclude<Unit, 'in'>, number>> = { mm: 0, cm: 1, m: 3 };

/** As it is read off a ruler: to a millimetre, or to a sixteenth of an inch as a fraction. */
export function lengthInWords(length: number, unit: Unit): string {
  return `${unit === 'in' ? sixteenths(length) : String(Number(length.toFixed(decimals[unit])))} ${unit}`;
}

function sixteenths(length: number): string {
  const all = Math.round(Math.abs(length) * 16);
  const [whole, rest] = [Math.floor(all / 16), all % 16];
  if (rest === 0) return String(whole);
  const shared = [8, 4, 2].find((divisor) => rest % divisor === 0) ?? 1;
  const fraction = `${rest / shared}/${16 / shared}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

/** How far something has come: `3.5 cm right, 1 cm up`. */
export function wayInWords({ x, y }: Spot, unit: Unit): string {
  const across = lengthTold(x, unit);
  const down = lengthTold(y, unit);
  const way = [
    ...(across === undefined ? [] : [x < 0 ? t('{0} left', across) : t('{0} right', across)]),
    ...(down === undefined ? [] : [y < 0 ? t('{0} up', down) : t('{0} down', down)]),
  ];
  return way.length === 0 ? t('where it was') : way.join(', ');
}

/** Nothing for what is too short to be told. */
function lengthTold(length: number, unit: Unit): string | undefined {
  const words = lengthInWords(Math.abs(length), unit);
  return words === lengthInWords(0, unit) ? undefined : words;
}

/** Width and height of a box between two corners: `6 × 4.5 cm`. */
export function sizeInWords(from: Spot, to: Spot, unit: Unit): string {
  const [width, height] = [Math.abs(to.x - from.x), Math.abs(to.y - from.y)];
  return `${lengthInWords(width, unit).replace(` ${unit}`, '')} × ${lengthInWords(height, unit)}`;
}

/** Where something lies in the picture: `12 cm from the left, 7.5 cm from the top`. */
export function placeInWords({ x, y }: Spot, unit: Unit): string {
  return t('{0} from the left, {1} from the top', lengthInWords(x, unit), lengthInWords(y, unit));
}
