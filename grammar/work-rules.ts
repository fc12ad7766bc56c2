import type { IToken } from 'chevrotain';
import { endOf, spanOf } from './lexer.js';
import { ObjectRules } from './object-rules.js';
import type { StatementBody } from './statement-rules.js';
import type {
  Choice,
  Coordinates,
  Layer,
  Place,
  Quantity,
  RuleLimitTerm,
  Sentence,
  Side,
  Word,
} from './syntax.js';
import {
  choice,
  ColourIndex,
  Dash,
  DegreeSign,
  keyword,
  Percent,
  Times,
  Word as WordToken,
} from './tokens.js';
import { spanning } from './phrases.js';

const colourIndex = /^[PN](?:BK|BR|[BGMORVWY])\d+(?::\d+)?$/i;

type PaintParts = Omit<Extract<StatementBody, { kind: 'paint' }>, 'kind' | 'name'>;
type Along = NonNullable<Extract<StatementBody, { kind: 'lead' }>['along']>;

/** The statements about leads, paints, sittings and what surrounds the work, one rule each. */
export abstract class WorkRules extends ObjectRules {
  readonly lead = this.statement('lead', () => {
    this.CONSUME(keyword('lead'));
    const name = this.SUBRULE(this.newName);
    let along: Along | undefined;
    let from: Place | undefined;
    this.OR([
      {
        ALT: () => {
          along = this.SUBRULE(this.alongObject);
          from = this.OPTION1(() => this.SUBRULE1(this.startPlace));
        },
      },
      {
        ALT: () => {
          from = this.SUBRULE2(this.startPlace);
        },
      },
    ]);
    const through = this.OPTION2(() => {
      this.CONSUME(keyword('through'));
      return this.SUBRULE(this.places);
    });
    this.CONSUME(keyword('to'));
    const to = this.SUBRULE(this.place);
    return {
      kind: 'lead',
      name,
      ...(along && { along }),
      ...(from && { from }),
      through: through ?? [],
      to,
    };
  });

  readonly startPlace = this.RULE('startPlace', (): Place => {
    this.CONSUME(keyword('from'));
    return this.SUBRULE(this.place);
  });

  /** `along road`, `along top edge of road`. */
  readonly alongObject = this.RULE('alongObject', (): Along => {
    this.CONSUME(keyword('along'));
    const side = this.OPTION1({
      GATE: () => this.isNext(2, keyword('edge'), keyword('side'), keyword('of')),
      DEF: () => {
        const word = this.choiceOf<Side>(this.CONSUME(choice.Side));
        this.OPTION2(() => this.SUBRULE(this.edgeWord));
        this.CONSUME(keyword('of'));
        return word;
      },
    });
    const object = this.SUBRULE(this.knownName);
    return { object, ...(side && { side }) };
  });

  readonly path = this.statement('path', () => {
    this.CONSUME(keyword('path'));
    return { kind: 'path', stops: this.SUBRULE(this.knownNames) };
  });

  readonly palette = this.statement('palette', () => {
    this.CONSUME(keyword('palette'));
    return { kind: 'palette' };
  });

  readonly paint = this.statement('paint', () => {
    this.CONSUME(keyword('paint'));
    const name = this.SUBRULE(this.newName);
    this.keep({ kind: 'paint', name });
    const index = this.OPTION1({
      GATE: () => colourIndex.test(this.LA(1).image),
      DEF: () => this.SUBRULE(this.colourIndex),
    });
    let parts: PaintParts = { ...(index && { index }) };
    this.ACTION(() => this.keep({ kind: 'paint', name, ...parts }));
    this.MANY(() => {
      const part = this.OR<PaintParts>([
        { ALT: () => ({ full: this.SUBRULE(this.masstone) }) },
        { ALT: () => ({ tint: this.SUBRULE(this.paintedOutTint) }) },
        { ALT: () => ({ temperature: this.SUBRULE(this.temperature) }) },
      ]);
      parts = { ...parts, ...part };
    });
    return { kind: 'paint', name, ...parts };
  });

  readonly colourIndex = this.phrase('colourIndex', (): Word => {
    const token = this.OR({
      IGNORE_AMBIGUITIES: true,
      DEF: [{ ALT: () => this.CONSUME(ColourIndex) }, { ALT: () => this.CONSUME(WordToken) }],
    });
    return this.ACTION(() => {
      this.use(token, 'colour');
      return this.wordOf(token);
    });
  });

