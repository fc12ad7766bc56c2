import { t } from '../../../grammar/index.js';
import { someOf } from '../../findings/words/words.js';

const MOST_NAMED = 8;

/** What a painter is told of letters that no font has. */
export function missingLettersSentence(missing: readonly string[]): string {
  const named = someOf(missing, MOST_NAMED);
  return missing.length === 1
    ? t('The fonts of the PDF lack {0}; a box stands for it.', named)
    : t('The fonts of the PDF lack {0}; a box stands for each of them.', named);
}
