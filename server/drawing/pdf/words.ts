import { someOf } from '../../findings/words/words.js';

const MOST_NAMED = 8;

/** What a painter is told of letters that no font has. */
export function missingLettersSentence(missing: readonly string[]): string {
  const box = missing.length === 1 ? 'a box stands for it' : 'a box stands for each of them';
  return `The fonts of the PDF lack ${someOf(missing, MOST_NAMED)}; ${box}.`;
}
