import { marked, said, t } from '../../../grammar/index.js';
import { percent } from '../../findings/words/words.js';
import type { BudgetMeasure } from '../../measure/measures.js';
import type { Colour } from '../../plan/colour/colour.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import { toHex } from '../../plan/colour/srgb.js';
import type { Allowance } from '../../plan/plan.js';
import type { Style } from '../style.js';

/** What is computed about one thing of the plan, as paragraphs for a hover or a completion. */
export type Paragraphs = readonly string[];

/** `#2f6f73`, 5BG 4.2/4.0 */
export function notations(colour: Colour, style: Style): string {
  return `${style.name(toHex(colour))}, ${style.text(toMunsell(colour).text)}`;
}

/** A target of a budget with its verdict. */
export function wantedAndMeasured({ target, tolerance, share, within }: BudgetMeasure): string {
  const verdict = within ? t('within the budget') : share > target ? t('too much') : t('too little');
  return t(
    '{0} wanted, within {1}; {2} measured, {3}',
    percent(target),
    percent(tolerance),
    percent(share),
    verdict,
  );
}

/** A rule that is set aside, with the reason, on one line. */
export function allowanceFigures({ rule, reason }: Allowance, style: Style): string {
  return woven(marked('{0} is set aside: {1}'), style, style.name(rule), style.text(reason));
}

/**
 * A kept sentence in the language of the reader, in whose places stands what is set already, as names and colours are.
 */
export function woven(english: string, style: Style, ...set: readonly string[]): string {
  return said(english)
    .split(/\{(\d)\}/u)
    .map((part, index) => (index % 2 === 1 ? (set[Number(part)] ?? '') : style.text(part)))
    .join('');
}

/** A sentence in which names stand between backticks. */
export function prose(text: string, style: Style): string {
  return text
    .split(/`([^`]*)`/u)
    .map((part, index) => (index % 2 === 1 ? style.name(part) : style.text(part)))
    .join('');
}
