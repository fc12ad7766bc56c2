import fc from 'fast-check';
import type { Position, Range } from 'vscode-languageserver-types';
import { linesOf } from '../../server/language/text.js';
import { typedLine } from '../grammar/texts.js';

/** Something written in place of a stretch of a text. */
export interface Edit {
  /** Where it begins and how far it goes, as parts of the text's lines and of the line, a little beyond both too. */
  readonly line: number;
  readonly column: number;
  readonly linesTaken: number;
  readonly columnsTaken: number;
  readonly written: string;
}

/** Parts, a little beyond the whole too. */
const part = fc.double({ min: 0, max: 1.05, noNaN: true });
export const anEdit: fc.Arbitrary<Edit> = fc.record({
  line: part,
  column: part,
  linesTaken: fc.oneof(
    { weight: 8, arbitrary: fc.constant(0) },
    { weight: 2, arbitrary: fc.constantFrom(1, 2, 7) },
  ),
  columnsTaken: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 12 })),
  written: fc.oneof(
    fc.constantFrom(
      '',
      '',
      ' ',
      '\n',
      '\r\n',
      '\r',
      '"',
      '(',
      ',',
      '#',
      '%',
      '7',
      'a',
      '  ',
      '//',
      '🎨',
      '\ud83c',
    ),
    typedLine.map((line) => `\n${line}\n`),
    typedLine,
  ),
});

/** A place in the text or just beyond it, in the middle of a character now and then. */
export function placeOf(text: string, { line, column }: Pick<Edit, 'line' | 'column'>): Position {
  const lines = linesOf(text);
  const row = Math.floor(line * lines.length);
  return { line: row, character: Math.floor(column * ((lines[row]?.length ?? 0) + 1)) };
}

/** The stretch of a text that an edit takes. */
export function rangeIn(text: string, edit: Edit): Range {
  const start = placeOf(text, edit);
  const end =
    edit.linesTaken > 0
      ? { line: start.line + edit.linesTaken, character: edit.columnsTaken }
      : { line: start.line, character: start.character + edit.columnsTaken };
  return { start, end };
}

/** The text with a range of it replaced; places outside of it are those nearest inside, as the protocol has it. */
export function replaced(text: string, { start, end }: Range, written: string): string {
  const [from, to] = [offsetOf(text, start), offsetOf(text, end)];
  return text.slice(0, Math.min(from, to)) + written + text.slice(Math.max(from, to));
}

function offsetOf(text: string, { line, character }: Position): number {
  const begins = [0, ...[...text.matchAll(/\r\n|\n|\r/gu)].map((match) => match.index + match[0].length)];
  const begin = begins[line];
  if (begin === undefined) return text.length;
  const next = begins[line + 1] ?? text.length;
  const row = text.slice(begin, next).replace(/[\r\n]+$/u, '');
  return begin + Math.min(character, row.length);
}
