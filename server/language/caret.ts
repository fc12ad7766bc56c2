import type { Position } from 'vscode-languageserver-types';
import {
  canonicalWord,
  nearestWord,
  opensBlock,
  statements,
  statementsOpenedBy,
  type Block,
} from '../../grammar/index.js';
import { indentOf } from '../findings/text-changes.js';
import { nodeAt } from './places.js';
import type { Snapshot } from './snapshot.js';

/** What stands before and behind the caret on its line, and what the line belongs to. */
export interface Caret {
  readonly line: number;
  readonly column: number;
  readonly block: Block;
  /** Whole words and signs before the caret, without the one that is being typed. */
  readonly tokens: readonly CaretToken[];
  /** The word that is being typed, possibly empty; in a sentence, all from its quote to the caret. */
  readonly typed: CaretToken;
  readonly inSentence: boolean;
  /** The rest of the line, the end of the word that is being typed first. */
  readonly after: string;
}

export interface CaretToken {
  readonly start: number;
  /** As written. */
  readonly text: string;
  /** As a word of the language: lower case, in its spelling; sentences keep their quotes. */
  readonly word: string;
}

/**
 * Reads the line up to the caret. `undefined` where nothing is expected: within a comment, and right behind a sign
 * or the end of a sentence, where offers would be taken by the key that was to end the line.
 */
export function caretAt(snapshot: Snapshot, { line, character }: Position): Caret | undefined {
  const written = snapshot.lines[line] ?? '';
  const before = written.slice(0, character);
  const tokens = [...before.matchAll(tokenPattern)].map((match) => ({
    start: match.index,
    text: match[0],
    word: /^["“]/u.test(match[0]) ? match[0] : canonicalWord(match[0]),
  }));
  const last = tokens.at(-1);
  if (last?.text.startsWith('//')) return undefined;
  const inSentence = last !== undefined && /^(?:"(?:[^"\\]|\\.)*|“[^”]*)$/u.test(last.text);
  const nothing = { start: character, text: '', word: '' };
  const beingTyped =
    last !== undefined && (inSentence || (endsAt(last, character) && wordPattern.test(last.text)));
  if (last !== undefined && endsAt(last, character) && !beingTyped) return undefined;
  return {
    line,
    column: character,
    block: blockAt(snapshot, line),
    tokens: beingTyped ? tokens.slice(0, -1) : tokens,
    typed: !beingTyped ? nothing : inSentence ? afterQuote(last) : last,
    inSentence,
    after: written.slice(character),
  };
}

/** Comments, sentences (closed or not), words, numbers with what belongs to them, single signs. */
const tokenPattern = /\/\/.*|"(?:[^"\\]|\\.)*"?|“[^”]*”?|#\w*|\p{L}[\p{L}\p{M}\p{N}_:'’-]*|\d[\d./-]*%?|\S/gu;
const wordPattern = /^(?:[\p{L}#]|\d+$)/u;

function endsAt({ start, text }: CaretToken, column: number): boolean {
  return start + text.length === column;
}

function afterQuote({ start, text }: CaretToken): CaretToken {
  return { start: start + 1, text: text.slice(1), word: text.slice(1) };
}

/** The block that a line belongs to by its indentation, whether or not it says anything yet. */
function blockAt(snapshot: Snapshot, line: number): Block {
  let indent = widthOf(snapshot.lines[line] ?? '');
  for (let above = line - 1; above >= 0 && indent > 0; above--) {
    const text = snapshot.lines[above] ?? '';
    if (/^\s*(?:\/\/|$)/u.test(text) || widthOf(text) >= indent) continue;
    const kind = blockOpenedBy(snapshot, above);
    if (kind !== undefined) return kind;
    // Nothing can stand under that line, so this one belongs where that one does.
    indent = widthOf(text);
  }
  return 'plan';
}

function blockOpenedBy(snapshot: Snapshot, line: number): Block | undefined {
  const kind = nodeAt(snapshot.tree, line)?.statement.kind;
  if (kind !== undefined) return opensBlock(kind) ? kind : undefined;
  // A line that could not be read still shows by its first word what is meant to stand under it.
  const [written = ''] = (snapshot.lines[line] ?? '').trim().split(/\s/u);
  const word = canonicalWord(written);
  return [word, nearestWord(word, openingWords) ?? '']
    .flatMap((candidate) => statementsOpenedBy(candidate))
    .map((entry) => entry.kind)
    .find((candidate) => opensBlock(candidate));
}

const openingWords = statements
  .filter(({ kind }) => opensBlock(kind))
  .flatMap(({ words }) => words.slice(0, 1));

/** A tab counts to the next multiple of four, which is near enough to tell deeper from not. */
function widthOf(line: string): number {
  let width = 0;
  for (const sign of indentOf(line)) width = sign === '\t' ? width - (width % 4) + 4 : width + 1;
  return width;
}
