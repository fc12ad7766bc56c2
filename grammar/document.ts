import { BlockReader, type Loss } from './block-reader.js';
import { SPACE, TAB } from './character-codes.js';
import { SourceLine, splitLines, type PlacedLine } from './lines.js';
import type { Comment, Node, Problem } from './syntax.js';

/** What the lines of a text were read to; each list is in the order of the lines. */
export interface Reading {
  readonly lines: readonly PlacedLine[];
  readonly nodes: readonly Node[];
  readonly detached: readonly Node[];
  readonly problems: readonly Problem[];
  readonly comments: readonly Comment[];
  readonly losses: readonly Loss[];
  /** Whether no line disagrees with those above about where blocks stand. */
  readonly isEven: boolean;
}

/** Longer lines are hardly ever written twice. */
const LONGEST_REPEATED = 30;

/** Nor are those at the margin, which give names. */
function isOftenRepeated(line: string): boolean {
  if (line.length > LONGEST_REPEATED) return false;
  const code = line.charCodeAt(0);
  return code === SPACE || code === TAB || line.length === 0;
}

/** Reads a text. */
export function readDocument(text: string): Reading {
  const reader = new BlockReader();
  const short = new Map<string, SourceLine>();
  // One after the other: what a line is read from need not be kept until all are begun.
  const lines = splitLines(text);
  for (let line = 0; line < lines.length; line++) {
    const words = lines[line] as string;
    const mayRepeat = isOftenRepeated(words);
    const met = mayRepeat ? short.get(words) : undefined;
    const source = met ?? new SourceLine(words);
    if (mayRepeat && !met) short.set(words, source);
    reader.take(source, line);
  }
  reader.end();
  return reader;
}

/**
 * Reads a text that was another before. Blocks at the margin in which nothing changed are taken over, and so are the
 * lines of the others that were there before. It is the same as reading it afresh.
 */
export function readAgain(text: string, before: Reading): Reading {
  const lines = splitLines(text);
  const change = changeOf(lines, before.lines);
  const sourceOf = sources(lines, before.lines, change);
  const first = before.isEven ? marginBefore(change.from, before.lines) : 0;
  const reader = new BlockReader();
  let line = first;
  for (; line < lines.length; line++) {
    const source = sourceOf(line);
    const old = line < change.to ? undefined : before.lines[line - change.added];
    if (before.isEven && old?.level?.depth === 0 && reader.beginsAnew(source.indentation)) break;
    reader.take(source, line);
  }
  reader.end();
  const stretch = { first, rest: line - change.added, added: change.added };
  const { nodes, detached, problems, comments, losses, isEven } = reader;
  keepNodes(nodes, before.nodes.slice(indexAt(before.nodes, first)));
  return {
    lines: before.lines.slice(0, first).concat(reader.lines, before.lines.slice(stretch.rest)),
    nodes: spliced(before.nodes, nodes, stretch, movedNode),
    detached: spliced(before.detached, detached, stretch, movedNode),
    problems: spliced(before.problems, problems, stretch, moved),
    comments: spliced(before.comments, comments, stretch, moved),
    losses: spliced(before.losses, losses, stretch, moved),
    isEven,
  };
}

/** Lines that are not those of before. */
interface Change {
  /** The first of them. */
  readonly from: number;
  /** The first line after them. */
  readonly to: number;
  /** How many lines there are more than before. */
  readonly added: number;
}

function changeOf(lines: readonly string[], before: readonly PlacedLine[]): Change {
  const added = lines.length - before.length;
  const most = Math.min(lines.length, before.length);
  let from = 0;
  while (from < most && lines[from] === before[from]?.source.text) from++;
  let to = lines.length;
  while (to > from && to - added > from && lines[to - 1] === before[to - 1 - added]?.source.text) to--;
  return { from, to, added };
}

/** The source of each line: those of before, where there are any. */
function sources(
  lines: readonly string[],
  before: readonly PlacedLine[],
  { from, to, added }: Change,
): (line: number) => SourceLine {
  const known = new Map<string, SourceLine>();
  for (const { source } of before.slice(from, to - added)) known.set(source.text, source);
  return (line) => {
    if (line < from) return (before[line] as PlacedLine).source;
    if (line >= to) return (before[line - added] as PlacedLine).source;
    const words = lines[line] as string;
    const met = known.get(words);
    if (met) return met;
    const source = new SourceLine(ownCopy(words));
    known.set(words, source);
    return source;
  };
}

/** The same text without the longer one that it was cut out of, which is kept as long as what is cut out of it. */
function ownCopy(text: string): string {
  return ` ${text}`.slice(1);
}

/** The last line at the margin before a line; the first line of all where there is none. */
function marginBefore(line: number, lines: readonly PlacedLine[]): number {
  for (let at = line - 1; at > 0; at--) if (lines[at]?.level?.depth === 0) return at;
  return 0;
}

type OnLine = { readonly line: number };

/** What is read anew of a text. */
interface Stretch {
  /** Its first line. */
  readonly first: number;
  /** The line of before that is the first after it. */
  readonly rest: number;
  readonly added: number;
}

/** A list of before with what was read anew. */
function spliced<Item extends OnLine>(
  before: readonly Item[],
  anew: readonly Item[],
  { first, rest, added }: Stretch,
  move: (item: Item, by: number) => Item,
): readonly Item[] {
  const after = before.slice(indexAt(before, rest));
  return before
    .slice(0, indexAt(before, first))
    .concat(anew, added === 0 ? after : after.map((item) => move(item, added)));
}

/** How many of a list stand above a line. */
function indexAt(list: readonly OnLine[], line: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((list[middle] as OnLine).line < line) low = middle + 1;
    else high = middle;
  }
  return low;
}

function moved<Item extends OnLine>(item: Item, by: number): Item {
  return { ...item, line: item.line + by };
}

function movedNode({ line, lastLine, statement, children }: Node, by: number): Node {
  return {
    line: line + by,
    lastLine: lastLine + by,
    statement,
    children: children.length === 0 ? children : children.map((child) => movedNode(child, by)),
  };
}

/** Puts nodes of before in the place of those that are the same down to the last statement, on the same lines. */
function keepNodes(nodes: Node[], before: readonly Node[]): void {
  let at = 0;
  for (let index = 0; index < nodes.length; index++) {
    const node = nodes[index] as Node;
    while (at < before.length && (before[at] as Node).line < node.line) at++;
    const old = before[at];
    if (old && isSameNode(node, old)) nodes[index] = old;
  }
}

function isSameNode(one: Node, other: Node): boolean {
  if (one.statement !== other.statement || one.line !== other.line || one.lastLine !== other.lastLine)
    return false;
  const { length } = one.children;
  if (length !== other.children.length) return false;
  for (let at = 0; at < length; at++)
    if (!isSameNode(one.children[at] as Node, other.children[at] as Node)) return false;
  return true;
}
