import { marked, said, t } from './localised.js';
import {
  EOF,
  MismatchedTokenException,
  NotAllInputParsedException,
  type IParserErrorMessageProvider,
  type IRecognitionException,
  type IToken,
  type TokenType,
} from 'chevrotain';
import { endOf, spanOf } from './lexer.js';
import { nearestWord } from './nearest.js';
import {
  choice,
  CloseBracket,
  Comma,
  Css,
  Dash,
  DateToken,
  Fraction,
  Hex,
  isKeyword,
  Munsell,
  NumberToken,
  OpenBracket,
  Percent,
  SentenceToken,
  Times,
  Word,
  wordsOf,
} from './tokens.js';
import type { LineProblem } from './phrases.js';
import type { Span } from './syntax.js';
import { canonicalWord, choiceLists, wordMeantBy } from './words.js';

/** What the grammar was looking for when it gave up; filled in by the parser's message provider. */
export interface Wanted {
  types: readonly TokenType[];
}

/** Chevrotain's own texts are never shown; the provider only notes which tokens were looked for. */
export function notingProvider(wanted: Wanted): IParserErrorMessageProvider {
  const firstOf = (paths: readonly (readonly TokenType[])[]): TokenType[] =>
    paths.flatMap((path) => path.slice(0, 1));
  const note = (types: readonly TokenType[]): string => {
    wanted.types = [...new Set(types)];
    return '';
  };
  return {
    buildMismatchTokenMessage: ({ expected }) => note([expected]),
    buildNotAllInputParsedMessage: () => note([]),
    buildNoViableAltMessage: ({ expectedPathsPerAlt }) => note(expectedPathsPerAlt.flatMap(firstOf)),
    buildEarlyExitMessage: ({ expectedIterationPaths }) => note(firstOf(expectedIterationPaths)),
  };
}

/** How messages speak of a phrase of the grammar. */
const phraseTexts: Readonly<Record<string, string>> = {
  newName: marked('a name'),
  knownName: marked('a name'),
  sentence: marked('a sentence in quotes'),
  freeText: marked('a word or two'),
  quantity: marked('a number'),
  percentage: marked('a share, such as `30%`,'),
  length: marked('a length, such as `12`, `30 cm` or `40%`,'),
  extent: marked('a width and a height, such as `80 x 50 cm`,'),
  coordinates: marked('a place in numbers, such as `(12, 8)`,'),
  date: marked('a day, such as `2026-12-01`,'),
  angle: marked('an angle, such as `15 degrees`,'),
  colourSpec: marked('a colour, such as `#2f6f73`, `7.5R 4/10` or the name of one,'),
  place: marked('a place, such as `focus`, `upper right` or `(12, 8)`,'),
  move: marked('a move, such as `3 cm left`,'),
  spot: marked('a place in words, such as `upper right`,'),
  anchor: marked('one of its own places, such as `bottom` or `upper left`,'),
  system: marked('a division, such as `golden`, `thirds` or `root 5`,'),
  canvasSize: marked('a size, such as `80 x 50 cm`, `figure 20` or `A3`,'),
  valueGroup: marked('a group and its steps, such as `dark 1-2`,'),
  budgetShare: marked('a name and its share, such as `dark 30%`,'),
  mirrorDirection: marked('`left to right` or `top to bottom`'),
  layerName: marked('a layer, such as `block-in`, `body colour` or `glaze`,'),
  colourIndex: marked('a colour index, such as `PB29`,'),
  gridCount: marked('a number of squares, such as `6 x 4`,'),
  findingName: marked('the name of a finding'),
  findingLimit: marked('a limit, such as `5%`, `40 degrees` or `2`,'),
};

function shown(text: string): string {
  return `\`${text.length > 40 ? `${text.slice(0, 39)}…` : text}\``;
}

/** `a`, `b` or `c` */
export function alternatives(words: readonly string[]): string {
  return listOf(words.map(shown));
}

function listOf(texts: readonly string[]): string {
  const last = texts.at(-1) ?? '';
  return texts.length < 2 ? last : t('{0} or {1}', texts.slice(0, -1).join(', '), last);
}

/** Characters that no word, number or sentence begins with. */
export function unreadableText(text: string, { start, end }: Span): LineProblem {
  const signs = text.slice(start, end).trim();
  return { start, end, code: 'unreadable text', message: t('{0} means nothing in a plan.', shown(signs)) };
}

/** How messages speak of signs that are not words of the language. */
const signTexts: ReadonlyMap<TokenType, string> = new Map([
  [NumberToken, marked('a number')],
  [Fraction, marked('a number')],
  [Dash, marked('a number')],
  [Word, marked('a name')],
  [SentenceToken, marked('a sentence in quotes')],
  [Hex, marked('a colour')],
  [Css, marked('a colour')],
  [Munsell, marked('a colour')],
  [DateToken, marked('a day')],
]);

