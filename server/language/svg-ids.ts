import type { Range } from 'vscode-languageserver-types';
import { linesOf } from './text.js';

/** Where an id stands in the text of an SVG file, without its quotes. */
export interface PlacedId {
  readonly id: string;
  readonly start: number;
  readonly end: number;
}

/** Comments, sections and instructions, which hold no elements; declarations; and the tags that elements begin with. */
const pieces =
  /<!--[\s\S]*?(?:-->|$)|<!\[CDATA\[[\s\S]*?(?:\]\]>|$)|<\?[\s\S]*?(?:\?>|$)|<![^>]*>|<[\p{L}_](?:[^<>"']|"[^"<]*"|'[^'<]*')*>/gu;
const attribute = /(?<=\s)id\s*=\s*(?:"([^"<]*)"|'([^'<]*)')/gu;

/** The ids of the elements of an SVG file, in the order of the text. Entities in them are not resolved. */
export function placedIds(text: string): readonly PlacedId[] {
  return [...text.matchAll(pieces)]
    .filter(([piece]) => !/^<[!?]/u.test(piece))
    .flatMap(({ 0: tag, index: from }) =>
      // A value of another attribute may hold what looks like an id.
      [...tag.matchAll(attribute)]
        .filter(({ index }) => !isQuoted(tag, index))
        .map((match) => {
          const id = match[1] ?? match[2] ?? '';
          const end = from + match.index + match[0].length - 1;
          return { id, start: end - id.length, end };
        }),
    );
}

function isQuoted(tag: string, index: number): boolean {
  const before = tag.slice(0, index).replace(/"[^"]*"|'[^']*'/gu, '');
  return /["']/u.test(before);
}

/** A stretch of a text as a range of lines. */
export function rangeBetween(text: string, start: number, end: number): Range {
  return { start: placeOf(text, start), end: placeOf(text, end) };
}

function placeOf(text: string, offset: number): Range['start'] {
  const before = linesOf(text.slice(0, offset));
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}

/** What an id of an SVG file may be: a name as XML has it. */
export function isSvgId(text: string): boolean {
  return /^[\p{L}_][\p{L}\p{M}\p{N}_.-]*$/u.test(text);
}

/**
 * True when the file speaks of the id elsewhere: in a link, a style, a script, or a list of names. Whatever it says
 * there would be lost with another id.
 */
export function isSpokenOf(text: string, id: string): boolean {
  const name = id.replace(/[\\^$.*+?()[\]{}|/-]/gu, '\\$&');
  const wordEnd = '(?![\\p{L}\\p{N}_-])';
  const inLink = new RegExp(`#${name}${wordEnd}`, 'u');
  const inAttribute = new RegExp(
    `\\s(?:aria-(?:labelledby|describedby|owns|controls)|begin|end|for)\\s*=\\s*["'][^"']*(?<![\\p{L}\\p{N}_-])${name}${wordEnd}`,
    'u',
  );
  return inLink.test(text) || inAttribute.test(text) || /<script[\s>]/iu.test(text);
}