  readonly masstone = this.RULE('masstone', () => {
    this.SUBRULE(this.pause);
    this.CONSUME(keyword('full'));
    return this.SUBRULE(this.colourSpec);
  });

  /** `tint #e8a0b0 at 1 to 9`: one part of paint to nine of white. */
  readonly paintedOutTint = this.RULE('paintedOutTint', () => {
    this.SUBRULE(this.pause);
    this.CONSUME(keyword('tint'));
    const colour = this.SUBRULE(this.colourSpec);
    this.CONSUME(keyword('at'));
    const paint = this.SUBRULE1(this.quantity);
    this.CONSUME(keyword('to'));
    const white = this.SUBRULE2(this.quantity);
    return { colour, paint, white };
  });

  readonly temperature = this.RULE('temperature', (): Choice<'warm' | 'cool'> => {
    this.SUBRULE(this.separator);
    return this.choiceOf<'warm' | 'cool'>(this.CONSUME(choice.Temperature));
  });

  readonly mother = this.statement('mother', () => {
    this.CONSUME(keyword('mother'));
    return { kind: 'mother', name: this.SUBRULE(this.knownName) };
  });

  readonly film = this.statement('film', () => {
    this.CONSUME(keyword('film'));
    return { kind: 'film', thickness: this.SUBRULE(this.length) };
  });

  readonly tube = this.statement('tube', () => {
    this.CONSUME(keyword('tube'));
    const millilitres = this.SUBRULE(this.quantity);
    this.CONSUME(keyword('ml'));
    return { kind: 'tube', millilitres };
  });

  readonly sitting = this.statement('sitting', () => {
    this.CONSUME(keyword('sitting'));
    const title = this.SUBRULE(this.sentence);
    this.keep({ kind: 'sitting', title });
    const on = this.OPTION(() => {
      this.CONSUME(keyword('on'));
      return this.SUBRULE(this.date);
    });
    return { kind: 'sitting', title, ...(on && { on }) };
  });

  readonly works = this.statement('works', () => {
    this.CONSUME(keyword('works'));
    return { kind: 'works', names: this.SUBRULE(this.knownNames) };
  });

  readonly layer = this.statement('layer', () => {
    this.CONSUME(keyword('layer'));
    const layer = this.SUBRULE(this.layerName);
    this.keep({ kind: 'layer', layer });
    const body = this.OPTION(() => {
      this.SUBRULE(this.separator);
      return this.choiceOf<'lean' | 'fat'>(this.CONSUME(choice.Body));
    });
    return { kind: 'layer', layer, ...(body && { body }) };
  });

  readonly layerName = this.phrase('layerName', (): Choice<Layer> =>
    this.OR<Choice<Layer>>([
      { ALT: () => this.choiceOf<Layer>(this.CONSUME(choice.OneWordLayer)) },
      {
        ALT: () => {
          const body = this.CONSUME(keyword('body'));
          const colour = this.CONSUME(keyword('colour'));
          return { choice: 'body colour', ...spanning(spanOf(body), spanOf(colour)) };
        },
      },
    ]),
  );

  readonly fat = this.statement('fat', () => {
    this.CONSUME(keyword('fat'));
    return { kind: 'fat', share: this.SUBRULE(this.percentage) };
  });

  readonly task = this.statement('task', () => {
    this.CONSUME(keyword('task'));
    return { kind: 'task', text: this.SUBRULE(this.sentence) };
  });

  readonly photo = this.statement('photo', () => {
    this.CONSUME(keyword('photo'));
    return { kind: 'photo', file: this.SUBRULE(this.sentence) };
  });

  readonly corners = this.statement('corners', () => {
    const opening = this.CONSUME(keyword('corners'));
    const points: Coordinates[] = [];
    this.AT_LEAST_ONE(() => {
      points.push(this.SUBRULE(this.coordinates));
      this.SUBRULE(this.pause);
    });
    this.ACTION(() => {
      if (points.length === 4) return;
      const span = spanning(this.wordOf(opening), points.at(-1) ?? this.wordOf(opening));
      this.report(
        span,
        'incomplete statement',
        'Four corners are needed: upper left, upper right, lower right, lower left.',
      );
      this.refused = true;
    });
    return { kind: 'corners', points };
  });

