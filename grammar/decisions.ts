import { LLkLookaheadStrategy, type ILookaheadStrategy } from 'chevrotain';

type Choosing = ReturnType<ILookaheadStrategy['buildLookaheadForAlternation']>;
type Going = ReturnType<ILookaheadStrategy['buildLookaheadForOptional']>;

/** How a rule decides what comes next, each place of it by its number: `OPTION2` is at 2. */
export interface Decisions {
  /** Which alternative. */
  readonly or: Choosing[];
  readonly option: Going[];
  readonly many: Going[];
  readonly atLeastOne: Going[];
}

/**
 * Works out how the parser decides, as always, and notes it by rules, so that another reader can decide in the same
 * way.
 */
export class NotedDecisions extends LLkLookaheadStrategy implements ILookaheadStrategy {
  readonly #byRule = new Map<string, Decisions>();

  /** The decisions of a rule; none before the parser has analysed itself. */
  of(rule: string): Decisions {
    const known = this.#byRule.get(rule);
    if (known) return known;
    const decisions = { or: [], option: [], many: [], atLeastOne: [] };
    this.#byRule.set(rule, decisions);
    return decisions;
  }

  override buildLookaheadForAlternation(
    options: Parameters<ILookaheadStrategy['buildLookaheadForAlternation']>[0],
  ): Choosing {
    const decide = super.buildLookaheadForAlternation(options);
    this.of(options.rule.name).or[options.prodOccurrence] = decide;
    return decide;
  }

  override buildLookaheadForOptional(
    options: Parameters<ILookaheadStrategy['buildLookaheadForOptional']>[0],
  ): Going {
    const decide = super.buildLookaheadForOptional(options);
    const { option, many, atLeastOne } = this.of(options.rule.name);
    const places = { Option: option, Repetition: many, RepetitionMandatory: atLeastOne };
    const kind = options.prodType;
    if (kind in places) places[kind as keyof typeof places][options.prodOccurrence] = decide;
    return decide;
  }
}
