import { EmbeddedActionsParser, type IToken, type ParserMethod, type TokenType } from 'chevrotain';
import { endOf, spanOf } from './lexer.js';
import { notingProvider, type Wanted } from './messages.js';
import type {
  CalendarDate,
  Choice,
  ColourSpec,
  Coordinates,
  Extent,
  Length,
  LengthUnit,
  Percentage,
  ProblemCode,
  Quantity,
  Sentence,
  Span,
  Word,
} from './syntax.js';
import {
  choice,
  CloseBracket,
  Comma,
  Css,
  Dash,
  DateToken,
  DegreeSign,
  FreeWords,
  Fraction,
  Hex,
  keyword,
  Munsell,
  NumberToken,
  OpenBracket,
  Percent,
  SentenceToken,
  Times,
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

/** A whole number with a fraction, either of which may be missing. */
interface MixedNumber {
  readonly value: number;
  readonly fraction: boolean;
  readonly first: IToken;
  readonly last: IToken;
}

/** What a word stands for where its form does not tell: a name given here or elsewhere, or a fixed term. */
export type WordUse = 'definition' | 'reference' | 'choice' | 'colour';

const vulgarFractions: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅕', 1 / 5],
  ['⅛', 1 / 8],
  ['⅜', 3 / 8],
  ['⅝', 5 / 8],
  ['⅞', 7 / 8],
]);

function fractionValue(image: string): number {
  const [above, below] = image.split('/');
  return vulgarFractions.get(image) ?? Number(above) / Number(below);
}

/** Joins the spans of two parts that stand one after the other. */
export function spanning(first: Span, last: Span): Span {
  return { start: first.start, end: last.end };
}

/** One unit counts for both sides: `80 x 50 cm`. */
export function makeExtent(width: Length, height: Length): Extent {
  const unitOf = (side: Length, other: Length): Length =>
    side.unit === undefined && other.unit !== undefined && other.unit !== '%'
      ? { ...side, unit: other.unit }
      : side;
  return { width: unitOf(width, height), height: unitOf(height, width), ...spanning(width, height) };
}

/**
 * The parts statements are made of: names, sentences, numbers, lengths, dates and colours. A `phrase` is a
 * rule that messages can speak of as a whole ("a place is needed").
 */
export abstract class ValueRules extends EmbeddedActionsParser {
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