/** Words that say little without what stands after them. */
const wordTexts: ReadonlyMap<string, string> = new Map([
  ['because', marked('a reason, such as `because "…"`,')],
  ['every', marked('a step, such as `every (4, 0)`,')],
]);

function wantedText(types: readonly TokenType[]): string {
  const texts = types.flatMap((type) => {
    const text = signTexts.get(type);
    if (text !== undefined) return [said(text)];
    const words = wordsOf(type);
    const wordText = wordTexts.get(words[0] ?? '');
    if (wordText !== undefined && types.length === 1) return [said(wordText)];
    return (words.length > 0 ? words : [type.LABEL ?? type.name]).map(shown);
  });
  const distinct = [...new Set(texts)];
  const listed = listOf(distinct);
  // Signs are told by what they are, words of the language as they are.
  return distinct.length > 1 && distinct.every((text) => text.startsWith('`'))
    ? t('one of {0}', listed)
    : listed;
}

interface Failure {
  readonly error: IRecognitionException;
  readonly text: string;
  readonly tokens: readonly IToken[];
  readonly wanted: readonly TokenType[];
  /** The phrases being read, outermost first, with the token each begins at. */
  readonly open: readonly { readonly phrase: string; readonly from: IToken }[];
  /** The tokens that could stand after these. */
  readonly following: (before: readonly IToken[]) => readonly TokenType[];
}

/** Says in the studio's words what is wrong with a line that the grammar could not read. */
export function problemOf(failure: Failure): LineProblem {
  const { error, tokens, open } = failure;
  const found = error.token;
  const index = found.tokenType === EOF ? tokens.length : tokens.indexOf(found);
  const before = tokens[index - 1];
  if (error instanceof NotAllInputParsedException) return trailing(failure, found, index, before);

  const phrase = open.find(
    ({ from }) => from === found || (index === tokens.length && from.tokenType === EOF),
  );
  const text = phraseTexts[phrase?.phrase ?? ''];
  const wanted = text === undefined ? wantedText(failure.wanted) : said(text);
  const last = shown(partEndingAt(failure, index - 1));
  const needed = t('After {0} {1} is needed.', last, wanted);
  const closing = failure.wanted.find((type) => type === Percent || type === CloseBracket);
  if (error instanceof MismatchedTokenException && closing && before && before.tokenType !== OpenBracket) {
    const replacement = closing === Percent ? asPercentage(failure, before) : `${before.image})`;
    return {
      ...spanOf(before),
      code: 'incomplete statement',
      message: needed,
      fix: { title: t('Write `{0}`', replacement), replacement },
    };
  }
  const left = index < tokens.length && leftOut(failure, found, index);
  if (left) return left;
  const extra =
    nearestWord(found.image, failure.wanted.flatMap(wordsOf)) === undefined && tooMany(failure, found, index);
  if (extra) return extra;
  if (index === tokens.length) {
    const span = before ? spanOf(before) : { start: 0, end: 0 };
    return { ...span, code: 'incomplete statement', message: needed };
  }
  const candidates = [...failure.wanted, ...failure.following(tokens.slice(0, index))].flatMap(wordsOf);
  const next = tokens[index + 1];
  const joined = `${found.image}-${next?.image ?? ''}`;
  if (next && candidates.includes(canonicalWord(joined))) {
    const fix = { title: t('Write `{0}`', joined), replacement: joined };
    const message = t('{0} is one word.', shown(joined));
    return { start: found.startOffset, end: endOf(next), code: 'unknown word', message, fix };
  }
  if (!isWord(found) || candidates.length === 0) {
    return {
      ...spanOf(found),
      code: 'unexpected text',
      message: t('After {0} {1} is needed, not {2}.', last, wanted, shown(found.image)),
    };
  }
  return unknownWord(found, candidates, needed);
}

function isWord(token: IToken): boolean {
  return token.tokenType === Word || isKeyword(token.tokenType);
}

/** `rectangle (0, 0) (9, 4)`: one word or sign was left out before what was found. */
function leftOut(failure: Failure, found: IToken, index: number): LineProblem | undefined {
  const { wanted, tokens } = failure;
  const written = wanted.flatMap((type) => (type === Times ? ['x'] : wordsOf(type)));
  const [word] = written;
  const [type] = wanted;
  if (type === undefined || word === undefined || written.length !== 1) return undefined;
  const before = tokens.slice(0, index);
  const inserted = { ...found, image: word, tokenType: type, tokenTypeIdx: type.tokenTypeIdx ?? 0 };
  const mistyped = [...wanted, ...failure.following(before)].flatMap(wordsOf);
  if (isWord(found) && nearestWord(found.image, mistyped) !== undefined) return undefined;
  const isBy = type === Times && canonicalWord(found.image) === 'by';
  const isSize = type === Times && isOneOf(found, [NumberToken, Fraction, Comma]);
  const fits = failure.following([...before, inserted]).some((next) => isOneOf(found, [next]));
  if (!fits && !isBy && !isSize) return undefined;
  const isComma = found.tokenType === Comma;
  const replacement = isBy ? word : isComma ? ` ${word}` : `${word} ${found.image}`;
  const message = t(
    '{0} is needed between {1} and {2}.',
    shown(word),
    shown(partEndingAt(failure, index - 1)),
    shown(partFrom(failure, isComma || isBy ? index + 1 : index)),
  );
  const fix = { title: t('Write `{0}`', word), replacement };
  return { ...spanOf(found), code: 'incomplete statement', message, fix };
}

