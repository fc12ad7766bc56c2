import { t } from './localised.js';
import {
  EmbeddedActionsParser,
  LLkLookaheadStrategy,
  type ILookaheadStrategy,
  type IToken,
  type ParserMethod,
  type TokenType,
} from 'chevrotain';
import { endOf, spanOf } from './lexer.js';
import { notingProvider, type Wanted } from './messages.js';
import type { Choice, ProblemCode, Sentence, Span, Word } from './syntax.js';
import {
  Comma,
  Dash,
  Fraction,
  FreeWords,
  keyword,
  NumberToken,
  SentenceToken,
  UnclosedSentence,
  vocabulary,
  Word as WordToken,
} from './tokens.js';
import { canonicalWord } from './words.js';

/** A problem on a line that does not know its number yet. */
export interface LineProblem extends Span {
  readonly code: ProblemCode;
  readonly message: string;
  readonly fix?: { readonly title: string; readonly replacement: string };
}

/** What a word stands for where its form does not tell: a name given here or elsewhere, or a fixed term. */
export type WordUse = 'definition' | 'reference' | 'choice' | 'colour';

/** How many tokens tell the rules apart. */
export const MAX_LOOKAHEAD = 3;

/** Joins the spans of two parts that stand one after the other. */
export function spanning(first: Span, last: Span): Span {
  return { start: first.start, end: last.end };
}

/**
 * What every rule builds on: problems, names, lists and sentences. A `phrase` is a rule that messages can speak
 * of as a whole ("a place is needed").
 */
export abstract class PhraseRules extends EmbeddedActionsParser {
  protected readonly problems: LineProblem[] = [];
  /** Offsets at which the printer puts a comma between the items of a list. */
  protected readonly missingCommas: number[] = [];
  protected readonly uses = new Map<IToken, WordUse>();
  /** The phrases that are being read, outermost first, each with the token it begins at. */
  protected readonly open: string[] = [];
  protected readonly openFrom: IToken[] = [];
  /** The text cannot be used even though its grammar is right, such as the 31st of June. */
  protected refused = false;

  protected readonly wanted: Wanted;

  /** @param lookahead how the rules decide what comes next */
  constructor(lookahead: ILookaheadStrategy = new LLkLookaheadStrategy({ maxLookahead: MAX_LOOKAHEAD })) {
    const wanted: Wanted = { types: [] };
    super([...vocabulary], {
      maxLookahead: MAX_LOOKAHEAD,
      lookaheadStrategy: lookahead,
      recoveryEnabled: false,
      errorMessageProvider: notingProvider(wanted),
    });
    this.wanted = wanted;
  }

  protected phrase<T>(name: string, read: () => T): ParserMethod<[], T> {
    return this.RULE(name, () => {
      this.open.push(name);
      this.openFrom.push(this.LA(1));
      const result = read();
      this.open.pop();
      this.openFrom.pop();
      return result;
    });
  }

  /** Notes what a word stands for. */
  protected use(token: IToken, as: WordUse): void {
    this.uses.set(token, as);
  }

  protected report(span: Span, code: ProblemCode, message: string, fix?: LineProblem['fix']): void {
    this.problems.push({ start: span.start, end: span.end, code, message, ...(fix && { fix }) });
  }

  protected refuse(span: Span, message: string): void {
    this.report(span, 'unreadable text', message);
    this.refused = true;
  }

  protected isNext(distance: number, ...types: readonly TokenType[]): boolean {
    const next = this.LA(distance).tokenType;
    return types.some((type) => next === type || next.CATEGORIES?.includes(type) === true);
  }

  protected isNumberNext(distance: number): boolean {
    return this.isNext(distance, NumberToken, Fraction, Dash);
  }

  protected choiceOf<T extends string>(token: IToken): Choice<T> {
    return { choice: canonicalWord(token.image) as T, start: token.startOffset, end: endOf(token) };
  }

  protected wordOf(token: IToken): Word {
    return { text: token.image, start: token.startOffset, end: endOf(token) };
  }

  /** A fixed term of one or several words, such as the name of a finding; its text has single blanks. */
  protected termOf(tokens: readonly IToken[]): Word {
    for (const token of tokens) this.use(token, 'choice');
    const [first] = tokens;
    const last = tokens.at(-1);
    return {
      text: tokens.map((token) => token.image).join(' '),
      start: first?.startOffset ?? 0,
      end: last ? endOf(last) : 0,
    };
  }

  /** A comma or `and` between the items of a list. It may be left out; the printer then puts a comma. */
  readonly separator = this.RULE('separator', (): void => {
    const last = this.LA(0);
    const comma = this.OPTION1(() => this.CONSUME(Comma));
    const and = this.OPTION2({
      GATE: () => this.LA(2).tokenType.name !== 'EOF' && !this.isNext(2, Comma),
      DEF: () => this.CONSUME(keyword('and')),
    });
    this.ACTION(() => {
      if (comma === undefined && and === undefined) this.missingCommas.push(endOf(last));
    });
  });

  /** A comma that may stand or not. */
  readonly pause = this.RULE('pause', (): void => {
    this.OPTION(() => this.CONSUME(Comma));
  });

  /** The name of something that is being introduced here. */
  readonly newName = this.phrase('newName', (): Word => {
    const token = this.CONSUME(WordToken);
    this.use(token, 'definition');
    return this.wordOf(token);
  });

  /** The name of something that is introduced elsewhere. */
  readonly knownName = this.phrase('knownName', (): Word => {
    const token = this.CONSUME(WordToken);
    this.use(token, 'reference');
    return this.wordOf(token);
  });

  readonly knownNames = this.RULE('knownNames', (): readonly Word[] => {
    const names = [this.SUBRULE1(this.knownName)];
    this.MANY({
      GATE: () => !this.isNext(1, keyword('because')),
      DEF: () => {
        this.SUBRULE(this.separator);
        names.push(this.SUBRULE2(this.knownName));
      },
    });
    return names;
  });

  readonly sentence = this.phrase('sentence', (): Sentence => {
    const token = this.CONSUME(SentenceToken);
    return this.ACTION(() => this.readSentence(token));
  });

  /** A sentence, or plain words to the end of the line. */
  readonly freeText = this.phrase('freeText', (): Sentence =>
    this.OR([
      { ALT: () => this.SUBRULE(this.sentence) },
      {
        ALT: () => {
          const token = this.CONSUME(FreeWords);
          return { value: token.image, ...spanOf(token) };
        },
      },
    ]),
  );

  private readSentence(token: IToken): Sentence {
    const closed = token.tokenType !== UnclosedSentence;
    const image = closed ? token.image : token.image.trimEnd();
    const span = { start: token.startOffset, end: token.startOffset + image.length };
    if (!closed) {
      const quote = image.startsWith('“') ? '”' : '"';
      this.report(span, 'unclosed sentence', t('The closing quotation mark is missing.'), {
        title: t('Close the sentence'),
        replacement: image + quote,
      });
    }
    const inner = image.slice(1, closed ? -1 : undefined);
    return { value: inner.replace(/\\(["“”\\])/g, '$1'), ...span };
  }
}
