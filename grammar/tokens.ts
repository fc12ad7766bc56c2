import { createToken, Lexer, type CustomPatternMatcherFunc, type IToken, type TokenType } from 'chevrotain';
import {
  canonicalWord,
  choiceLists,
  connectingWords,
  namingWords,
  otherUnits,
  type ChoiceList,
} from './words.js';
import { statements } from './statements.js';

/** A word of any script: a letter, then letters, marks, digits, `_`, and hyphens or apostrophes inside. */
export const wordPattern = /\p{L}(?:[\p{L}\p{M}\p{N}_\u200c\u200d]|[-'’](?=[\p{L}\p{N}]))*/uy;

const matchWord: CustomPatternMatcherFunc = (text, offset) => {
  wordPattern.lastIndex = offset;
  return wordPattern.exec(text);
};

/** True for a text that is one word, as names are. */
export function isWord(text: string): boolean {
  return matchWord(text, 0, [], {})?.[0] === text;
}

/** First characters for the lexer's own dispatch: ASCII letters, and everything beyond ASCII. */
const letters = 'abcdefghijklmnopqrstuvwxyz';
const wordStarts = [
  ...letters,
  ...letters.toUpperCase(),
  ...Array.from({ length: 0x10000 - 0x80 }, (_, index) => 0x80 + index),
];

export const Word = createToken({
  name: 'Word',
  label: 'name',
  pattern: matchWord,
  line_breaks: false,
  start_chars_hint: wordStarts,
});

/** `PR108:1`; a colour index without a colon is a plain word. */
export const ColourIndex = createToken({
  name: 'ColourIndex',
  label: 'colour index',
  pattern: /[A-Za-z]{1,3}\d+:\d+/,
  categories: [Word],
});

export const Space = createToken({ name: 'Space', pattern: /\s+/, group: Lexer.SKIPPED, line_breaks: true });

/** Kept apart from the tokens of the statement, see `LexedLine.comment`. */
const LineComment = createToken({
  name: 'LineComment',
  pattern: /\/\/[^\n\r]*/,
  group: 'comments',
});

export const SentenceToken = createToken({
  name: 'Sentence',
  label: 'sentence in quotes',
  pattern: /"[^"\\]*(?:\\[\s\S][^"\\]*)*"|“[^”\\]*(?:\\[\s\S][^”\\]*)*”/,
  line_breaks: true,
});

export const UnclosedSentence = createToken({
  name: 'UnclosedSentence',
  pattern: /["“][^\n\r]*/,
  categories: [SentenceToken],
});

/** Plain words to the end of the line; made by the reader of a line, never by the lexer. */
export const FreeWords = createToken({ name: 'FreeWords', label: 'words', pattern: Lexer.NA });

export const Hex = createToken({ name: 'Hex', label: 'hex colour', pattern: /#[0-9A-Za-z]*/ });
export const Css = createToken({
  name: 'Css',
  label: 'CSS colour',
  pattern: /(?:rgba?|hsla?|hwb|oklab|oklch|lab|lch|color)\([^()\n\r]*\)/i,
});
export const Munsell = createToken({
  name: 'Munsell',
  label: 'Munsell notation',
  pattern: /(?:\d+(?:\.\d+)?(?:RP|YR|GY|BG|PB|[RYGBP]) *\d+(?:\.\d+)?\/\d+(?:\.\d+)?|N *\d+(?:\.\d+)?\/\d*)/i,
});
export const DateToken = createToken({ name: 'Date', label: 'day', pattern: /\d{4}-\d{2}-\d{2}/ });
export const Fraction = createToken({
  name: 'Fraction',
  label: 'fraction',
  pattern: /\d+\/\d+|[½⅓⅔¼¾⅕⅛⅜⅝⅞]/,
});
export const NumberToken = createToken({ name: 'Number', label: 'number', pattern: /\d+(?:\.\d+)?|\.\d+/ });
export const Percent = createToken({ name: 'Percent', label: '%', pattern: /%/ });
export const DegreeSign = createToken({ name: 'DegreeSign', label: '°', pattern: /°/ });
export const Dash = createToken({ name: 'Dash', label: '-', pattern: /[-–−]/ });
export const Comma = createToken({ name: 'Comma', label: ',', pattern: /,/ });
export const OpenBracket = createToken({ name: 'OpenBracket', label: '(', pattern: /\(/ });
export const CloseBracket = createToken({ name: 'CloseBracket', label: ')', pattern: /\)/ });

const lengthUnits: ReadonlySet<string> = new Set(choiceLists.LengthUnit);

function endsNumber(token: IToken): boolean {
  const type = token.tokenType;
  if (type === NumberToken || type === Fraction || type === Percent) return true;
  return type === Word && lengthUnits.has(token.image.toLowerCase());
}

/**
 * `x` is the sign between two extents only after a number and before one (`80x50`, `12 cm x 9 cm`);
 * anywhere else it is a word like any other.
 *
 * @param last what stands before it
 */
export function isTimesAt(text: string, offset: number, last: IToken | undefined): boolean {
  const character = text.charAt(offset);
  if (last === undefined || !endsNumber(last)) return false;
  if (character === '×') return true;
  if (character !== 'x' && character !== 'X') return false;
  return /^[xX](?=\s*[-–−]?\s*[\d.½⅓⅔¼¾⅕⅛⅜⅝⅞])/u.test(text.slice(offset, offset + 60));
}

const matchTimes: CustomPatternMatcherFunc = (text, offset, matched) =>
  isTimesAt(text, offset, matched.at(-1)) ? [text.charAt(offset)] : null;

export const Times = createToken({
  name: 'Times',
  label: 'x',
  pattern: matchTimes,
  line_breaks: false,
  start_chars_hint: ['x', 'X', '×'],
});

function pascalCase(word: string): string {
  return word.replace(/(?:^|-)(\p{L})/gu, (_, letter: string) => letter.toUpperCase());
}

/** One token type for each closed list, the parent of its words. */
export const choice = Object.fromEntries(
  Object.keys(choiceLists).map((list) => [list, createToken({ name: `${list}Choice`, pattern: Lexer.NA })]),
) as Readonly<Record<ChoiceList, TokenType>>;

const listsOfWord = new Map<string, TokenType[]>();
for (const [list, words] of Object.entries(choiceLists)) {
  for (const word of words) {
    const lists = listsOfWord.get(word) ?? [];
    lists.push(choice[list as ChoiceList]);
    listsOfWord.set(word, lists);
  }
}

const keywordTypes = new Map<string, TokenType>();
for (const word of [
  ...connectingWords,
  ...namingWords,
  ...otherUnits,
  ...listsOfWord.keys(),
  ...statements.flatMap((statement) => statement.words),
]) {
  if (keywordTypes.has(word)) continue;
  const categories = [Word, ...(listsOfWord.get(word) ?? [])];
  keywordTypes.set(
    word,
    createToken({ name: `${pascalCase(word)}Keyword`, label: word, pattern: Lexer.NA, categories }),
  );
}

/** The token type of a keyword that a rule of the grammar reads. */
export function keyword(word: string): TokenType {
  const type = keywordTypes.get(word);
  if (type === undefined) throw new Error(`no keyword ${word}`);
  return type;
}

/** The keyword type of a word as written, if it is one. */
export function keywordType(text: string): TokenType | undefined {
  return keywordTypes.get(text) ?? keywordTypes.get(canonicalWord(text));
}

/** The words a token type of the grammar can stand for: one for a keyword, several for a closed list. */
export function wordsOf(type: TokenType): readonly string[] {
  for (const [list, words] of Object.entries(choiceLists)) {
    if (choice[list as ChoiceList] === type) return words;
  }
  return type.name.endsWith('Keyword') && type.LABEL !== undefined ? [type.LABEL] : [];
}

export function isKeyword(type: TokenType): boolean {
  return type.name.endsWith('Keyword');
}

/** In the order the lexer tries them. */
export const lexerTokens: readonly TokenType[] = [
  Space,
  LineComment,
  SentenceToken,
  UnclosedSentence,
  Hex,
  Css,
  Munsell,
  DateToken,
  Fraction,
  NumberToken,
  Percent,
  DegreeSign,
  Dash,
  Comma,
  OpenBracket,
  CloseBracket,
  Times,
  ColourIndex,
  Word,
];

export const vocabulary: readonly TokenType[] = [
  ...lexerTokens,
  FreeWords,
  ...Object.values(choice),
  ...keywordTypes.values(),
];