  constructor() {
    const wanted: Wanted = { types: [] };
    super([...vocabulary], {
      maxLookahead: 3,
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
    for (const token of tokens) this.uses.set(token, 'choice');
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
    this.uses.set(token, 'definition');
    return this.wordOf(token);
  });

  /** The name of something that is introduced elsewhere. */
  readonly knownName = this.phrase('knownName', (): Word => {
    const token = this.CONSUME(WordToken);
    this.uses.set(token, 'reference');
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
      this.report(span, 'unclosed sentence', 'The closing quotation mark is missing.', {
        title: 'Close the sentence',
        replacement: image + quote,
      });
    }
    const inner = image.slice(1, closed ? -1 : undefined);
    return { value: inner.replace(/\\(["“”\\])/g, '$1'), ...span };
  }

  private readNumber(token: IToken): number {
    const value = token.tokenType === Fraction ? fractionValue(token.image) : Number(token.image);
    if (!Number.isFinite(value)) this.refuse(spanOf(token), 'This number cannot be reckoned with.');
    return value;
  }

  readonly quantity = this.phrase('quantity', (): Quantity => {
    const minus = this.OPTION(() => this.CONSUME(Dash));
    const token = this.CONSUME(NumberToken);
    const value = this.ACTION(() => this.readNumber(token));
    return { value: minus ? 0 - value : value, start: (minus ?? token).startOffset, end: endOf(token) };
  });

  readonly percentage = this.phrase('percentage', (): Percentage => {
    const minus = this.OPTION1(() => this.CONSUME(Dash));
    const whole = this.CONSUME(NumberToken);
    const part = this.OPTION2(() => this.CONSUME(Fraction));
    const sign = this.CONSUME(Percent);
    const value = this.ACTION(() => this.readNumber(whole) + (part ? this.readNumber(part) : 0));
    return {
      percent: minus ? 0 - value : value,
      start: (minus ?? whole).startOffset,
      end: endOf(sign),
    };
  });

  readonly length = this.phrase('length', (): Length => {
    const minus = this.OPTION1(() => this.CONSUME(Dash));
    const number = this.SUBRULE(this.mixedNumber);
    const unit = this.OPTION2(() => this.SUBRULE(this.lengthUnit));
    return this.ACTION(() => ({
      value: minus ? 0 - number.value : number.value,
      ...(unit && { unit: canonicalWord(unit.image) as LengthUnit | '%' }),
      fraction: number.fraction,
      start: (minus ?? number.first).startOffset,
      end: endOf(unit ?? number.last),
    }));
  });

  // The alternatives are made once: plans hold hundreds of thousands of lengths.
  private mixedNumberAlternatives: { ALT: () => MixedNumber }[] | undefined;

  /** `12`, `7 1/2`, `1/2` */
  readonly mixedNumber = this.RULE('mixedNumber', (): MixedNumber =>
    this.OR(
      (this.mixedNumberAlternatives ??= [
        {
          ALT: () => {
            const whole = this.CONSUME(NumberToken);
            const part = this.OPTION(() => this.CONSUME1(Fraction));
            return this.ACTION(() => ({
              value: this.readNumber(whole) + (part ? this.readNumber(part) : 0),
              fraction: part !== undefined,
              first: whole,
              last: part ?? whole,
            }));
          },
        },
        {
          ALT: () => {
            const part = this.CONSUME2(Fraction);
            return this.ACTION(() => ({
              value: this.readNumber(part),
              fraction: true,
              first: part,
              last: part,
            }));
          },
        },
      ]),
    ),
  );

  readonly lengthUnit = this.RULE('lengthUnit', (): IToken =>
    this.OR([{ ALT: () => this.CONSUME(choice.LengthUnit) }, { ALT: () => this.CONSUME(Percent) }]),
  );

  readonly extent = this.phrase('extent', (): Extent => {
    const width = this.SUBRULE1(this.length);
    this.CONSUME(Times);
    const height = this.SUBRULE2(this.length);
    return this.ACTION(() => makeExtent(width, height));
  });

  readonly coordinates = this.phrase('coordinates', (): Coordinates => {
    const opening = this.CONSUME(OpenBracket);
    const x = this.SUBRULE1(this.length);
    this.SUBRULE(this.separator);
    const y = this.SUBRULE2(this.length);
    const closing = this.CONSUME(CloseBracket);
    return { x, y, start: opening.startOffset, end: endOf(closing) };
  });

  readonly date = this.phrase('date', (): CalendarDate => {
    const token = this.CONSUME(DateToken);
    const parsed = new Date(`${token.image}T00:00:00Z`);
    const real = !Number.isNaN(parsed.getTime()) && parsed.toISOString().startsWith(token.image);
    if (!real) this.ACTION(() => this.refuse(spanOf(token), 'There is no such day in the calendar.'));
    return { text: token.image, ...spanOf(token) };
  });

  /** `15 degrees`, `15°`, `15`. */
  readonly angle = this.phrase('angle', (): Quantity => {
    const quantity = this.SUBRULE(this.quantity);
    const unit = this.OPTION(() =>
      this.OR([{ ALT: () => this.CONSUME(DegreeSign) }, { ALT: () => this.CONSUME(choice.Degrees) }]),
    );
    return this.ACTION(() => (unit ? { ...quantity, end: endOf(unit) } : quantity));
  });

  readonly colourSpec = this.phrase('colourSpec', (): ColourSpec =>
    this.OR([
      { ALT: () => this.hexColour(this.CONSUME(Hex)) },
      { ALT: () => this.colourOf('css', this.CONSUME(Css)) },
      { ALT: () => this.colourOf('munsell', this.CONSUME(Munsell)) },
      {
        ALT: () => {
          const token = this.CONSUME(WordToken);
          this.uses.set(token, 'reference');
          return this.colourOf('name', token);
        },
      },
    ]),
  );

  private colourOf(kind: ColourSpec['kind'], token: IToken): ColourSpec {
    return { kind, text: token.image, ...spanOf(token) };
  }

  private hexColour(token: IToken): ColourSpec {
    this.ACTION(() => {
      if (/^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i.test(token.image)) return;
      this.refuse(
        spanOf(token),
        'A colour with `#` has three or six digits, 0-9 and a-f, such as `#2f6f73`.',
      );
    });
    return this.colourOf('hex', token);
  }
}
