import type { InsertReplaceEdit, TextEdit } from 'vscode-languageserver-types';
import { canonicalWord } from '../../grammar/index.js';
import type { Abilities } from './abilities.js';
import type { Caret, CaretToken } from './caret.js';
import { rangeOf } from './text.js';

export interface Offer {
  /** The words that the offer is made of; what is written may hold more, for a snippet. */
  readonly label: string;
  readonly newText: string;
  /** The first word that the offer takes the place of. */
  readonly first: CaretToken;
}

/**
 * What accepting an offer does: it takes the place of what is written before the caret or, as the painter has it set in
 * the editor, of the whole word that the caret is in and of the words of the offer that follow there already.
 */
export function offeredEdit(
  { label, newText, first }: Offer,
  { line, column, after, inSentence, tokens }: Caret,
  { insertReplaceEdits }: Abilities,
): TextEdit | InsertReplaceEdit {
  const insert = rangeOf({ line, start: first.start, end: column });
  const wordsBefore = tokens.filter(({ start }) => start >= first.start).length;
  const length = inSentence
    ? (/^[^"”]*(?=["”])/u.exec(after)?.[0].length ?? 0)
    : wordLength(after, label.split(' ').slice(wordsBefore + 1));
  if (length === 0 || !insertReplaceEdits) return { range: insert, newText };
  return { newText, insert, replace: rangeOf({ line, start: first.start, end: column + length }) };
}

/** How much of a text belongs to the word that goes on in it, and to those that are to follow that one. */
function wordLength(after: string, following: readonly string[]): number {
  let length = /^(?:(?!\/\/)[\p{L}\p{M}\p{N}_:'’./%-])*/u.exec(after)?.[0].length ?? 0;
  for (const word of following) {
    const [written = '', next = ''] = /^\s+(\p{L}[\p{L}\p{M}\p{N}'’-]*)/u.exec(after.slice(length)) ?? [];
    if (canonicalWord(next) !== word) break;
    length += written.length;
  }
  return length;
}
