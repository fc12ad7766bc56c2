import { t } from './localised.js';
import type { IToken, OrMethodOpts } from 'chevrotain';
import { endOf, spanOf } from './lexer.js';
import type {
  Choice,
  DivisionSystem,
  Move,
  Owner,
  Place,
  PlaceBase,
  Side,
  Span,
  Spot,
  Word,
} from './syntax.js';
import { choice, Comma, keyword, NumberToken, OpenBracket } from './tokens.js';
import { spanning } from './phrases.js';
import { ValueRules } from './values.js';
import { canonicalWord } from './words.js';

const noMoves: readonly Move[] = [];
const focusWord = keyword('focus');
const crossingWord = keyword('crossing');
const toWord = keyword('to');

const spots: Readonly<Record<string, Spot>> = {
  'upper left': 'upper left',
  'upper centre': 'upper centre',
  'upper right': 'upper right',
  'middle left': 'middle left',
  'middle centre': 'centre',
  'middle right': 'middle right',
  'lower left': 'lower left',
  'lower centre': 'lower centre',
  'lower right': 'lower right',
  'top left': 'upper left',
  'top centre': 'upper centre',
  'top right': 'upper right',
  'bottom left': 'lower left',
  'bottom centre': 'lower centre',
  'bottom right': 'lower right',
};

const sideSpots: Readonly<Record<Side, Spot>> = {
  left: 'middle left',
  right: 'middle right',
  top: 'upper centre',
  bottom: 'lower centre',
};

type BaseWithSpan = Span & { readonly base: PlaceBase };

/** How places are said: by numbers, by the words for corners, edges and crossings, or by an object's name. */
export abstract class PlaceRules extends ValueRules {
  /** A place, and how far from it: `upper right, 3 cm left`. */
  readonly place = this.phrase('place', (): Place => {
    const base = this.SUBRULE(this.placeBase);
    let moves: Move[] | undefined;
    this.MANY({
      GATE: () => this.isNumberNext(1) || (this.isNext(1, Comma) && this.isNumberNext(2)),
      DEF: () => {
        this.SUBRULE(this.separator);
        (moves ??= []).push(this.SUBRULE(this.move));
      },
    });
    const end = moves?.at(-1)?.end ?? base.end;
    return { base: base.base, moves: moves ?? noMoves, start: base.start, end };
  });

  /** Several places, up to the end of the line or the word `to`. */
  readonly places = this.RULE('places', (): readonly Place[] => {
    const places: Place[] = [];
    this.AT_LEAST_ONE({
      GATE: () => !this.isNext(1, toWord),
      DEF: () => {
        places.push(this.SUBRULE(this.place));
        this.SUBRULE(this.pause);
      },
    });
    return places;
  });

  readonly move = this.phrase('move', (): Move => {
    const amount = this.SUBRULE(this.length);
    const direction = this.CONSUME(choice.Direction);
    return {
      amount,
      direction: canonicalWord(direction.image) as Move['direction'],
      start: amount.start,
      end: endOf(direction),
    };
  });

  // The alternatives are made once: plans hold hundreds of thousands of places.
  private placeAlternatives: OrMethodOpts<BaseWithSpan> | undefined;

  readonly placeBase = this.RULE('placeBase', (): BaseWithSpan =>
    this.OR(
      (this.placeAlternatives ??= {
        IGNORE_AMBIGUITIES: true,
        DEF: [
          { GATE: () => this.isNext(1, OpenBracket), ALT: () => this.SUBRULE(this.coordinatesPlace) },
          { GATE: () => this.isNext(1, focusWord), ALT: () => this.SUBRULE(this.focusPlace) },
          {
            GATE: () => this.isNext(1, crossingWord) && this.isNext(2, NumberToken),
            ALT: () => this.SUBRULE(this.crossingPlace),
          },
          { GATE: () => this.isSpotNext(), ALT: () => this.SUBRULE(this.spotPlace) },
          { GATE: () => this.isEdgeNext(), ALT: () => this.SUBRULE(this.edgePlace) },
          { ALT: () => this.SUBRULE(this.objectPlace) },
        ],
      }),
    ),
  );

  private isSpotNext(): boolean {
    if (this.isNext(1, keyword('centre'))) return true;
    if (!this.isNext(1, choice.Row)) return false;
    return (
      this.isNext(2, choice.Column) || (this.isNext(1, keyword('middle')) && this.isNext(2, keyword('of')))
    );
  }

  private isEdgeNext(): boolean {
    return this.isNext(1, choice.Side) && this.isNext(2, keyword('edge'), keyword('side'), keyword('of'));
  }

  readonly coordinatesPlace = this.RULE('coordinatesPlace', (): BaseWithSpan => {
    const at = this.SUBRULE(this.coordinates);
    return { base: { kind: 'coordinates', at }, start: at.start, end: at.end };
  });

  readonly focusPlace = this.RULE('focusPlace', (): BaseWithSpan => {
    const token = this.CONSUME(keyword('focus'));
    return { base: { kind: 'focus' }, ...spanOf(token) };
  });

  /** `crossing 2 1 of own`: second upright from the left, first level from the top. */
  readonly crossingPlace = this.RULE('crossingPlace', (): BaseWithSpan => {
    const start = this.CONSUME(keyword('crossing'));
    const column = this.SUBRULE1(this.quantity);
    this.OPTION1(() => this.CONSUME(Comma));
    const row = this.SUBRULE2(this.quantity);
    const of = this.OPTION2(() => this.SUBRULE(this.owner));
    return {
      base: { kind: 'crossing', column, row, ...(of && { of }) },
      ...spanning(spanOf(start), of ?? row),
    };
  });

