import type { Node, NodeOf, StatementKind, StatementOf } from '../../grammar/index.js';
import { isKind, t } from '../../grammar/index.js';
import type { Location, Stated } from './plan.js';
import { locate, type Problems } from './problems.js';

const NONE: readonly never[] = [];

/** All nodes of a kind among `nodes`, in the order of the text. */
export function every<K extends StatementKind>(
  nodes: readonly Node[],
  kind: K,
): readonly (Node & NodeOf<K>)[] {
  let found: (Node & NodeOf<K>)[] | undefined;
  for (const node of nodes) if (isKind(node, kind)) (found ??= []).push(node);
  return found ?? NONE;
}

/** The one node of a kind; of several the last one counts, and the others are warned about. */
export function single<K extends StatementKind>(
  nodes: readonly Node[],
  kind: K,
  problems: Problems,
): (Node & NodeOf<K>) | undefined {
  let last: (Node & NodeOf<K>) | undefined;
  let isRepeated = false;
  for (const node of nodes) {
    if (!isKind(node, kind)) continue;
    isRepeated = last !== undefined;
    last = node;
  }
  return isRepeated ? lastOf(every(nodes, kind), problems) : last;
}

/** The last of several statements that say the same thing; the others are warned about. */
export function lastOf<N extends Node>(nodes: readonly N[], problems: Problems): N | undefined {
  const last = nodes.at(-1);
  if (!last) return undefined;
  for (const node of nodes.slice(0, -1)) {
    problems.warn(
      'repeated statement',
      t(
        '`{0}` is given again on line {1}; this one does not count.',
        node.statement.keyword.text,
        last.line + 1,
      ),
      statementLocation(node),
      { related: [{ location: statementLocation(last), message: t('This one counts.') }] },
    );
  }
  return last;
}

export function statementLocation(node: Pick<Node, 'line' | 'statement'>): Location {
  return locate(node, node.statement);
}

/** The lines of a block in the plan's own text. */
export function ownLines({ file, line: first, lastLine: last }: Node): {
  readonly lines?: { readonly first: number; readonly last: number };
} {
  return file === undefined ? { lines: { first, last } } : {};
}

type SentenceKind = 'concept' | 'mood' | 'avoid' | 'note' | 'support' | 'medium' | 'task';

type Sentenced = { readonly line: number; readonly statement: StatementOf<SentenceKind> };

/** The sentences of statements such as `note`, with where they stand. */
export function sentencesOf(nodes: readonly Sentenced[]): readonly Stated<string>[] {
  return nodes.length === 0 ? NONE : nodes.map(sentenceAt);
}

/** The sentence of a statement such as `concept` or `note`, with where it stands. */
export function sentenceOf(node: Sentenced | undefined): Stated<string> | undefined {
  return node && sentenceAt(node);
}

function sentenceAt(node: Sentenced): Stated<string> {
  return { value: node.statement.text.value, location: locate(node, node.statement.text) };
}

/** The lines that could not be read: of the plan itself under `undefined`, of those it builds on under their paths. */
export type FaultyLines = ReadonlyMap<string | undefined, ReadonlySet<number>>;

/**
 * Whether a line of a statement's block could not be read, here or in what it changes of another plan.
 *
 * @param skipped how many lines at the start of the block do not count
 */
export function hasFaultyLine(node: Node, skipped: number, faultyLines: FaultyLines): boolean {
  const { file, line: start, lastLine, changes } = node;
  const lines = faultyLines.get(file);
  if (lines !== undefined && lines.size > 0)
    for (let line = start + skipped; line <= lastLine; line++) if (lines.has(line)) return true;
  return changes !== undefined && hasFaultyLine(changes, skipped, faultyLines);
}

/** What a statement says, or else what the one says that it changes, with the statement that says it. */
export function said<K extends StatementKind, T>(
  node: Node & NodeOf<K>,
  ask: (statement: StatementOf<K>) => T | undefined,
): { readonly value: T; readonly node: Node } | undefined {
  const value = ask(node.statement);
  if (value !== undefined) return { value, node };
  const { changes } = node;
  return changes?.statement.kind === node.statement.kind ? said(changes as Node & NodeOf<K>, ask) : undefined;
}