  readonly grey = this.statement('grey', () => {
    this.CONSUME(keyword('grey'));
    return { kind: 'grey', at: this.SUBRULE(this.coordinates) };
  });

  readonly sketch = this.statement('sketch', () => {
    this.CONSUME(keyword('sketch'));
    return { kind: 'sketch', file: this.SUBRULE(this.sentence) };
  });

  readonly opacity = this.statement('opacity', () => {
    this.CONSUME(keyword('opacity'));
    return { kind: 'opacity', share: this.SUBRULE(this.percentage) };
  });

  readonly due = this.statement('due', () => {
    this.CONSUME(keyword('due'));
    return { kind: 'due', on: this.SUBRULE(this.date) };
  });

  readonly away = this.statement('away', () => {
    this.CONSUME(keyword('away'));
    const from = this.SUBRULE1(this.date);
    const to = this.OPTION(() => {
      this.CONSUME(keyword('to'));
      return this.SUBRULE2(this.date);
    });
    return { kind: 'away', from, ...(to && { to }) };
  });

  readonly grid = this.statement('grid', () => {
    this.CONSUME(keyword('grid'));
    return this.OR<StatementBody>([
      { ALT: () => ({ kind: 'grid', count: this.SUBRULE(this.gridCount) }) },
      {
        ALT: () => {
          this.CONSUME(keyword('every'));
          return { kind: 'grid', every: this.SUBRULE(this.length) };
        },
      },
    ]);
  });

  readonly gridCount = this.phrase(
    'gridCount',
    (): { readonly columns: Quantity; readonly rows: Quantity } => {
      const columns = this.SUBRULE1(this.quantity);
      this.CONSUME(Times);
      return { columns, rows: this.SUBRULE2(this.quantity) };
    },
  );

  readonly allow = this.statement('allow', () => {
    this.CONSUME(keyword('allow'));
    const rule = this.SUBRULE(this.findingName);
    const only = this.OPTION(() => {
      this.CONSUME(keyword('for'));
      return this.OR<{ readonly names: readonly Word[] } | { readonly cue: Sentence }>([
        { ALT: () => ({ names: this.SUBRULE(this.knownNames) }) },
        { ALT: () => ({ cue: this.SUBRULE1(this.sentence) }) },
      ]);
    });
    this.CONSUME(keyword('because'));
    const because = this.SUBRULE2(this.sentence);
    return { kind: 'allow', rule, names: [], ...only, because };
  });

  readonly rule = this.statement('rule', () => {
    this.CONSUME(keyword('rule'));
    const rule = this.SUBRULE(this.findingName);
    const severity = this.OPTION1(() => {
      this.SUBRULE1(this.pause);
      return this.choiceOf<'warning' | 'hint'>(this.CONSUME(choice.Severity));
    });
    const limit = this.OPTION2(() => {
      this.SUBRULE2(this.pause);
      this.CONSUME(keyword('limit'));
      return this.SUBRULE(this.findingLimit);
    });
    return { kind: 'rule', rule, ...(severity && { severity }), ...(limit && { limit }) };
  });

  /** What a rule is measured against, in its own unit: `5%`, `40 degrees`, `2`. */
  readonly findingLimit = this.phrase('findingLimit', (): RuleLimitTerm => {
    const minus = this.OPTION1(() => this.CONSUME(Dash));
    const number = this.SUBRULE(this.mixedNumber);
    const unit = this.OPTION2(() =>
      this.OR([
        { ALT: () => this.CONSUME(Percent) },
        { ALT: () => this.CONSUME(DegreeSign) },
        { ALT: () => this.CONSUME(choice.Degrees) },
      ]),
    );
    return this.ACTION(() => ({
      value: minus ? 0 - number.value : number.value,
      unit: unit === undefined ? 'number' : unit.tokenType === Percent ? 'percent' : 'degrees',
      start: (minus ?? number.first).startOffset,
      end: endOf(unit ?? number.last),
    }));
  });

  /** The name of a finding, one word or several: `even count`. */
  readonly findingName = this.phrase('findingName', (): Word => {
    const words: IToken[] = [this.CONSUME1(WordToken)];
    this.MANY({
      GATE: () => !this.isNext(1, keyword('for'), keyword('because'), keyword('limit'), choice.Severity),
      DEF: () => words.push(this.CONSUME2(WordToken)),
    });
    return this.termOf(words);
  });
}
