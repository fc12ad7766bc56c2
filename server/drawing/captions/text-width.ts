import { memoise } from '../../plan/colour/memo.js';

const NARROW = new Set("iljtfrI.,:;'|!()[]-· ");
const BROAD = new Set('mwMW@%—…');

/** Fullwidth and ideographic scripts and most emoji; ranges after Unicode Standard Annex 11, simplified. */
const WIDE =
  /[\u1100-\u115F\u2E80-\uA4CF\uA960-\uA97F\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\u{1F000}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;
const MARK = /[\p{Mn}\p{Me}\p{Cf}]/u;
const UPPER = /\p{Lu}/u;

/** The broadest serif that a title is set in where its own is missing, upright or italic, is wider by this much. */
export const SERIF_WIDTH = 1.1;

/** Bold letters are wider by about this much. */
export const BOLD_WIDTH = 1.1;

/**
 * About how wide a line of text will be, in the unit of `size`. No font can be asked, because the drawing is composed
 * where there may be none, so this is a broad humanist sans serif: a little too wide for most fonts, which leaves air.
 */
export function textWidth(text: string, size: number): number {
  return emsAfter(0, text) * size;
}

/** So many ems and then a text. */
function emsAfter(ems: number, text: string): number {
  let sum = ems;
  for (const character of text) sum += characterWidth(character);
  return sum;
}

/** The width of what nearly all text is written with. */
const usual = new Map<string, number>();
const USUAL = '\u2100';

function characterWidth(character: string): number {
  const known = usual.get(character);
  if (known !== undefined) return known;
  const width = widthOf(character);
  if (character < USUAL) usual.set(character, width);
  return width;
}

function widthOf(character: string): number {
  if (MARK.test(character)) return 0;
  if (NARROW.has(character)) return 0.33;
  if (BROAD.has(character)) return 0.9;
  if (WIDE.test(character)) return 1;
  if (UPPER.test(character)) return 0.68;
  return character > '\u024F' ? 0.63 : 0.56;
}

/** The text cut with an ellipsis so that it is no wider than `width`. */
export function fitted(text: string, size: number, width: number): string {
  const line = text.replace(/\s+/gu, ' ').trim();
  if (textWidth(line, size) <= width) return line;
  const characters = [...line];
  let room = width - textWidth('…', size);
  const kept: string[] = [];
  for (const character of characters) {
    room -= characterWidth(character) * size;
    if (room < 0) break;
    kept.push(character);
  }
  return `${kept.join('').trimEnd()}…`;
}

const remember = memoise<readonly string[]>(1024);

/** The text in lines no wider than `width`, at most `most` of them; what does not fit ends in an ellipsis. */
export function wrapped(text: string, size: number, width: number, most: number): readonly string[] {
  return remember(`${size} ${width} ${most} ${text}`, () => wrap(text, size, width, most));
}

function wrap(text: string, size: number, width: number, most: number): readonly string[] {
  // A figure and what it counts stay together.
  const words = text
    .trim()
    .replace(/(\d) (?=(?:%|mm|cm|m|in|ft)(?![\p{L}\d]))/gu, '$1\u00A0')
    .split(/[^\S\u00A0]+/u);
  const lines: string[] = [];
  let line = '';
  let ems = 0;
  for (const [index, word] of words.entries()) {
    const more = line === '' ? word : ` ${word}`;
    const longer = emsAfter(ems, more);
    if (line === '' || longer * size <= width) {
      line += more;
      ems = longer;
      continue;
    }
    if (lines.length === most - 1)
      return [...lines, fitted([line, ...words.slice(index)].join(' '), size, width)];
    lines.push(line);
    line = word;
    ems = emsAfter(0, word);
  }
  return [...lines, line].filter((each) => each !== '').map((each) => fitted(each, size, width));
}
