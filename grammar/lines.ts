import type { IToken } from 'chevrotain';
import { OPEN_BRACKET, SPACE, TAB } from './character-codes.js';
import { lexLine, spanOf, type LexedLine } from './lexer.js';
import { readCommonLine } from './common-lines.js';
import { readLine, type LineReading } from './line-parser.js';
import { isLetter, wordEnd } from './plain-lexer.js';
import type { StatementEntry } from './statements.js';
import type { Span, Word } from './syntax.js';
import { isKeyword, Word as WordToken } from './tokens.js';
import { canonicalWord } from './words.js';
import { indentationOf, type Level } from './indentation.js';

/** The lines of a text, without a byte order mark and without their endings. */
export function splitLines(text: string): readonly string[] {
  const own = text.startsWith('\ufeff') ? text.slice(1) : text;
  return own.split(own.includes('\r') ? /\r\n?|\n/ : '\n');
}

/** What begins a line: a word, which may be a keyword, or some other sign. */
export interface Opening {
  readonly word: Word;
  readonly isWord: boolean;
  /** The keyword it stands for, or the word in lower case. */
  readonly canonical: string;
}

/** A line in its place: what the printer and the editor need to know besides the tree. */
export interface PlacedLine {
  readonly source: SourceLine;
  /** Unset for blank lines and comments. */
  readonly level: Level | undefined;
  readonly entry: StatementEntry | undefined;
  readonly reading: LineReading | undefined;
}

/**
 * One line and all that can be known from its text alone. Kept from one parse to the next, so what is read
 * once is not read again while the text of the line stays.
 */
export class SourceLine {
  readonly indentation: string;
  readonly opening: Opening | undefined;
  readonly comment: (Span & { readonly text: string }) | undefined;
  /** The first characters that are no part of the language, where nothing opens the line. */
  readonly unreadable: Span | undefined;
  /** Nearly every line is only ever read as one statement, and stands in one place. */
  private placed: PlacedLine | undefined;
  /** Held only until the first reading: tokens are many, and cheap to make again. */
  private lexed: LexedLine | undefined;

  constructor(readonly text: string) {
    const opening = text.includes('//') ? undefined : plainOpening(text);
    if (opening) {
      this.indentation = text.slice(0, opening.word.start);
      this.opening = opening;
      return;
    }
    this.lexed = lexLine(text);
    this.indentation = indentationOf(text);
    this.opening = openingOf(this.lexed.tokens[0]);
    this.comment = this.lexed.comment;
    this.unreadable = this.lexed.unreadable[0];
    if (this.opening === undefined) this.lexed = undefined;
  }

  /** Neither a statement nor an attempt at one: blank, or a comment alone. */
  get isQuiet(): boolean {
    return this.opening === undefined && this.unreadable === undefined;
  }

  /** The line read as the statement of `entry`, if it is one, at a level, if it says anything. */
  placedAt(level: Level | undefined, entry: StatementEntry | undefined): PlacedLine {
    const { placed } = this;
    if (placed !== undefined && placed.level === level && placed.entry === entry) return placed;
    const reading = entry && this.readAs(entry);
    return (this.placed = { source: this, level, entry, reading });
  }

  /** The line read as the statement of `entry`. */
  readAs(entry: StatementEntry): LineReading {
    const { placed } = this;
    if (placed?.reading !== undefined && placed.entry?.kind === entry.kind) return placed.reading;
    const reading = this.readAsCommon(entry) ?? readLine(entry, this.text, this.lexed ?? lexLine(this.text));
    this.lexed = undefined;
    return reading;
  }

  private readAsCommon(entry: StatementEntry): LineReading | undefined {
    const { text, indentation, opening } = this;
    if (opening?.word.start !== indentation.length) return undefined;
    return readCommonLine(entry, text, opening.word);
  }
}

/** What begins a line without a comment, told from its first characters, where these can mean nothing else. */
function plainOpening(text: string): Opening | undefined {
  let start = 0;
  let code = text.charCodeAt(0);
  while (code === SPACE || code === TAB) code = text.charCodeAt(++start);
  if (code === OPEN_BRACKET) {
    return { word: { text: '(', start, end: start + 1 }, isWord: false, canonical: '' };
  }
  if (!isLetter(code)) return undefined;
  const end = wordEnd(text, start + 1);
  if (end < 0) return undefined;
  const word = text.slice(start, end);
  return { word: { text: word, start, end }, isWord: true, canonical: canonicalWord(word) };
}

function openingOf(token: IToken | undefined): Opening | undefined {
  if (token === undefined) return undefined;
  const word = { text: token.image, ...spanOf(token) };
  const isWord = isKeyword(token.tokenType) || token.tokenType === WordToken;
  return { word, isWord, canonical: isWord ? canonicalWord(token.image) : '' };
}
