import type { Position, Range } from 'vscode-languageserver-types';
import type { Span } from '../../grammar/index.js';
import type { OwnLocation } from '../plan/plan.js';

/** The lines of a text without their ends, counted as the protocol counts them: `\n`, `\r\n` and `\r` end a line. */
export function linesOf(text: string): readonly string[] {
  return text.split(/\r\n|\n|\r/u);
}

/** A place of the plan as the protocol writes it: both count from 0, in UTF-16 code units. */
export function rangeOf({ line, start, end }: OwnLocation): Range {
  return { start: { line, character: start }, end: { line, character: end } };
}

/** The range between two characters. */
export function emptyRangeAt(line: number, character: number): Range {
  return rangeOf({ line, start: character, end: character });
}

/** True when the caret touches the span: before, in, or right behind it. */
export function touches(span: Span, column: number): boolean {
  return span.start <= column && column <= span.end;
}

/** Whether a line or a place lies in the range; an empty range lies where it stands. */
export function overlaps(location: OwnLocation, range: Range): boolean {
  const startsBeforeEnd =
    location.line < range.end.line ||
    (location.line === range.end.line && location.start <= range.end.character);
  const endsAfterStart =
    location.line > range.start.line ||
    (location.line === range.start.line && location.end >= range.start.character);
  return startsBeforeEnd && endsAfterStart;
}

/** The nearest place that the text has; clients send places that are gone, or never were. */
export function clampPosition(lines: readonly string[], { line, character }: Position): Position {
  const last = lines.length - 1;
  if (line > last) return { line: last, character: lines[last]?.length ?? 0 };
  const row = Math.max(0, line);
  return { line: row, character: Math.min(Math.max(0, character), lines[row]?.length ?? 0) };
}
