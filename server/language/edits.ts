import type { Range, TextEdit } from 'vscode-languageserver-types';
import { linesOf } from './text.js';

/**
 * The few edits that turn one text into another, so that carets, marks and foldings stay where they are. Lines
 * that say the same are set against each other, and edited where they differ.
 *
 * @param lineEnd what ends a line that is put in
 */
export function minimalEdits(
  before: string,
  after: string,
  lineEnd = lineEndOf(before),
): readonly TextEdit[] {
  const old = linesOf(before);
  const now = linesOf(after);
  const matches = [...commonLines(old.map(gist), now.map(gist)), { old: old.length, now: now.length }];
  const edits: TextEdit[] = [];
  let fromOld = 0;
  let fromNow = 0;
  for (const match of matches) {
    const between = editBlock(old, now, fromOld, match.old, fromNow, match.now, lineEnd);
    for (const one of between) edits.push(one);
    const edit = editLine(match.old, old[match.old] ?? '', now[match.now] ?? '');
    if (edit !== undefined) edits.push(edit);
    fromOld = match.old + 1;
    fromNow = match.now + 1;
  }
  return edits;
}

/** The edits that touch lines of the range. */
export function editsWithin(edits: readonly TextEdit[], range: Range): readonly TextEdit[] {
  // A selection that ends at the start of a line does not take that line in.
  const last =
    range.end.character === 0 && range.end.line > range.start.line ? range.end.line - 1 : range.end.line;
  return edits.filter((edit) => edit.range.start.line <= last && edit.range.end.line >= range.start.line);
}

/** What ends the first line of a text; `\n` for a text of one line. */
export function lineEndOf(text: string): string {
  return /\r\n|\n|\r/u.exec(text)?.[0] ?? '\n';
}

/** What a line says, whatever its spacing and its commas: those are what a formatter changes. */
function gist(line: string): string {
  return line.replace(/[\s,]+/gu, '');
}

interface Match {
  readonly old: number;
  readonly now: number;
}

/** Past this many comparisons the lines between common head and tail count as changed one by one. */
const comparisonsLimit = 4_000_000;

/** Which lines to set against each other, in order. */
function commonLines(old: readonly string[], now: readonly string[]): readonly Match[] {
  const shared = Math.min(old.length, now.length);
  let head = 0;
  while (head < shared && old[head] === now[head]) head++;
  let tail = 0;
  while (tail < shared - head && old[old.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  const heads = Array.from({ length: head }, (_, index) => ({ old: index, now: index }));
  const tails = Array.from({ length: tail }, (_, index) => ({
    old: old.length - tail + index,
    now: now.length - tail + index,
  }));
  const rows = old.length - head - tail;
  const columns = now.length - head - tail;
  if (rows === columns || rows * columns > comparisonsLimit) return [...heads, ...tails];
  const between = longestCommon(old.slice(head, head + rows), now.slice(head, head + columns));
  return [...heads, ...between.map((match) => ({ old: match.old + head, now: match.now + head })), ...tails];
}

/** Longest common subsequence by dynamic programming over the two lists. */
function longestCommon(old: readonly string[], now: readonly string[]): readonly Match[] {
  const width = now.length + 1;
  const lengths = new Uint32Array((old.length + 1) * width);
  const at = (row: number, column: number): number => lengths[row * width + column] ?? 0;
  for (let row = old.length - 1; row >= 0; row--) {
    for (let column = now.length - 1; column >= 0; column--) {
      lengths[row * width + column] =
        old[row] === now[column]
          ? at(row + 1, column + 1) + 1
          : Math.max(at(row + 1, column), at(row, column + 1));
    }
  }
  const matches: Match[] = [];
  let row = 0;
  let column = 0;
  while (row < old.length && column < now.length) {
    if (old[row] === now[column]) matches.push({ old: row++, now: column++ });
    else if (at(row + 1, column) >= at(row, column + 1)) row++;
    else column++;
  }
  return matches;
}

/** Edits for a stretch of lines that say something else; as many lines on both sides are edited one by one. */
function editBlock(
  old: readonly string[],
  now: readonly string[],
  oldFrom: number,
  oldTo: number,
  nowFrom: number,
  nowTo: number,
  lineEnd: string,
): readonly TextEdit[] {
  const count = oldTo - oldFrom;
  if (count === nowTo - nowFrom) {
    return Array.from({ length: count }, (_, index) =>
      editLine(oldFrom + index, old[oldFrom + index] ?? '', now[nowFrom + index] ?? ''),
    ).filter((edit) => edit !== undefined);
  }
  const lines = now.slice(nowFrom, nowTo);
  if (oldTo < old.length) {
    return [{ range: wholeLines(oldFrom, oldTo), newText: lines.map((line) => line + lineEnd).join('') }];
  }
  // At the end of the text there is no line below to end at: the line end above goes instead.
  const above = oldFrom - 1;
  const start = above < 0 ? { line: 0, character: 0 } : { line: above, character: old[above]?.length ?? 0 };
  const newText = lines.map((line, index) => (above < 0 && index === 0 ? line : lineEnd + line)).join('');
  const lastLine = old.length - 1;
  return [{ range: { start, end: { line: lastLine, character: old[lastLine]?.length ?? 0 } }, newText }];
}

function wholeLines(from: number, to: number): Range {
  return { start: { line: from, character: 0 }, end: { line: to, character: 0 } };
}

function editLine(line: number, before: string, after: string): TextEdit | undefined {
  if (before === after) return undefined;
  const shared = Math.min(before.length, after.length);
  let head = 0;
  while (head < shared && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < shared - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  // Half a character can't be edited: a pair of surrogates stays together.
  if (head > 0 && isHighSurrogate(before, head - 1)) head--;
  if (tail > 0 && isHighSurrogate(before, before.length - tail - 1)) tail--;
  return {
    range: { start: { line, character: head }, end: { line, character: before.length - tail } },
    newText: after.slice(head, after.length - tail),
  };
}

function isHighSurrogate(text: string, index: number): boolean {
  const unit = text.charCodeAt(index);
  return unit >= 0xd800 && unit <= 0xdbff;
}
