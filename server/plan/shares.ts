import { type Node, type Percentage, t } from '../../grammar/index.js';
import { locate, type Problems } from './problems.js';

/** A thing may be made a hundred times larger, and no more. */
const LARGEST_FACTOR = 100;

/** A part of a whole, 0 to 1; one below nothing or above the whole is reported. */
export function partOfWhole(
  { percent, ...span }: Percentage,
  node: Pick<Node, 'line'>,
  problems: Problems,
): number | undefined {
  if (percent >= 0 && percent <= 100) return percent / 100;
  problems.error('number out of range', t('A share lies between 0 % and 100 %.'), locate(node, span));
  return undefined;
}

/** How many times as large something becomes, above 0; one that can't be drawn is reported. */
export function factorOf(
  { percent, ...span }: Percentage,
  node: Pick<Node, 'line'>,
  problems: Problems,
): number | undefined {
  const factor = percent / 100;
  if (factor > 0 && factor <= LARGEST_FACTOR) return factor;
  const message = t('A size changes to more than 0 % and at most {0} %.', LARGEST_FACTOR * 100);
  problems.error('number out of range', message, locate(node, span));
  return undefined;
}
