import { t } from './localised.js';
import { StatementRules } from './statement-rules.js';
import type { BudgetShare, CanvasSize, Choice, ColourRole, ValueGroup, Word } from './syntax.js';
import { choice, Comma, Dash, keyword, NumberToken, Word as WordToken } from './tokens.js';
import { spanning } from './phrases.js';

/** The statements about the picture as a whole, one rule each. */
export abstract class PictureRules extends StatementRules {
  readonly mahl = this.statement('mahl', () => {
    this.CONSUME(keyword('mahl'));
    const version = this.SUBRULE(this.quantity);
    this.ACTION(() => {
      if (version.value === 1) return;
      this.report(version, 'unknown version', t('This program reads version 1 of the language.'));
    });
    return { kind: 'mahl', version };
  });

  readonly plan = this.statement('plan', () => {
    this.CONSUME(keyword('plan'));
    const title = this.SUBRULE1(this.sentence);
    this.keep({ kind: 'plan', title });
    const by = this.OPTION(() => {
      this.CONSUME(keyword('by'));
      return this.SUBRULE2(this.sentence);
    });
    return { kind: 'plan', title, ...(by && { by }) };
  });

  readonly basedOn = this.statement('basedOn', () => {
    this.CONSUME(keyword('based'));
    this.CONSUME(keyword('on'));
    return { kind: 'based on', file: this.SUBRULE(this.sentence) };
  });

  readonly without = this.statement('without', () => {
    this.CONSUME(keyword('without'));
    return { kind: 'without', names: this.SUBRULE(this.knownNames) };
  });

  readonly concept = this.statement('concept', () => {
    this.CONSUME(keyword('concept'));
    return { kind: 'concept', text: this.SUBRULE(this.sentence) };
  });

  readonly mood = this.statement('mood', () => {
    this.CONSUME(keyword('mood'));
    return { kind: 'mood', text: this.SUBRULE(this.freeText) };
  });

  readonly cue = this.statement('cue', () => {
    this.CONSUME(keyword('cue'));
    const text = this.SUBRULE(this.sentence);
    this.keep({ kind: 'cue', text, carriedBy: [] });
    const carriedBy = this.OPTION(() => {
      this.CONSUME(keyword('carried'));
      this.CONSUME(keyword('by'));
      return this.SUBRULE(this.knownNames);
    });
    return { kind: 'cue', text, carriedBy: carriedBy ?? [] };
  });

  readonly avoid = this.statement('avoid', () => {
    this.CONSUME(keyword('avoid'));
    return { kind: 'avoid', text: this.SUBRULE(this.sentence) };
  });

  readonly note = this.statement('note', () => {
    this.CONSUME(keyword('note'));
    return { kind: 'note', text: this.SUBRULE(this.sentence) };
  });

  readonly canvas = this.statement('canvas', () => {
    this.CONSUME(keyword('canvas'));
    return { kind: 'canvas', size: this.SUBRULE(this.canvasSize) };
  });

  readonly canvasSize = this.phrase('canvasSize', (): CanvasSize => {
    const size = this.OR<CanvasSize>([
      { ALT: () => ({ by: 'extent', extent: this.SUBRULE(this.extent) }) },
      { ALT: () => ({ by: 'stock', stock: this.SUBRULE(this.stockSize) }) },
    ]);
    const orientation = this.OPTION(() => {
      this.SUBRULE(this.pause);
      return this.choiceOf<'upright' | 'landscape'>(this.CONSUME(choice.Orientation));
    });
    return { ...size, ...(orientation && { orientation }) };
  });

  /** `figure 20`, `A3`. */
  readonly stockSize = this.RULE('stockSize', (): Word => {
    const words = [this.CONSUME(WordToken)];
    this.OPTION(() => words.push(this.CONSUME(NumberToken)));
    return this.termOf(words);
  });

  readonly support = this.statement('support', () => {
    this.CONSUME(keyword('support'));
    return { kind: 'support', text: this.SUBRULE(this.freeText) };
  });

  readonly ground = this.statement('ground', () => {
    this.CONSUME(keyword('ground'));
    const colour = this.SUBRULE(this.colourSpec);
    this.keep({ kind: 'ground', colour });
    const role = this.OPTION(() => this.SUBRULE(this.colourRole));
    return { kind: 'ground', colour, ...(role && { role }) };
  });

  readonly medium = this.statement('medium', () => {
    this.CONSUME(keyword('medium'));
    return { kind: 'medium', text: this.SUBRULE(this.freeText) };
  });

  readonly divide = this.statement('divide', () => {
    this.CONSUME(keyword('divide'));
    const systems = [this.SUBRULE1(this.system)];
    this.keep({ kind: 'divide', systems });
    this.MANY(() => {
      this.SUBRULE(this.separator);
      systems.push(this.SUBRULE2(this.system));
    });
    return { kind: 'divide', systems };
  });

