import { createToken, EmbeddedActionsParser, Lexer } from 'chevrotain';
import { blocksOf } from '../documents/blocks.js';
import type { Contestant } from './contestant.js';

/** A word, number, sign or pair of brackets of a statement. */
export type Item = string | number | readonly Item[];

export interface Statement {
  readonly start: number;
  readonly items: readonly Item[];
  readonly children: readonly Statement[];
}

const Space = createToken({ name: 'Space', pattern: /\s+/, group: Lexer.SKIPPED });
const Comment = createToken({ name: 'Comment', pattern: /\/\/[^\n]*/, group: Lexer.SKIPPED });
const Word = createToken({ name: 'Word', pattern: /[A-Za-z_](?:-?\w+)*/ });
const Amount = createToken({ name: 'Amount', pattern: /-?\d+(?:\.\d+)?%?/ });
const Text = createToken({ name: 'Text', pattern: /"[^"\n]*"/ });
const Hex = createToken({ name: 'Hex', pattern: /#[0-9a-f]+/ });
const Sign = createToken({ name: 'Sign', pattern: /[,:-]/ });
const OpenPair = createToken({ name: 'OpenPair', pattern: /\(/ });
const ClosePair = createToken({ name: 'ClosePair', pattern: /\)/ });
const Open = createToken({ name: 'Open', pattern: /{/ });
const Close = createToken({ name: 'Close', pattern: /}/ });
const End = createToken({ name: 'End', pattern: /;/ });
const tokens = [Space, Comment, Word, Amount, Text, Hex, Sign, OpenPair, ClosePair, Open, Close, End];

const lexer = new Lexer(tokens, { positionTracking: 'onlyOffset', ensureOptimizations: true });

class BlockParser extends EmbeddedActionsParser {
  constructor() {
    super(tokens, { recoveryEnabled: false });
    this.performSelfAnalysis();
  }

  private alternatives: { ALT: () => Item }[] | undefined;

  readonly statements = this.RULE('statements', (): Statement[] => {
    const statements: Statement[] = [];
    this.MANY(() => void statements.push(this.SUBRULE(this.statement)));
    return statements;
  });

  readonly statement = this.RULE('statement', (): Statement => {
    const start = this.LA(1).startOffset;
    const items: Item[] = [];
    this.AT_LEAST_ONE(() => void items.push(this.SUBRULE(this.item)));
    const children = this.OR([
      { ALT: () => this.CONSUME(End) && [] },
      {
        ALT: () => {
          this.CONSUME(Open);
          const inner = this.SUBRULE(this.statements);
          this.CONSUME(Close);
          return inner;
        },
      },
    ]);
    return { start, items, children };
  });

  readonly item = this.RULE('item', (): Item =>
    this.OR(
      (this.alternatives ??= [
        { ALT: () => this.CONSUME(Word).image },
        { ALT: () => amount(this.CONSUME(Amount).image) },
        { ALT: () => this.CONSUME(Text).image.slice(1, -1) },
        { ALT: () => this.CONSUME(Hex).image },
        { ALT: () => this.CONSUME(Sign).image },
        { ALT: () => this.SUBRULE(this.pair) },
      ]),
    ),
  );

  readonly pair = this.RULE('pair', (): Item => {
    const items: Item[] = [];
    this.CONSUME(OpenPair);
    this.MANY(() => void items.push(this.SUBRULE(this.item)));
    this.CONSUME(ClosePair);
    return items;
  });
}

function amount(image: string): number {
  return image.endsWith('%') ? Number(image.slice(0, -1)) / 100 : Number(image);
}

const parser = new BlockParser();

/** @returns what the text says, and how many problems it has */
export function readBlocks(text: string): {
  readonly statements: readonly Statement[];
  readonly problems: number;
} {
  const { tokens: found, errors } = lexer.tokenize(text);
  parser.input = found;
  const statements = parser.statements();
  return { statements, problems: errors.length + parser.errors.length };
}

/** A parser of words, numbers and braces, on the library that ours is made with. */
export const bareBlocks: Contestant = {
  name: 'chevrotain, bare blocks',
  does: 'parse',
  document: blocksOf,
  read: (text) => readBlocks(text).problems,
};
