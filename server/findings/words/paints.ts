import { marked, said, t } from '../../../grammar/index.js';
import type { MixturePart, PaintAmount } from '../../measure/mixing/mixing.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';

/**
 * How a difference of CIEDE2000 is seen, up to each figure. Heuristic: about 1 is the least that is seen side by side,
 * and from 5 on the mixture is taken for another colour.
 */
const SEEN = [
  { below: 1, words: marked('not to be seen') },
  { below: 2.5, words: marked('hardly to be seen') },
  { below: 5.05, words: marked('seen side by side') },
] as const;

/** `2.1 off, hardly to be seen` */
export function differenceInWords(difference: number): string {
  const told = plainNumber(difference, 1);
  if (told === '0') return t('as wanted');
  const seen = SEEN.find(({ below }) => difference < below)?.words ?? marked('another colour');
  return t('{0} off, {1}', told, said(seen));
}

/** `3 white : 1 ultra` */
export function partsInWords(parts: readonly MixturePart[], { palette }: Pick<Plan, 'palette'>): string {
  const named = parts.map(({ paint, parts: count }) => ({
    count,
    name: palette?.paints[paint]?.name ?? '',
  }));
  const [only] = named;
  if (only === undefined) return '';
  // The figure and its paint stay on one line.
  return named.length === 1
    ? t('{0} alone', only.name)
    : named.map(({ count, name }) => `${count}\u00A0${name}`).join(' : ');
}

/** `4.2 ml`, `37 ml`, `under 0.1 ml` */
export function millilitresInWords(millilitres: number): string {
  const told = plainNumber(millilitres, millilitres < 10 ? 1 : 0);
  return told === '0' && millilitres > 0 ? t('under 0.1 ml') : `${told} ml`;
}

/** `14 ml, 0.4 tubes`; the tubes only where the plan says what one holds. */
export function amountInWords({ millilitres, tubes }: PaintAmount): string {
  const volume = millilitresInWords(millilitres);
  if (tubes === undefined || millilitres <= 0) return volume;
  const told = plainNumber(tubes, 1);
  if (told === '0') return t('{0}, under 0.1 tubes', volume);
  return told === '1' ? t('{0}, 1 tube', volume) : t('{0}, {1} tubes', volume, told);
}