  readonly uprights = this.statement('uprights', () => {
    this.CONSUME(keyword('uprights'));
    return { kind: 'uprights', at: this.SUBRULE(this.lengths) };
  });

  readonly levels = this.statement('levels', () => {
    this.CONSUME(keyword('levels'));
    return { kind: 'levels', at: this.SUBRULE(this.lengths) };
  });

  readonly lengths = this.RULE('lengths', () => {
    const lengths = [this.SUBRULE1(this.length)];
    this.MANY(() => {
      this.SUBRULE(this.separator);
      lengths.push(this.SUBRULE2(this.length));
    });
    return lengths;
  });

  readonly focus = this.statement('focus', () => {
    this.CONSUME(keyword('focus'));
    return { kind: 'focus', at: this.SUBRULE(this.place) };
  });

  readonly winBy = this.statement('winBy', () => {
    this.CONSUME(keyword('win'));
    this.CONSUME(keyword('by'));
    const means = [this.choiceOf<'value'>(this.CONSUME1(choice.Means))];
    this.MANY(() => {
      this.SUBRULE(this.separator);
      means.push(this.choiceOf<'value'>(this.CONSUME2(choice.Means)));
    });
    return { kind: 'win by', means };
  });

  readonly horizon = this.statement('horizon', () => {
    this.CONSUME(keyword('horizon'));
    return { kind: 'horizon', at: this.SUBRULE(this.length) };
  });

  readonly scale = this.statement('scale', () => {
    this.CONSUME(keyword('scale'));
    return { kind: 'scale', steps: this.SUBRULE(this.quantity) };
  });

  readonly group = this.statement('group', () => {
    this.CONSUME(keyword('group'));
    const groups = [this.SUBRULE1(this.valueGroup)];
    this.MANY(() => {
      this.SUBRULE(this.separator);
      groups.push(this.SUBRULE2(this.valueGroup));
    });
    return { kind: 'group', groups };
  });

  readonly valueGroup = this.phrase('valueGroup', (): ValueGroup => {
    const name = this.SUBRULE(this.newName);
    const from = this.SUBRULE1(this.quantity);
    const to = this.OPTION(() => {
      this.OR([{ ALT: () => this.CONSUME(Dash) }, { ALT: () => this.CONSUME(keyword('to')) }]);
      return this.SUBRULE2(this.quantity);
    });
    return { name, from, to: to ?? from, ...spanning(name, to ?? from) };
  });

  readonly planes = this.statement('planes', () => {
    this.CONSUME(keyword('planes'));
    const trend = this.choiceOf<'lighten' | 'darken'>(this.CONSUME(choice.Trend));
    this.CONSUME(keyword('with'));
    this.CONSUME(keyword('distance'));
    return { kind: 'planes', trend };
  });

  readonly budget = this.statement('budget', () => {
    this.CONSUME(keyword('budget'));
    const of = this.choiceOf<'value' | 'colour'>(this.CONSUME(choice.BudgetSubject));
    const shares = [this.SUBRULE1(this.budgetShare)];
    this.MANY({
      GATE: () =>
        !this.isNext(1, keyword('within')) && !(this.isNext(1, Comma) && this.isNext(2, keyword('within'))),
      DEF: () => {
        this.SUBRULE(this.separator);
        shares.push(this.SUBRULE2(this.budgetShare));
      },
    });
    this.SUBRULE(this.pause);
    const within = this.OPTION(() => {
      this.CONSUME(keyword('within'));
      return this.SUBRULE(this.percentage);
    });
    return { kind: 'budget', of, shares, ...(within && { within }) };
  });

  readonly budgetShare = this.phrase('budgetShare', (): BudgetShare => {
    const name = this.OR([
      { ALT: () => this.SUBRULE(this.knownName) },
      { ALT: () => this.wordOf(this.CONSUME(NumberToken)) },
    ]);
    const share = this.SUBRULE(this.percentage);
    return { name, share, ...spanning(name, share) };
  });

  readonly wheel = this.statement('wheel', () => {
    this.CONSUME(keyword('wheel'));
    return { kind: 'wheel', wheel: this.choiceOf<'painters' | 'munsell'>(this.CONSUME(choice.Wheel)) };
  });

  readonly colourDefinition = this.statement('colourDefinition', () => {
    this.CONSUME(keyword('colour'));
    const name = this.SUBRULE(this.newName);
    const colour = this.SUBRULE(this.colourSpec);
    this.keep({ kind: 'colour definition', name, colour });
    const role = this.OPTION(() => this.SUBRULE(this.colourRole));
    return { kind: 'colour definition', name, colour, ...(role && { role }) };
  });

  readonly colourRole = this.RULE('colourRole', (): Choice<ColourRole> => {
    this.SUBRULE(this.pause);
    return this.choiceOf<ColourRole>(this.CONSUME(choice.ColourRole));
  });
}
