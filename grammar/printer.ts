import type { IToken } from 'chevrotain';
import { readDocument } from './document.js';
import { columnsOf, Indentation } from './indentation.js';
import { endOf, lexLine } from './lexer.js';
import { tokensFor } from './line-parser.js';
import type { PlacedLine, SourceLine } from './lines.js';
import { linesOf } from './parse.js';
import type { StatementEntry } from './statements.js';
import type { SyntaxTree } from './syntax.js';
import { CloseBracket, Comma, Dash, DegreeSign, NumberToken, OpenBracket, Percent } from './tokens.js';

export interface FormatOptions {
  /** What one level is indented by. */
  readonly indentation?: string;
}

/** Keywords stand in a gutter of this many columns. */
const gutter = 8;

/**
 * The text as the house sets it: two spaces a level, keywords in a gutter, commas in lists, at most one blank
 * line in a row. Words, numbers and comments stay as written; a line with a problem is only moved to its
 * level. Formatting twice changes nothing more, and the tree stays the same but for columns.
 */
export function format(text: string, options: FormatOptions = {}): string {
  const ending = /\r\n?|\n/.exec(text)?.[0] === '\r\n' ? '\r\n' : '\n';
  const lines = withoutIdleBlanks(printedLines(text, options));
  return lines.length === 0 ? '' : lines.join(ending) + ending;
}

/** The words of one line as the house sets them, without what it is indented by. The tree must come from `parse`. */
export function formatWords(tree: SyntaxTree, line: number): string {
  const placed = linesOf(tree)[line];
  return placed === undefined ? '' : printedContent(placed);
}

function withoutIdleBlanks(lines: readonly string[]): readonly string[] {
  const kept = lines.filter((line, index) => line !== '' || (index > 0 && lines[index - 1] !== ''));
  const first = kept.findIndex((line) => line !== '');
  if (first === -1) return [];
  return kept.at(-1) === '' ? kept.slice(first, -1) : kept.slice(first);
}

function printedLines(text: string, { indentation = '  ' }: FormatOptions): readonly string[] {
  const { lines } = readDocument(text);
  const depths = commentDepths(lines);
  return lines.map((line, index) => {
    const content = printedContent(line);
    if (content === '') return '';
    return indentation.repeat(line.level?.depth ?? depths.get(index) ?? 0) + content;
  });
}

/**
 * A comment alone on its line stands at the level its column says: that of an open block above, or that of
 * the statement below it.
 */
function commentDepths(lines: readonly PlacedLine[]): ReadonlyMap<number, number> {
  const depths = new Map<number, number>();
  const indentation = new Indentation();
  let waiting: number[] = [];
  const settle = (above: readonly number[], below: readonly number[]): void => {
    const columns = below.length > above.length ? below : above;
    for (const index of waiting) {
      const column = columnsOf(lines[index]?.source.indentation ?? '');
      const depth = columns.findLastIndex((open) => open <= column);
      depths.set(index, Math.max(0, depth));
    }
    waiting = [];
  };
  lines.forEach(({ source, level }, index) => {
    if (level === undefined) {
      if (source.comment) waiting.push(index);
      return;
    }
    const above = indentation.columns;
    indentation.next(source.indentation);
    settle(above, indentation.columns);
  });
  settle(indentation.columns, []);
  return depths;
}

function printedContent({ source, entry, reading }: PlacedLine): string {
  const isBroken = reading === undefined || reading.problems.length > 0;
  if (source.opening === undefined || entry === undefined || isBroken) return source.text.trim();
  const statement = printedStatement(source, entry, reading.missingCommas);
  return source.comment ? `${statement}  ${source.comment.text}` : statement;
}

function printedStatement(
  source: SourceLine,
  entry: StatementEntry,
  missingCommas: readonly number[],
): string {
  const tokens = tokensFor(entry, source.text, lexLine(source.text));
  const keywords = tokens.slice(0, entry.words.length);
  const opening = keywords.map((token) => token.image).join(' ');
  const rest = printedTokens(tokens.slice(entry.words.length), new Set(missingCommas));
  if (opening === '' || rest === '') return opening + rest;
  return `${opening.padEnd(gutter - 1)} ${rest}`;
}

function printedTokens(tokens: readonly IToken[], missingCommas: ReadonlySet<number>): string {
  let printed = '';
  let before: IToken | undefined;
  for (const token of tokens) {
    const comma = before && missingCommas.has(endOf(before)) ? ',' : '';
    const gap = before === undefined || (comma === '' && !isApart(before, token)) ? '' : ' ';
    printed += comma + gap + token.image;
    before = token;
  }
  return printed;
}

/** Whether a blank stands between two tokens. A dash after a number is the one of a range, `1-2`. */
function isApart(left: IToken, right: IToken): boolean {
  const next = right.tokenType;
  if (next === Comma || next === CloseBracket || next === Percent || next === DegreeSign) return false;
  if (left.tokenType === OpenBracket) return false;
  if (next === Dash) return left.tokenType !== NumberToken;
  return left.tokenType !== Dash;
}
