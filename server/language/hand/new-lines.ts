import type { Node, Statement } from '../../../grammar/index.js';
import { blockIndent } from '../../findings/text-changes.js';
import { every } from '../../plan/select.js';
import { lineEndOf } from '../edits.js';
import type { Snapshot } from '../snapshot.js';
import { siblingsIn, spacedAs } from './as-written.js';
import type { Attempt } from './attempt.js';

const USUAL_INDENT = '  ';
/** What a plan says of the picture as a whole comes first, and this after the objects. */
const AFTER_OBJECTS: ReadonlySet<Statement['kind']> = new Set([
  'lead',
  'path',
  'palette',
  'sitting',
  'due',
  'away',
  'sketch',
  'grid',
  'allow',
  'rule',
]);

/** A statement at the left margin with the lines under it; each line is a keyword and its words. */
export interface NewBlock {
  readonly first: string;
  readonly under: readonly string[];
  /** Lines that go on with the last of those, indented further. */
  readonly further?: readonly string[];
  /** Right behind the keyword of the first line, to be selected. */
  readonly name: string;
}

/** An object after the last one, or before what comes after objects. */
export function newObject(snapshot: Snapshot, block: NewBlock): Attempt {
  const last = every(snapshot.tree.nodes, 'object').at(-1);
  return last ? after(snapshot, last, block, isApart(snapshot, last)) : beforeTheRest(snapshot, block);
}

/** A lead after the last one, or after the last object. */
export function newLead(snapshot: Snapshot, block: NewBlock): Attempt {
  const leads = every(snapshot.tree.nodes, 'lead');
  const last = leads.at(-1);
  if (last) return after(snapshot, last, block, leads.length > 1 && isApart(snapshot, last));
  return newObject(snapshot, block);
}

/** The `focus` line, behind the division of the canvas or the canvas itself where these are stated. */
export function newFocusLine(snapshot: Snapshot, words: string): Attempt {
  const { nodes } = snapshot.tree;
  const above = every(nodes, 'divide').at(-1) ?? every(nodes, 'canvas').at(-1);
  const block: NewBlock = { first: `focus ${words}`, under: [], name: words };
  return above ? after(snapshot, above, block, false) : beforeTheRest(snapshot, block);
}

function beforeTheRest(snapshot: Snapshot, block: NewBlock): Attempt {
  const { nodes } = snapshot.tree;
  const { lines } = snapshot;
  const next = nodes.find(({ statement }) => AFTER_OBJECTS.has(statement.kind));
  const apart = isWideSet(snapshot);
  if (!next) {
    const end = lines.findLastIndex((line) => line.trim() !== '');
    return end < 0
      ? written(snapshot, { line: 0, column: 0 }, [], block, nodes)
      : afterLine(snapshot, end, block, apart, nodes);
  }
  const first = firstOf(next, lines);
  const lineEnd = lineEndOf(snapshot.text);
  return written(snapshot, { line: first, column: 0 }, [], block, nodes, apart ? lineEnd : '');
}

function after(snapshot: Snapshot, above: Node, block: NewBlock, apart: boolean): Attempt {
  let last = above.lastLine;
  // A remark at the end of a block belongs to it.
  while (/^[ \t]+\/\//u.test(snapshot.lines[last + 1] ?? '')) last++;
  return afterLine(snapshot, last, block, apart, [above]);
}

function afterLine(
  snapshot: Snapshot,
  line: number,
  block: NewBlock,
  apart: boolean,
  beside: readonly Node[],
): Attempt {
  const { lines } = snapshot;
  const blank = apart ? [''] : [];
  if (line + 1 < lines.length) return written(snapshot, { line: line + 1, column: 0 }, blank, block, beside);
  // The last line has no end yet.
  const end = { line, column: lines[line]?.length ?? 0 };
  return written(snapshot, end, ['', ...blank], block, beside, '', false);
}

/** @param beside statements set as this one is to be */
function written(
  { lines, text }: Snapshot,
  at: { readonly line: number; readonly column: number },
  before: readonly string[],
  { first, under, further = [], name }: NewBlock,
  beside: readonly Node[],
  behind = '',
  isEnded = true,
): Attempt {
  const lineEnd = lineEndOf(text);
  const parent = beside.findLast(({ children }) => children.length > 0);
  const indent = parent ? blockIndent(parent, lines) : USUAL_INDENT;
  const opening = spacedAs(first, beside, lines);
  const column = parent ? siblingsIn(parent) : beside;
  const all = [
    ...before,
    opening,
    ...under.map((line) => indent + spacedAs(line, column, lines)),
    ...further.map((line) => indent + indent + line),
  ];
  // The name stands right behind the keyword.
  const start = /^\S+\s+/u.exec(opening)?.[0].length ?? 0;
  return {
    kind: 'new',
    change: { from: at, to: at, text: all.join(lineEnd) + (isEnded ? lineEnd : '') + behind },
    name: { line: before.length, start, end: start + name.length },
  };
}

/** Whether a blank line stands above a block. */
function isApart({ lines }: Snapshot, node: Node): boolean {
  const first = firstOf(node, lines);
  return first > 0 && (lines[first - 1] ?? '').trim() === '';
}

function isWideSet({ lines, tree }: Snapshot): boolean {
  const [first] = tree.nodes;
  const last = tree.nodes.at(-1);
  return lines.slice(first?.line, last?.line).some((line) => line.trim() === '');
}

/** The line where a block starts, with the remarks right above it. */
function firstOf({ line }: Node, lines: readonly string[]): number {
  let first = line;
  while (first > 0 && /^\/\//u.test(lines[first - 1] ?? '')) first--;
  return first;
}