/** `repeat 4 times every (4, 0)`: a word too many, before one that was wanted. */
function tooMany({ wanted, tokens }: Failure, found: IToken, index: number): LineProblem | undefined {
  const next = tokens[index + 1];
  if (!isWord(found) || next === undefined || !isOneOf(next, wanted)) return undefined;
  const span = { start: found.startOffset, end: next.startOffset };
  const fix = { title: t('Take it out'), replacement: '' };
  return { ...span, code: 'unexpected text', message: t('{0} is not needed here.', shown(found.image)), fix };
}

function isOneOf({ tokenType }: IToken, types: readonly TokenType[]): boolean {
  return types.some((type) => type === tokenType || tokenType.CATEGORIES?.includes(type) === true);
}

/** Takes shares as they are often written, `0.3` and the size `1.2`, for what they mean. */
function asPercentage({ tokens }: Failure, { image }: IToken): string {
  const share = Number(image);
  const isSize = ['resize', 'repeat'].includes(canonicalWord(tokens[0]?.image ?? ''));
  const isPart = share > 0 && (isSize ? share < 10 : share <= 1 && image.includes('.'));
  return `${isPart ? Number((share * 100).toFixed(4)) : image}%`;
}

/** What begins with a token: it alone, or all of a place in brackets. */
function partFrom({ text, tokens }: Failure, index: number): string {
  const first = tokens[index];
  if (first === undefined) return '';
  const closing =
    first.tokenType === OpenBracket
      ? tokens.slice(index).find(({ tokenType }) => tokenType === CloseBracket)
      : undefined;
  return text.slice(first.startOffset, endOf(closing ?? first));
}

/** What was read last: a token, with the number before a unit, or all of a place in brackets. */
function partEndingAt({ text, tokens }: Failure, index: number): string {
  const last = tokens[index];
  if (last === undefined) return '';
  const isUnit =
    last.tokenType === Percent || last.tokenType.CATEGORIES?.includes(choice.LengthUnit) === true;
  const opening =
    last.tokenType === CloseBracket
      ? tokens.slice(0, index).findLast(({ tokenType }) => tokenType === OpenBracket)
      : isUnit
        ? tokens[index - 1]
        : undefined;
  return text.slice((opening ?? last).startOffset, endOf(last));
}

function unknownWord(found: IToken, candidates: readonly string[], otherwise: string): LineProblem {
  const nearest = nearestWord(found.image, candidates) ?? wordMeantBy(found.image, candidates);
  const hint = nearest === undefined ? otherwise : t('Did you mean {0}?', shown(nearest));
  return {
    ...spanOf(found),
    code: 'unknown word',
    message: `${t('{0} is not known here.', shown(found.image))} ${hint}`,
    ...(nearest !== undefined && {
      fix: { title: t('Change to {0}', `\`${nearest}\``), replacement: nearest },
    }),
  };
}

/** `uper right`: a word that was taken for a name, and is nearly one that begins a place. */
function placeWordBefore(found: IToken, before: IToken): string | undefined {
  const second = [...choiceLists.Column, 'edge', 'side', 'corner'];
  if (before.tokenType !== Word || !second.includes(canonicalWord(found.image))) return undefined;
  return nearestWord(before.image, [...choiceLists.Row, ...choiceLists.Side]);
}

/** Text after a statement that was complete. */
function trailing(failure: Failure, found: IToken, index: number, before: IToken | undefined): LineProblem {
  const words = [...new Set(failure.following(failure.tokens.slice(0, index)).flatMap(wordsOf))].filter(
    (word) => word !== 'and',
  );
  const misread = before && placeWordBefore(found, before);
  if (before && misread !== undefined) return unknownWord(before, [misread], '');
  if (isWord(found) && (nearestWord(found.image, words) ?? wordMeantBy(found.image, words)) !== undefined)
    return unknownWord(found, words, '');
  const last = failure.tokens.at(-1) ?? found;
  const mayFollow =
    words.length > 0 && words.length < 8 ? ` ${t('Only {0} could follow.', alternatives(words))}` : '';
  return {
    start: found.startOffset,
    end: endOf(last),
    code: 'unexpected text',
    message:
      t('{0} is not read after {1}.', shown(found.image), shown(partEndingAt(failure, index - 1))) +
      mayFollow,
    ...(found === last && { fix: { title: t('Take it out'), replacement: '' } }),
  };
}
