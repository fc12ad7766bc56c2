import {
  EOF,
  type IOrAlt,
  type IToken,
  type OrMethodOpts,
  type ParserMethod,
  type TokenType,
} from 'chevrotain';
import type { Decisions, NotedDecisions } from './decisions.js';
import type { StatementBody } from './statement-rules.js';
import type { StatementEntry } from './statements.js';
import { WorkRules } from './work-rules.js';

/** What a rule does at one of its places, and under which condition besides what comes next. */
type Action<T> = (() => T) | { readonly DEF: () => T; readonly GATE?: () => boolean };

/** What a line says, and the offsets at which commas are missing in it. */
export interface RightLine {
  readonly body: StatementBody;
  readonly missingCommas: readonly number[];
}

/** What reading ends with where a line is not right; made once, as it tells nothing. */
const NOT_RIGHT = new Error('the line is not right');

const END: IToken = { image: '', startOffset: NaN, tokenType: EOF, tokenTypeIdx: EOF.tokenTypeIdx ?? 1 };

const NONE: readonly number[] = [];

/**
 * Reads lines by the same rules and decisions as the parser of `line-parser.ts`, without all that only a line which is
 * not right needs: nothing is kept for messages, and reading ends at the first thing that does not fit. Nearly all
 * lines are right.
 */
export class LeanParser extends WorkRules {
  private tokens: readonly IToken[] = [];
  /** How many tokens have been read. */
  private taken = 0;
  /** Of the rule that is being read. */
  private decisions: Decisions;

  /** @param noted the decisions of the parser with the same rules, once it has analysed itself */
  constructor(private readonly noted: NotedDecisions) {
    super();
    this.decisions = noted.of('');
  }

  /** The line, or `undefined` where anything about it is not right. */
  readRight(entry: StatementEntry, tokens: readonly IToken[]): RightLine | undefined {
    this.tokens = tokens;
    this.taken = 0;
    this.refused = false;
    this.problems.length = 0;
    this.missingCommas.length = 0;
    try {
      const body = this.ruleNamed(entry.rule)();
      const isRight = !this.refused && this.problems.length === 0 && this.taken === tokens.length;
      if (body === undefined || !isRight) return undefined;
      return { body, missingCommas: this.missingCommas.length > 0 ? [...this.missingCommas] : NONE };
    } catch (error) {
      if (error === NOT_RIGHT) return undefined;
      throw error;
    }
  }

  protected override RULE<F extends () => unknown>(
    name: string,
    read: F,
  ): ParserMethod<Parameters<F>, ReturnType<F>> {
    let own: Decisions | undefined;
    const rule = (): unknown => {
      const outer = this.decisions;
      this.decisions = own ??= this.noted.of(name);
      const result = read();
      this.decisions = outer;
      return result;
    };
    return rule as ParserMethod<Parameters<F>, ReturnType<F>>;
  }

  protected override phrase<T>(name: string, read: () => T): ParserMethod<[], T> {
    return this.RULE<() => T>(name, read);
  }

  protected override statement(name: string, read: () => StatementBody | undefined) {
    return this.RULE<() => StatementBody | undefined>(name, read);
  }

  protected override keep(): void {
    // Only a line that can't be read as a whole is kept in part.
  }

  protected override use(): void {
    // What words stand for is asked of the other parser.
  }

  protected override ACTION<T>(work: () => T): T {
    return work();
  }

  protected override LA(distance: number): IToken {
    return this.tokens[this.taken + distance - 1] ?? END;
  }

  protected override LA_FAST(distance: number): IToken {
    return this.tokens[this.taken + distance - 1] ?? END;
  }

  protected override CONSUME(type: TokenType): IToken {
    const token = this.tokens[this.taken];
    if (token === undefined || !isOf(token, type)) throw NOT_RIGHT;
    this.taken += 1;
    return token;
  }

  protected override CONSUME1(type: TokenType): IToken {
    return this.CONSUME(type);
  }

  protected override CONSUME2(type: TokenType): IToken {
    return this.CONSUME(type);
  }

  protected override SUBRULE<R>(rule: ParserMethod<[], R>): R {
    return rule();
  }

  protected override SUBRULE1<R>(rule: ParserMethod<[], R>): R {
    return rule();
  }

  protected override SUBRULE2<R>(rule: ParserMethod<[], R>): R {
    return rule();
  }

  protected override OPTION<T>(action: Action<T>): T | undefined {
    return this.optionAt(0, action);
  }

  protected override OPTION1<T>(action: Action<T>): T | undefined {
    return this.optionAt(1, action);
  }

  protected override OPTION2<T>(action: Action<T>): T | undefined {
    return this.optionAt(2, action);
  }

  protected override OPTION3<T>(action: Action<T>): T | undefined {
    return this.optionAt(3, action);
  }

  protected override OR<T>(choice: IOrAlt<T>[] | OrMethodOpts<T>): T {
    const alternatives = Array.isArray(choice) ? choice : choice.DEF;
    const index = this.decisions.or[0]?.call(this, alternatives);
    const chosen = index === undefined ? undefined : alternatives[index];
    if (chosen === undefined) throw NOT_RIGHT;
    return chosen.ALT();
  }

  protected override MANY(action: Action<unknown>): void {
    const { many } = this.decisions;
    while (this.goesOn(many[0], action)) run(action);
  }

  protected override AT_LEAST_ONE(action: Action<unknown>): void {
    const { atLeastOne } = this.decisions;
    if (!this.goesOn(atLeastOne[0], action)) throw NOT_RIGHT;
    do run(action);
    while (this.goesOn(atLeastOne[0], action));
  }

  private optionAt<T>(place: number, action: Action<T>): T | undefined {
    return this.goesOn(this.decisions.option[place], action) ? run(action) : undefined;
  }

  private goesOn(decide: Decisions['option'][number] | undefined, action: Action<unknown>): boolean {
    if (typeof action !== 'function' && action.GATE?.() === false) return false;
    return decide?.call(this) === true;
  }
}

function run<T>(action: Action<T>): T {
  return typeof action === 'function' ? action() : action.DEF();
}

function isOf(token: IToken, type: TokenType): boolean {
  return token.tokenTypeIdx === type.tokenTypeIdx || type.categoryMatchesMap?.[token.tokenTypeIdx] === true;
}
