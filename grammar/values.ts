import { t } from './localised.js';
import type { IToken } from 'chevrotain';
import { endOf, spanOf } from './lexer.js';
import { PhraseRules, spanning } from './phrases.js';
import type {
  CalendarDate,
  ColourSpec,
  Coordinates,
  Extent,
  Length,
  LengthUnit,
  Percentage,
  Quantity,
} from './syntax.js';
import {
  choice,
  CloseBracket,
  Css,
  Dash,
  DateToken,
  DegreeSign,
  Fraction,
  Hex,
  Munsell,
  NumberToken,
  OpenBracket,
  Percent,
  Times,
  Word as WordToken,
} from './tokens.js';
import { canonicalWord } from './words.js';

/** Places and sizes stay exact in a drawing up to here. */
export const LARGEST_NUMBER = 1e9;

/** A whole number with a fraction, either of which may be missing. */
interface MixedNumber {
  readonly value: number;
  /** True for a fraction without a whole number. */
  readonly fraction: boolean;
  readonly first: IToken;
  readonly last: IToken;
}

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

/** One unit counts for both sides: `80 x 50 cm`. */
export function makeExtent(width: Length, height: Length): Extent {
  const unitOf = (side: Length, other: Length): Length =>
    side.unit === undefined && other.unit !== undefined && other.unit !== '%'
      ? { ...side, unit: other.unit }
      : side;
  return { width: unitOf(width, height), height: unitOf(height, width), ...spanning(width, height) };
}

/** The values statements hold: numbers, shares, lengths, places in numbers, days and colours. */
export abstract class ValueRules extends PhraseRules {
  private readNumber(token: IToken): number {
    const value = token.tokenType === Fraction ? fractionValue(token.image) : Number(token.image);
    if (value <= LARGEST_NUMBER) return value;
    const message = /\/0+$/.test(token.image)
      ? t('Nothing can be divided by 0.')
      : t('No number in a plan is larger than 1,000,000,000.');
    this.refuse(spanOf(token), message);
    return 0;
  }

  readonly quantity = this.phrase('quantity', (): Quantity => {
    const minus = this.OPTION(() => this.CONSUME(Dash));
    const number = this.SUBRULE(this.mixedNumber);
    return this.ACTION(() => ({
      value: minus ? 0 - number.value : number.value,
      start: (minus ?? number.first).startOffset,
      end: endOf(number.last),
    }));
  });

  readonly percentage = this.phrase('percentage', (): Percentage => {
    const minus = this.OPTION(() => this.CONSUME(Dash));
    const number = this.SUBRULE(this.mixedNumber);
    const sign = this.CONSUME(Percent);
    return this.ACTION(() => ({
      percent: minus ? 0 - number.value : number.value,
      start: (minus ?? number.first).startOffset,
      end: endOf(sign),
    }));
  });

  readonly length = this.phrase('length', (): Length => {
    const minus = this.OPTION1(() => this.CONSUME(Dash));
    const number = this.SUBRULE(this.mixedNumber);
    const unit = this.OPTION2(() => this.SUBRULE(this.lengthUnit));
    return this.ACTION(() => {
      const value = minus ? 0 - number.value : number.value;
      const { fraction } = number;
      const start = (minus ?? number.first).startOffset;
      const end = endOf(unit ?? number.last);
      if (unit === undefined) return { value, fraction, start, end };
      return { value, unit: canonicalWord(unit.image) as LengthUnit | '%', fraction, start, end };
    });
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
              fraction: false,
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
    if (!real) this.ACTION(() => this.refuse(spanOf(token), t('There is no such day in the calendar.')));
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
          this.use(token, 'reference');
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
      this.report(
        spanOf(token),
        'unreadable text',
        'A colour with `#` has three or six digits, 0-9 and a-f, such as `#2f6f73`.',
      );
    });
    return this.colourOf('hex', token);
  }
}
