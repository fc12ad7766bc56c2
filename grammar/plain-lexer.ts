import type { IToken, TokenType } from 'chevrotain';
import {
  APOSTROPHE,
  BACKSLASH,
  COLON,
  DASH,
  HASH,
  LOW_LINE,
  POINT,
  QUOTE,
  SLASH,
  SPACE,
  TAB,
} from './character-codes.js';
import type { LexedLine } from './lexer.js';
import type { Span } from './syntax.js';
import {
  CloseBracket,
  Comma,
  Dash,
  Hex,
  isTimesAt,
  NumberToken,
  OpenBracket,
  Percent,
  SentenceToken,
  Times,
  Word,
} from './tokens.js';

const signs: readonly (TokenType | undefined)[] = (() => {
  const byCode: (TokenType | undefined)[] = [];
  byCode['%'.charCodeAt(0)] = Percent;
  byCode['('.charCodeAt(0)] = OpenBracket;
  byCode[')'.charCodeAt(0)] = CloseBracket;
  byCode[','.charCodeAt(0)] = Comma;
  byCode[DASH] = Dash;
  return byCode;
})();

const ALL_READABLE: readonly Span[] = [];

/**
 * Takes a line apart as the patterns of `tokens.ts` do, where it has nothing but words and signs that their first
 * characters tell: most lines have nothing that only patterns tell. Its words are told from keywords later.
 *
 * @returns `undefined` where anything may be meant otherwise
 */
export function lexPlain(text: string): LexedLine | undefined {
  const tokens: IToken[] = [];
  const { length } = text;
  let at = 0;
  while (at < length) {
    const code = text.charCodeAt(at);
    if (code === SPACE || code === TAB) {
      at += 1;
      continue;
    }
    const start = at;
    let type: TokenType;
    if (isLetter(code)) {
      if ((code === 0x78 || code === 0x58) && isTimesAt(text, at, tokens.at(-1))) {
        type = Times;
        at += 1;
      } else {
        type = Word;
        at = wordEnd(text, at + 1);
        if (at < 0) return undefined;
      }
    } else if (isDigit(code) || code === POINT) {
      type = NumberToken;
      at = numberEnd(text, at);
      if (at < 0) return undefined;
    } else if (signs[code] !== undefined) {
      type = signs[code];
      at += 1;
    } else if (code === QUOTE) {
      type = SentenceToken;
      at = sentenceEnd(text, at + 1);
      if (at < 0) return undefined;
    } else if (code === HASH) {
      type = Hex;
      do at += 1;
      while (isLetter(text.charCodeAt(at)) || isDigit(text.charCodeAt(at)));
    } else if (code === SLASH && text.charCodeAt(at + 1) === SLASH && !isDigit(text.charCodeAt(at - 1))) {
      const comment = text.slice(at).trimEnd();
      return {
        tokens,
        comment: { start: at, end: at + comment.length, text: comment },
        unreadable: ALL_READABLE,
      };
    } else {
      return undefined;
    }
    tokens.push({
      image: text.slice(start, at),
      startOffset: start,
      tokenTypeIdx: type.tokenTypeIdx ?? 0,
      tokenType: type,
    });
  }
  return { tokens, unreadable: ALL_READABLE };
}

/** Where a word ends that goes on at `at`; -1 where it may be part of something else, or has other letters. */
export function wordEnd(text: string, at: number): number {
  for (;;) {
    const code = text.charCodeAt(at);
    if (isLetter(code) || isDigit(code) || code === LOW_LINE) {
      at += 1;
    } else if (code === DASH || code === APOSTROPHE) {
      const next = text.charCodeAt(at + 1);
      if (next > 0x7f) return -1;
      if (!isLetter(next) && !isDigit(next)) return at;
      at += 2;
    } else {
      // `rgb(`, `PR108:1`, and letters beyond ASCII.
      return code === 0x28 || code === COLON || code > 0x7f ? -1 : at;
    }
  }
}

/** Where a number ends that begins at `at`; -1 where there is none, or it may be part of a day. */
export function numberEnd(text: string, at: number): number {
  const start = at;
  while (isDigit(text.charCodeAt(at))) at += 1;
  if (at - start === 4 && text.charCodeAt(at) === DASH) return -1;
  if (text.charCodeAt(at) !== POINT || !isDigit(text.charCodeAt(at + 1))) return at > start ? at : -1;
  at += 1;
  while (isDigit(text.charCodeAt(at))) at += 1;
  return at;
}

/** Where a sentence ends that begins before `at`; -1 where it does not, or has signs that stand for others. */
export function sentenceEnd(text: string, at: number): number {
  for (; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === BACKSLASH) return -1;
    if (code === QUOTE) return at + 1;
  }
  return -1;
}

export function isLetter(code: number): boolean {
  return (code >= 0x61 && code <= 0x7a) || (code >= 0x41 && code <= 0x5a);
}

export function isDigit(code: number): boolean {
  return code >= 0x30 && code <= 0x39;
}
