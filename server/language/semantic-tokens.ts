import { SemanticTokenTypes, type Range, type SemanticTokensEdit } from 'vscode-languageserver-types';
import {
  classify,
  statements,
  walk,
  type ClassifiedText,
  type Statement,
  type TextClass,
} from '../../grammar/index.js';
import type { NameKind } from './names.js';
import type { Snapshot } from './snapshot.js';
import { legend } from './token-legend.js';

/** The tokens of the lines that the range touches, or of all, as the protocol packs them: five numbers each. */
export function semanticTokens({ tree, names, lines }: Snapshot, range?: Range): readonly number[] {
  const kinds = new Map(
    names.definitions.map(({ kind, location }) => [`${location.line} ${location.start}`, kind]),
  );
  const statementAt = statementsByLine(tree);
  let place = 0;
  let lineOfPlace = -1;
  const data: number[] = [];
  let last = { line: 0, start: 0 };
  for (const span of classify(tree, range?.start.line, range?.end.line)) {
    const kind = span.class === 'definition' ? kinds.get(`${span.line} ${span.start}`) : undefined;
    const statement = statementAt.get(span.line);
    // The 20 of `figure 20` is a figure to the eye.
    const isDigits = span.class === 'choice' && /^\d/u.test(lines[span.line]?.slice(span.start) ?? '');
    // Where a budget of values names groups, one of colours has the fixed words of their roles.
    const isRole =
      span.class === 'reference' && statement?.kind === 'budget' && statement.of.choice === 'colour';
    place = span.line === lineOfPlace ? place + 1 : 0;
    lineOfPlace = span.line;
    const joins = span.class === 'keyword' && statement !== undefined && place >= openingWords(statement);
    const type = joins
      ? SemanticTokenTypes.operator
      : typeOf(isDigits ? 'number' : isRole ? 'choice' : span.class, kind);
    if (type === undefined || span.end <= span.start) continue;
    const start = span.line === last.line ? span.start - last.start : span.start;
    data.push(span.line - last.line, start, span.end - span.start, indexOf(type), modifiersOf(span, kind));
    last = span;
  }
  return data;
}

const wordCounts = new Map(statements.map(({ kind, words }) => [kind, words.length]));

/** How many words open a statement; those behind them only hold it together. */
function openingWords({ kind }: Statement): number {
  return wordCounts.get(kind) ?? 1;
}

function statementsByLine({ nodes, detached }: Snapshot['tree']): ReadonlyMap<number, Statement> {
  const byLine = new Map<number, Statement>();
  walk([...nodes, ...detached], ({ line, statement }) => byLine.set(line, statement));
  return byLine;
}

/** The one edit that turns the numbers of one answer into those of the next; none when they are the same. */
export function tokensEdits(
  before: readonly number[],
  after: readonly number[],
): readonly SemanticTokensEdit[] {
  const shared = Math.min(before.length, after.length);
  let head = 0;
  while (head < shared && before[head] === after[head]) head++;
  if (head === before.length && head === after.length) return [];
  let tail = 0;
  while (tail < shared - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  const data = after.slice(head, after.length - tail);
  return [{ start: head, deleteCount: before.length - head - tail, ...(data.length > 0 ? { data } : {}) }];
}

/** An object, lead or paint that is named is set apart as in the TextMate grammar; other names are all alike there. */
function typeOf(found: TextClass, kind: NameKind | undefined): SemanticTokenTypes | undefined {
  switch (found) {
    case 'keyword':
      return SemanticTokenTypes.keyword;
    case 'unit':
      return SemanticTokenTypes.operator;
    case 'sentence':
      return SemanticTokenTypes.string;
    case 'number':
    case 'date':
      return SemanticTokenTypes.number;
    case 'comment':
      return SemanticTokenTypes.comment;
    case 'definition':
      return kind === 'object' || kind === 'lead' || kind === 'paint'
        ? SemanticTokenTypes.type
        : SemanticTokenTypes.variable;
    case 'reference':
      return SemanticTokenTypes.variable;
    case 'choice':
    case 'colour':
      return SemanticTokenTypes.enumMember;
  }
}

function indexOf(type: SemanticTokenTypes): number {
  return legend.tokenTypes.indexOf(type);
}

/** A colour or a paint stays as it is; what uses it only speaks of it. */
function modifiersOf({ class: found }: ClassifiedText, kind: NameKind | undefined): number {
  const declaration = found === 'definition' ? 1 : 0;
  const readonly = found === 'colour' || kind === 'colour' || kind === 'paint' ? 2 : 0;
  return declaration | readonly;
}
