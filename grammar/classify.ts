import type { IToken } from 'chevrotain';
import { lexLine, spanOf } from './lexer.js';
import { lineParser, tokensFor } from './line-parser.js';
import type { PlacedLine } from './lines.js';
import { linesOf } from './parse.js';
import type { Span, SyntaxTree } from './syntax.js';
import {
  Css,
  DateToken,
  DegreeSign,
  Fraction,
  FreeWords,
  Hex,
  isKeyword,
  Munsell,
  NumberToken,
  Percent,
  SentenceToken,
  Times,
  UnclosedSentence,
} from './tokens.js';
import type { WordUse } from './phrases.js';
import { canonicalWord, choiceLists, namingWords, otherUnits } from './words.js';

/** What a stretch of text is, for colouring it. Commas, brackets and unread words are nothing. */
export type TextClass = WordUse | 'keyword' | 'sentence' | 'number' | 'unit' | 'date' | 'comment';

export interface ClassifiedText extends Span {
  readonly line: number;
  readonly class: TextClass;
}

const units: ReadonlySet<string> = new Set([
  ...choiceLists.LengthUnit,
  ...choiceLists.Degrees,
  ...otherUnits,
]);
const terms: ReadonlySet<string> = new Set([...Object.values(choiceLists).flat(), ...namingWords]);

/**
 * What the words and signs of the lines `first` to `last` (both included) of a tree are, in their order.
 * The tree must come from `parse`.
 */
export function classify(tree: SyntaxTree, first = 0, last = Infinity): readonly ClassifiedText[] {
  return linesOf(tree)
    .slice(first, last + 1)
    .flatMap((placed, index) => classifyLine(placed).map((span) => ({ line: first + index, ...span })));
}

type ClassifiedSpan = Omit<ClassifiedText, 'line'>;

interface Classified {
  readonly entry: PlacedLine['entry'];
  readonly spans: readonly ClassifiedSpan[];
}

/** By the line as it was read, which stays the same object from one tree to the next while nothing in it changes. */
const classified = new WeakMap<PlacedLine['source'], Classified>();

function classifyLine(line: PlacedLine): readonly ClassifiedSpan[] {
  const known = classified.get(line.source);
  if (known !== undefined && known.entry === line.entry) return known.spans;
  const spans = spansOf(line);
  classified.set(line.source, { entry: line.entry, spans });
  return spans;
}

function spansOf({ source, entry }: PlacedLine): readonly ClassifiedSpan[] {
  const lexed = lexLine(source.text);
  const tokens = entry ? tokensFor(entry, source.text, lexed) : lexed.tokens;
  if (entry) lineParser.read(entry, source.text, { ...lexed, tokens });
  const uses: ReadonlyMap<IToken, WordUse> = entry ? lineParser.wordUses : new Map();
  const opening = entry?.words.length ?? 0;
  const spans = tokens.flatMap((token, index) => {
    const found = index < opening ? 'keyword' : (uses.get(token) ?? classOf(token));
    return found === undefined ? [] : [{ ...spanOf(token), class: found }];
  });
  if (lexed.comment === undefined) return spans;
  const { start, end } = lexed.comment;
  return [...spans, { start, end, class: 'comment' as const }];
}

function classOf(token: IToken): TextClass | undefined {
  switch (token.tokenType) {
    case SentenceToken:
    case UnclosedSentence:
    case FreeWords:
      return 'sentence';
    case NumberToken:
    case Fraction:
      return 'number';
    case Percent:
    case DegreeSign:
      return 'unit';
    case Times:
      return 'keyword';
    case DateToken:
      return 'date';
    case Hex:
    case Css:
    case Munsell:
      return 'colour';
    default:
      return isKeyword(token.tokenType) ? classOfKeyword(canonicalWord(token.image)) : undefined;
  }
}

function classOfKeyword(word: string): TextClass {
  if (units.has(word)) return 'unit';
  return terms.has(word) ? 'choice' : 'keyword';
}
