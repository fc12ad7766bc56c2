import { objectStatements } from './object-statements.js';
import { pictureStatements } from './picture-statements.js';
import type { StatementKind } from './syntax.js';
import { workStatements } from './work-statements.js';

/** Where a statement can stand: at the left margin, or indented under one of these. */
export type Block = 'plan' | BlockStatement;

export type BlockStatement =
  'canvas' | 'divide' | 'focus' | 'scale' | 'object' | 'shape' | 'palette' | 'sitting' | 'photo' | 'sketch';

export interface StatementEntry {
  readonly kind: StatementKind;
  /** The words that open the line; empty for a line of points, which has none. */
  readonly words: readonly string[];
  /** Name of the rule in the grammar that reads the line. */
  readonly rule: string;
  readonly in: readonly Block[];
  /** What it says, in one line. */
  readonly meaning: string;
  /** How it is written; `NAME`, `PLACE` and other capitals stand for what the painter fills in. */
  readonly form: string;
  /** What holds where the statement is left out. */
  readonly byDefault?: string;
}

/**
 * Every statement of the language. Dispatch, messages about misplaced lines, completion and the tests of the
 * reference all read this one table.
 */
export const statements: readonly StatementEntry[] = [
  ...pictureStatements,
  ...objectStatements,
  ...workStatements,
];

const blocks: ReadonlySet<string> = new Set(statements.flatMap((entry) => entry.in));

const byBlockAndWord = new Map<Block, Map<string, StatementEntry>>();
for (const entry of statements) {
  const word = entry.words[0] ?? '';
  for (const block of entry.in) {
    const byWord = byBlockAndWord.get(block) ?? new Map<string, StatementEntry>();
    byBlockAndWord.set(block, byWord);
    if (!byWord.has(word)) byWord.set(word, entry);
  }
}

/** Whether other statements can be indented under this one. */
export function opensBlock(kind: StatementKind | 'plan'): kind is BlockStatement {
  return kind !== 'plan' && blocks.has(kind);
}

/** The statement that `word` (in canonical form) opens in `block`; `''` stands for a line of points. */
export function statementIn(block: Block, word: string): StatementEntry | undefined {
  return byBlockAndWord.get(block)?.get(word);
}

/** Every statement that can stand in `block`, in the order of the reference. */
export function statementsIn(block: Block): readonly StatementEntry[] {
  return statements.filter((entry) => entry.in.includes(block));
}

/** Every statement that `word` opens anywhere. */
export function statementsOpenedBy(word: string): readonly StatementEntry[] {
  return statements.filter((entry) => entry.words[0] === word);
}