  /** `upper right corner`, `upper right of thirds`, `centre of tower`. */
  readonly spotPlace = this.RULE('spotPlace', (): BaseWithSpan => {
    const spot = this.SUBRULE(this.spot);
    const corner = this.OPTION1(() => this.CONSUME(keyword('corner')));
    const of = this.OPTION2(() => this.SUBRULE(this.owner));
    return this.ACTION(() => {
      const span = spanning(spot, of ?? (corner ? spanOf(corner) : spot));
      if (corner && !of) return { base: { kind: 'corner', spot: spot.choice }, ...span };
      return { base: { kind: 'spot', spot: spot.choice, ...(of && { of }) }, ...span };
    });
  });

  readonly spot = this.phrase('spot', (): Choice<Spot> =>
    this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [
        {
          GATE: () => this.isNext(2, choice.Column),
          ALT: () => {
            const row = this.CONSUME(choice.Row);
            const column = this.CONSUME(choice.Column);
            const words = `${canonicalWord(row.image)} ${canonicalWord(column.image)}`;
            return { choice: spots[words] ?? 'centre', start: row.startOffset, end: endOf(column) };
          },
        },
        { ALT: () => ({ choice: 'centre' as const, ...spanOf(this.CONSUME(keyword('centre'))) }) },
        { ALT: () => ({ choice: 'centre' as const, ...spanOf(this.CONSUME(keyword('middle'))) }) },
      ],
    }),
  );

  /** `left edge at 20%`, `top edge of tower`, `top of tower`, `left side of tower`. */
  readonly edgePlace = this.RULE('edgePlace', (): BaseWithSpan => {
    const side = this.CONSUME(choice.Side);
    const edge = this.OPTION1(() => this.SUBRULE(this.edgeWord));
    const of = this.OPTION2(() => this.SUBRULE(this.ofObject));
    const along = this.OPTION3(() => {
      this.CONSUME(keyword('at'));
      return this.SUBRULE(this.length);
    });
    return this.ACTION(() => ({
      base: {
        kind: 'edge' as const,
        side: canonicalWord(side.image) as Side,
        ...(of && { of }),
        ...(along && { along }),
      },
      ...spanning(spanOf(side), along ?? of ?? spanOf(edge ?? side)),
    }));
  });

  readonly edgeWord = this.RULE('edgeWord', (): IToken =>
    this.OR([{ ALT: () => this.CONSUME(keyword('edge')) }, { ALT: () => this.CONSUME(keyword('side')) }]),
  );

  readonly ofObject = this.RULE('ofObject', (): Word => {
    this.CONSUME(keyword('of'));
    return this.SUBRULE(this.knownName);
  });

  readonly objectPlace = this.RULE('objectPlace', (): BaseWithSpan => {
    const name = this.SUBRULE(this.knownName);
    return { base: { kind: 'object', name }, start: name.start, end: name.end };
  });

  /** Which of its own places an object is set down by: `bottom`, `upper left`, `centre`. */
  readonly anchor = this.phrase('anchor', (): Choice<Spot> =>
    this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [
        {
          GATE: () => this.isSpotNext() || this.isNext(1, keyword('middle')),
          ALT: () => this.SUBRULE(this.spot),
        },
        {
          ALT: () => {
            const side = this.CONSUME(choice.Side);
            return { choice: sideSpots[canonicalWord(side.image) as Side], ...spanOf(side) };
          },
        },
      ],
    }),
  );

  /** `of thirds` is a division system, `of tower` an object. */
  readonly owner = this.RULE('owner', (): Owner => {
    this.CONSUME(keyword('of'));
    return this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [
        {
          GATE: () => this.isSystemNext(),
          ALT: (): Owner => {
            const system = this.SUBRULE(this.system);
            return { kind: 'system', system: system.choice, start: system.start, end: system.end };
          },
        },
        {
          ALT: (): Owner => {
            const name = this.SUBRULE(this.knownName);
            return { kind: 'name', name, start: name.start, end: name.end };
          },
        },
      ],
    });
  });

  private isSystemNext(): boolean {
    if (this.isNext(1, choice.OneWordSystem)) return true;
    if (this.isNext(1, keyword('root'))) return this.isNext(2, NumberToken);
    return (
      this.isNext(1, keyword('two')) && this.isNext(2, keyword('to')) && this.isNext(3, keyword('three'))
    );
  }

  readonly system = this.phrase('system', (): Choice<DivisionSystem> =>
    this.OR([
      { ALT: () => this.choiceOf<DivisionSystem>(this.CONSUME(choice.OneWordSystem)) },
      {
        ALT: (): Choice<DivisionSystem> => {
          const root = this.CONSUME(keyword('root'));
          const number = this.CONSUME(NumberToken);
          const span = spanning(spanOf(root), spanOf(number));
          this.ACTION(() => {
            if (!/^[2-5]$/.test(number.image)) {
              this.refuse(span, t('The root divisions are `root 2`, `root 3`, `root 4` and `root 5`.'));
            }
          });
          return { choice: `root ${number.image}` as DivisionSystem, ...span };
        },
      },
      {
        ALT: (): Choice<DivisionSystem> => {
          const two = this.CONSUME(keyword('two'));
          this.CONSUME(keyword('to'));
          const three = this.CONSUME(keyword('three'));
          return { choice: 'two to three', ...spanning(spanOf(two), spanOf(three)) };
        },
      },
    ]),
  );
}
