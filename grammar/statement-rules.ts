import { PlaceRules } from './places.js';
import type { Statement, StatementBase } from './syntax.js';

type WithoutBase<S> = S extends unknown ? Omit<S, keyof StatementBase> : never;

/** A statement without its place in the line and its opening word, which the reader of the line adds. */
export type StatementBody = WithoutBase<Statement>;

/** What every rule for a statement shares: the part of it that is kept when the rest cannot be read. */
export abstract class StatementRules extends PlaceRules {
  /** What is known of the statement so far, kept if the rest of the line cannot be read. */
  protected draft: StatementBody | undefined;

  protected statement(name: string, read: () => StatementBody | undefined) {
    return this.RULE(name, read, { recoveryValueFunc: () => this.draft });
  }

  protected keep(draft: StatementBody): void {
    this.draft = draft;
  }

  /** The rule that reads a statement, by its name. */
  protected ruleNamed(name: string): () => StatementBody | undefined {
    const rule: unknown = Reflect.get(this, name);
    if (typeof rule !== 'function') throw new Error(`the grammar has no rule ${name}`);
    return () => rule.call(this) as StatementBody | undefined;
  }
}
