import { t } from '../../../grammar/index.js';
import type { BudgetMeasure } from '../../measure/measures.js';
import { inWords } from '../../plan/problems.js';
import { exceeds } from '../limits.js';
import { percent } from '../words/words.js';

/**
 * Whether a change of the picture does no harm to a share: one within its tolerance stays there, and one that is out
 * comes no farther from its target, nor out on the other side of it.
 *
 * @param after the share less its target, once it is changed
 */
export function doesNoHarm({ difference, tolerance, within }: BudgetMeasure, after: number): boolean {
  if (!exceeds(Math.abs(after), tolerance)) return true;
  return !within && after * difference > 0 && !exceeds(Math.abs(after), Math.abs(difference));
}

/**
 * What area that an entry has too much of is wanted for: `the darks (8 %) and the lights (5 %)`; nothing for no entry.
 */
export function takers(budget: readonly BudgetMeasure[], wordsOf: (entry: BudgetMeasure) => string): string {
  const short = budget.filter(({ within, difference }) => !within && difference < 0);
  if (short.length === 1) return short.map(wordsOf).join('');
  return inWords(short.map((entry) => `${wordsOf(entry)} (${percent(-entry.difference)})`));
}

/** Where area that an entry lacks can come from: `the darks (8 % too much)`; nothing for nowhere. */
export function givers(budget: readonly BudgetMeasure[], wordsOf: (entry: BudgetMeasure) => string): string {
  const over = budget
    .filter(({ within, difference }) => !within && difference > 0)
    .map((entry) => t('{0} ({1} too much)', wordsOf(entry), percent(entry.difference)));
  return inWords(over);
}
