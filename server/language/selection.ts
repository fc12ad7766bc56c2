import type { Position, Range, SelectionRange } from 'vscode-languageserver-types';
import { classify, type Node, type Span } from '../../grammar/index.js';
import { pathTo } from './places.js';
import type { Snapshot } from './snapshot.js';
import { withinQuotes } from './quotes.js';
import { emptyRangeAt, rangeOf, touches } from './text.js';

/**
 * What a selection grows to at each place, from the word on: its part of the statement, the statement, its block, the
 * plan.
 */
export function selectionRanges(
  snapshot: Snapshot,
  positions: readonly Position[],
): readonly SelectionRange[] {
  return positions.map((position) => selectionAt(snapshot, position));
}

function selectionAt({ tree, lines }: Snapshot, { line, character }: Position): SelectionRange {
  const path = pathTo(tree.nodes, line);
  const own = path.findLast((node) => node.line === line);
  const spans = [
    ...classify(tree, line, line).flatMap((span) =>
      span.class === 'sentence' ? [withinQuotes(lines[line] ?? '', span), span] : [span],
    ),
    ...(own === undefined ? [] : spansWithin(own.statement)),
    { start: indentOf(lines[line] ?? ''), end: (lines[line] ?? '').trimEnd().length },
  ].filter((span) => span.end > span.start && touches(span, character));
  const last = lines.length - 1;
  const ranges: readonly Range[] = [
    ...spans.map(({ start, end }) => rangeOf({ line, start, end })),
    ...path.toReversed().flatMap((node) => (node.lastLine > node.line ? [blockOf(node, lines)] : [])),
    { start: { line: 0, character: 0 }, end: { line: last, character: lines[last]?.length ?? 0 } },
  ];
  return nested(ranges) ?? { range: emptyRangeAt(line, character) };
}

/** Each in the next larger that holds it; what only overlaps is left out. */
function nested(ranges: readonly Range[]): SelectionRange | undefined {
  const chain: Range[] = [];
  for (const range of [...ranges].sort((a, b) => extent(a) - extent(b))) {
    const inner = chain.at(-1);
    if (inner === undefined || (holds(range, inner) && !isSame(range, inner))) chain.push(range);
  }
  return chain.reduceRight<SelectionRange | undefined>(
    (parent, range) => (parent === undefined ? { range } : { range, parent }),
    undefined,
  );
}

/** Lines count more than any number of characters in one. */
function extent({ start, end }: Range): number {
  return (end.line - start.line) * 1e6 + (end.character - start.character);
}

function holds(outer: Range, inner: Range): boolean {
  const isBefore = (a: Position, b: Position): boolean =>
    a.line < b.line || (a.line === b.line && a.character <= b.character);
  return isBefore(outer.start, inner.start) && isBefore(inner.end, outer.end);
}

function isSame(one: Range, other: Range): boolean {
  return holds(one, other) && holds(other, one);
}

function blockOf({ line, lastLine, statement }: Node, lines: readonly string[]): Range {
  return {
    start: { line, character: statement.start },
    end: { line: lastLine, character: lines[lastLine]?.length ?? 0 },
  };
}

/** Everything in a statement that has a place of its own, however deep. */
function spansWithin(value: unknown): readonly Span[] {
  if (Array.isArray(value)) return value.flatMap(spansWithin);
  if (typeof value !== 'object' || value === null) return [];
  const own = isSpan(value) ? [{ start: value.start, end: value.end }] : [];
  return [...own, ...Object.values(value).flatMap(spansWithin)];
}

function isSpan(value: object): value is Span {
  return (
    'start' in value && typeof value.start === 'number' && 'end' in value && typeof value.end === 'number'
  );
}

function indentOf(text: string): number {
  return text.length - text.trimStart().length;
}
