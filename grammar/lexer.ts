import { Lexer, type IToken } from 'chevrotain';
import { lexPlain } from './plain-lexer.js';
import { keywordType, lexerTokens, Word } from './tokens.js';
import type { Span } from './syntax.js';

/** The words and signs of one line. Offsets count from the start of the line, indentation included. */
export interface LexedLine {
  readonly tokens: readonly IToken[];
  readonly comment?: Span & { readonly text: string };
  /** Characters that belong to no word or sign. */
  readonly unreadable: readonly Span[];
}

const lexer = new Lexer([...lexerTokens], {
  positionTracking: 'onlyOffset',
  safeMode: false,
  ensureOptimizations: true,
  recoveryEnabled: true,
});

/** Takes one line, without its line ending, apart. Any text has an answer. */
export function lexLine(text: string): LexedLine {
  const plain = lexPlain(text);
  if (plain === undefined) return lexByPatterns(text);
  tellKeywords(plain.tokens);
  return plain;
}

/** The same by the patterns of all words and signs, whatever the line has. */
export function lexByPatterns(text: string): LexedLine {
  const { tokens, groups, errors } = lexer.tokenize(text);
  tellKeywords(tokens);
  const comment = groups['comments']?.[0];
  const unreadable = errors.map(({ offset, length }) => ({ start: offset, end: offset + length }));
  if (comment === undefined) return { tokens, unreadable };
  const image = comment.image.trimEnd();
  const start = comment.startOffset;
  return { tokens, comment: { start, end: start + image.length, text: image }, unreadable };
}

function tellKeywords(tokens: readonly IToken[]): void {
  for (const token of tokens) {
    if (token.tokenType !== Word) continue;
    const type = keywordType(token.image);
    if (type === undefined) continue;
    token.tokenType = type;
    token.tokenTypeIdx = type.tokenTypeIdx ?? token.tokenTypeIdx;
  }
}

export function endOf(token: IToken): number {
  return token.startOffset + token.image.length;
}

export function spanOf(token: IToken): Span {
  return { start: token.startOffset, end: endOf(token) };
}
