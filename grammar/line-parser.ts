import {
  EOF,
  type IRecognitionException,
  type ISerializedGast,
  type IToken,
  type TokenType,
} from 'chevrotain';
import { endOf, spanOf, type LexedLine } from './lexer.js';
import { NotedDecisions } from './decisions.js';
import { problemOf, unreadableText } from './messages.js';
import { slipIn } from './slips/index.js';
import { LeanParser } from './lean-parser.js';
import type { StatementBody } from './statement-rules.js';
import type { StatementEntry } from './statements.js';
import type { Span, Statement } from './syntax.js';
import { FreeWords, SentenceToken, UnclosedSentence } from './tokens.js';
import { MAX_LOOKAHEAD, type LineProblem, type WordUse } from './phrases.js';
import { WorkRules } from './work-rules.js';

/** What one line says, whatever stands around it. */
export interface LineReading {
  readonly statement?: Statement;
  readonly problems: readonly LineProblem[];
  /** The name that the line was to give, where no statement is left of it. */
  readonly lostName?: string;
  /** What the line was to say, where no statement is left of it. */
  readonly lostKind?: Statement['kind'];
  /** Offsets at which the printer puts a comma. */
  readonly missingCommas: readonly number[];
}

/** Statements that take plain words to the end of the line. */
const freeTextRules: ReadonlySet<string> = new Set(['mood', 'support', 'medium']);

/** Longest line for which the words that could follow are worked out; the work grows with the line. */
const longestExplained = 60;

/** Longest line that is searched for common slips, in characters. */
const longestLine = 400;

class LineParser extends WorkRules {
  constructor(decisions: NotedDecisions) {
    super(decisions);
    this.performSelfAnalysis();
  }

  read(entry: StatementEntry, text: string, line: LexedLine): LineReading {
    const tokens = tokensFor(entry, text, line);
    this.begin([...tokens]);
    const body = this.ruleNamed(entry.rule)();
    const [error] = this.errors;
    const unreadable = line.unreadable.find(({ start }) => isOutsideWords(tokens, start));
    if (unreadable || error) this.problems.push(this.explain(entry, text, line, tokens, error, unreadable));
    const kept = this.refused ? this.draft : body;
    const lost = kept ? undefined : [...this.uses].find(([, use]) => use === 'definition')?.[0];
    return {
      ...(kept && { statement: statementOf(entry, kept, tokens) }),
      ...(lost && { lostName: lost.image }),
      ...(!kept && { lostKind: entry.kind }),
      problems: [...this.problems].sort((one, other) => one.start - other.start),
      missingCommas: [...this.missingCommas],
    };
  }

  /** What the words of the line that was read last stand for, where their form does not tell. */
  get wordUses(): ReadonlyMap<IToken, WordUse> {
    return this.uses;
  }

  get productions(): ISerializedGast[] {
    return this.getSerializedGastProductions();
  }

  /** What was meant, where the slip is a common one; else which sign or word the grammar did not expect. */
  private explain(
    entry: StatementEntry,
    text: string,
    line: LexedLine,
    tokens: readonly IToken[],
    error: IRecognitionException | undefined,
    unreadable: Span | undefined,
  ): LineProblem {
    const open = this.openPhrases();
    const statement = text.slice(0, line.comment?.start ?? text.length).trimEnd();
    const found = error?.token.tokenType === EOF ? statement.length : error?.token.startOffset;
    if (text.length <= longestLine) {
      const at = Math.min(unreadable?.start ?? Infinity, found ?? Infinity);
      const phrases = open.filter(({ from }) => from === error?.token).map(({ phrase }) => phrase);
      const slip = slipIn({ entry, text: statement, tokens, at, phrases });
      if (slip) return slip;
    }
    if (unreadable || !error) return unreadableText(text, unreadable ?? { start: 0, end: 0 });
    const following = (before: readonly IToken[]): readonly TokenType[] =>
      before.length > longestExplained
        ? []
        : this.computeContentAssist(entry.rule, [...before]).map((path) => path.nextTokenType);
    return problemOf({ error, text, tokens, wanted: this.wanted.types, open, following });
  }

  private begin(tokens: IToken[]): void {
    this.input = tokens;
    this.problems.length = 0;
    this.missingCommas.length = 0;
    this.open.length = 0;
    this.openFrom.length = 0;
    this.uses.clear();
    this.draft = undefined;
    this.refused = false;
  }

  private openPhrases(): readonly { readonly phrase: string; readonly from: IToken }[] {
    return this.openFrom.map((from, index) => ({ phrase: this.open[index] ?? '', from }));
  }
}

function statementOf(entry: StatementEntry, body: StatementBody, tokens: readonly IToken[]): Statement {
  const first = tokens[0];
  const last = tokens.at(-1);
  const start = first?.startOffset ?? 0;
  const keyword =
    first === undefined || entry.words.length === 0
      ? { text: '', start, end: start }
      : { text: first.image, ...spanOf(first) };
  return { ...body, keyword, start, end: last ? endOf(last) : start };
}

/** The tokens of a line as the rule for `entry` reads them. */
export function tokensFor(entry: StatementEntry, text: string, line: LexedLine): readonly IToken[] {
  return freeTextRules.has(entry.rule) ? withFreeWords(text, line) : line.tokens;
}

/** Plain words become one token, unless they are one sentence in quotes. */
function withFreeWords(text: string, line: LexedLine): readonly IToken[] {
  const [opening, second, third] = line.tokens;
  if (opening === undefined) return [];
  const rest = text.slice(endOf(opening), line.comment?.start ?? text.length);
  const image = rest.trim();
  if (image === '') return [opening];
  const isSentence = second?.tokenType === SentenceToken || second?.tokenType === UnclosedSentence;
  if (
    second &&
    isSentence &&
    third === undefined &&
    endOf(second) >= endOf(opening) + rest.trimEnd().length
  ) {
    return [opening, second];
  }
  const startOffset = endOf(opening) + rest.length - rest.trimStart().length;
  return [
    opening,
    {
      image,
      startOffset,
      tokenType: FreeWords,
      tokenTypeIdx: FreeWords.tokenTypeIdx ?? EOF.tokenTypeIdx ?? 0,
    },
  ];
}

function isOutsideWords(tokens: readonly IToken[], offset: number): boolean {
  const words = tokens[1];
  return words?.tokenType !== FreeWords || offset < words.startOffset || offset >= endOf(words);
}

const decisions = new NotedDecisions({ maxLookahead: MAX_LOOKAHEAD });

/** Chevrotain parsers hold state while they read one line, and none between lines. */
export const lineParser = new LineParser(decisions);

const leanParser = new LeanParser(decisions);

const none: readonly LineProblem[] = [];

/** What a line says, read as the statement of `entry`. */
export function readLine(entry: StatementEntry, text: string, line: LexedLine): LineReading {
  if (line.unreadable.length > 0) return lineParser.read(entry, text, line);
  const tokens = tokensFor(entry, text, line);
  const right = leanParser.readRight(entry, tokens);
  if (right === undefined) return lineParser.read(entry, text, line);
  const statement = statementOf(entry, right.body, tokens);
  return { statement, problems: none, missingCommas: right.missingCommas };
}
