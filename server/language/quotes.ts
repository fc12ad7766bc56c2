import { inQuotes, type Span } from '../../grammar/index.js';

/**
 * Where the words of a sentence stand in its line: without its quotes, of which the second is missing while it is
 * written.
 */
export function withinQuotes(line: string, { start, end }: Span): Span {
  const opening = line.charAt(start);
  if (opening !== '"' && opening !== '“') return { start, end };
  const written = line.slice(start + 1, end);
  const [, escapes = '', last] = /(\\*)([^\\])$/u.exec(written) ?? [];
  // Behind an odd number of backslashes a quote is one of the words.
  const isClosed = last === (opening === '“' ? '”' : '"') && escapes.length % 2 === 0;
  return { start: start + 1, end: isClosed ? end - 1 : end };
}

/** A text as it is written within the quotes that open right before a place in a line. */
export function writtenWithin(line: string, start: number, text: string): string {
  const isCurly = line.charAt(start - 1) === '“';
  return isCurly ? text.replace(/[”\\]/gu, '\\$&') : inQuotes(text).slice(1, -1);
}
