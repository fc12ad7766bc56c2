import {
  CLOSE_BRACKET,
  COMMA,
  DASH,
  HASH,
  OPEN_BRACKET,
  PERCENT,
  POINT,
  QUOTE,
  SPACE,
  TAB,
  TIMES,
  ZERO,
} from './character-codes.js';
import { choiceLists, type ChoiceList } from './words.js';
import type { LineReading } from './line-parser.js';
import { isDigit, isLetter, sentenceEnd, wordEnd } from './plain-lexer.js';
import type { StatementEntry } from './statements.js';
import type {
  Choice,
  ColourRole,
  ColourSpec,
  Coordinates,
  Extent,
  Length,
  Move,
  Place,
  Quantity,
  Sentence,
  ShapeForm,
  Statement,
  Word,
} from './syntax.js';
import { LARGEST_NUMBER } from './values.js';

/** So many digits make a number that is exact, and so is the power of ten that it is divided by. */
const EXACT_DIGITS = 15;
const powersOfTen = Array.from({ length: EXACT_DIGITS + 1 }, (_, power) => 10 ** power);

const NO_MOVES: readonly Move[] = [];
const NO_COMMAS: readonly number[] = [];
const NO_PROBLEMS: LineReading['problems'] = [];
const NO_NAMES: readonly Word[] = [];

/** The line that is being read, where in it, and where the last word or sign ended. */
let line = '';
let at = 0;
let end = 0;
/** What opens it; empty for a line of points. */
let keyword: Word = { text: '', start: 0, end: 0 };

type Reader = () => Statement | undefined;

/** By the rules of the grammar that read the same lines. */
const readers: ReadonlyMap<string, Reader> = new Map<string, Reader>([
  ['object', object],
  ['shape', shape],
  ['points', points],
  ['colour', colour],
  ['value', value],
  ['plane', plane],
  ['edges', edges],
  ['detail', detail],
  ['note', () => sentence('note')],
  ['colourDefinition', colourDefinition],
  ['ground', ground],
  ['concept', () => sentence('concept')],
  ['avoid', () => sentence('avoid')],
  ['mood', () => freeText('mood')],
  ['support', () => freeText('support')],
  ['medium', () => freeText('medium')],
]);

/**
 * Reads a line that says something about an object, a colour or the picture in the way in which nearly all lines do: by
 * single words, numbers, a sentence, and places by coordinates. It says what the grammar reads in it, but for what only
 * other lines need.
 *
 * @param opening the word that begins it, which is that of the statement, or the first word or sign of a line of points
 * @returns `undefined` for any other line, right or wrong
 */
export function readCommonLine(entry: StatementEntry, text: string, opening: Word): LineReading | undefined {
  const read = readers.get(entry.rule);
  if (read === undefined) return undefined;
  const { start } = opening;
  keyword = entry.words.length > 0 ? opening : { text: '', start, end: start };
  line = text;
  at = keyword.end;
  end = at;
  const statement = read();
  if (statement === undefined || !isAtEnd()) return undefined;
  return { statement, problems: NO_PROBLEMS, missingCommas: NO_COMMAS };
}

function object(): Statement | undefined {
  const name = word();
  if (name === undefined) return undefined;
  if (next() !== COMMA) return { kind: 'object', name, keyword, start: keyword.start, end };
  at += 1;
  const role = choice('ObjectRole');
  return role && { kind: 'object', name, role, keyword, start: keyword.start, end };
}

function colour(): Statement | undefined {
  const spec = colourSpec();
  return spec && { kind: 'colour', colour: spec, keyword, start: keyword.start, end };
}

function colourDefinition(): Statement | undefined {
  const name = word();
  const spec = name && colourSpec();
  if (name === undefined || spec === undefined) return undefined;
  if (isAtEnd()) return { kind: 'colour definition', name, colour: spec, keyword, start: keyword.start, end };
  const role = colourRole();
  return role && { kind: 'colour definition', name, colour: spec, role, keyword, start: keyword.start, end };
}

function ground(): Statement | undefined {
  const spec = colourSpec();
  if (spec === undefined) return undefined;
  if (isAtEnd()) return { kind: 'ground', colour: spec, keyword, start: keyword.start, end };
  const role = colourRole();
  return role && { kind: 'ground', colour: spec, role, keyword, start: keyword.start, end };
}

/** With or without a comma before it. */
function colourRole(): Choice<ColourRole> | undefined {
  if (next() === COMMA) at += 1;
  return choice('ColourRole');
}

function colourSpec(): ColourSpec | undefined {
  return next() === HASH ? hexColour() : namedColour();
}

function namedColour(): ColourSpec | undefined {
  const name = word();
  return name && { kind: 'name', text: name.text, start: name.start, end: name.end };
}

function hexColour(): ColourSpec | undefined {
  const start = at;
  do at += 1;
  while (isHexDigit(line.charCodeAt(at)));
  end = at;
  const digits = end - start - 1;
  if (digits !== 3 && digits !== 6) return undefined;
  return { kind: 'hex', text: line.slice(start, end), start, end };
}

function value(): Statement | undefined {
  next();
  const start = at;
  const number = unsigned();
  if (number < 0) return undefined;
  const step: Quantity = { value: number, start, end };
  return { kind: 'value', step, keyword, start: keyword.start, end };
}

function plane(): Statement | undefined {
  const chosen = choice('Plane');
  return chosen && { kind: 'plane', plane: chosen, keyword, start: keyword.start, end };
}

function edges(): Statement | undefined {
  const chosen = choice('Edges');
  return chosen && { kind: 'edges', edges: chosen, against: NO_NAMES, keyword, start: keyword.start, end };
}

function detail(): Statement | undefined {
  const chosen = choice('Detail');
  return chosen && { kind: 'detail', detail: chosen, keyword, start: keyword.start, end };
}

function sentence(kind: 'note' | 'concept' | 'avoid'): Statement | undefined {
  const text = next() === QUOTE ? quoted() : undefined;
  return text && { kind, text, keyword, start: keyword.start, end };
}

/** A sentence, or plain words to the end of the line. */
function freeText(kind: 'mood' | 'support' | 'medium'): Statement | undefined {
  const text = next() === QUOTE ? quoted() : plainWords();
  return text && { kind, text, keyword, start: keyword.start, end };
}

function quoted(): Sentence | undefined {
  const start = at;
  at = sentenceEnd(line, at + 1);
  if (at < 0) return undefined;
  end = at;
  return { value: line.slice(start + 1, end - 1), start, end };
}

/** Words of letters and digits with commas between. */
function plainWords(): Sentence | undefined {
  const start = at;
  for (let code = next(); !Number.isNaN(code); code = next()) {
    if (!isLetter(code) && !isDigit(code) && code !== COMMA) return undefined;
    at += 1;
    end = at;
  }
  return end > start ? { value: line.slice(start, end), start, end } : undefined;
}

function points(): Statement | undefined {
  const all = places();
  return all && { kind: 'points', points: all, keyword, start: keyword.start, end };
}

function shape(): Statement | undefined {
  const form = word();
  const read = form && shapeOf(form.text);
  return read && { kind: 'shape', shape: read, keyword, start: keyword.start, end };
}

function shapeOf(form: string): ShapeForm | undefined {
  switch (form) {
    case 'outline':
    case 'smooth': {
      const all = places();
      return all && { form, points: all };
    }
    case 'rectangle':
      return next() === OPEN_BRACKET ? corners() : sized(form);
    case 'ellipse':
      return sized(form);
    default:
      return undefined;
  }
}

function corners(): ShapeForm | undefined {
  const from = place();
  if (from === undefined || word()?.text !== 'to') return undefined;
  const to = place();
  return to && { form: 'rectangle corners', from, to };
}

function sized(form: 'rectangle' | 'ellipse'): ShapeForm | undefined {
  const size = extent();
  if (size === undefined) return undefined;
  if (isAtEnd()) return { form, extent: size };
  if (word()?.text !== 'at') return undefined;
  const middle = place();
  return middle && { form, extent: size, at: middle };
}

function extent(): Extent | undefined {
  const width = length();
  if (width === undefined || next() !== TIMES) return undefined;
  at += 1;
  const height = length();
  return height && { width, height, start: width.start, end: height.end };
}

/** Places up to the end of the line, with or without commas between. */
function places(): readonly Place[] | undefined {
  const all: Place[] = [];
  do {
    if (all.length > 0 && line.charCodeAt(at) === COMMA) at += 1;
    const one = place();
    if (one === undefined) return undefined;
    all.push(one);
  } while (!isAtEnd());
  return all;
}

function place(): Place | undefined {
  const coordinates = pair();
  if (coordinates === undefined) return undefined;
  const { start, end: last } = coordinates;
  return { base: { kind: 'coordinates', at: coordinates }, moves: NO_MOVES, start, end: last };
}

function pair(): Coordinates | undefined {
  if (next() !== OPEN_BRACKET) return undefined;
  const start = at;
  at += 1;
  const x = length();
  if (x === undefined || next() !== COMMA) return undefined;
  at += 1;
  const y = length();
  if (y === undefined || next() !== CLOSE_BRACKET) return undefined;
  at += 1;
  end = at;
  return { x, y, start, end };
}

/** A number, or a share in `%`. */
function length(): Length | undefined {
  const isLess = next() === DASH;
  const start = at;
  if (isLess) at += 1;
  const number = unsigned();
  if (number < 0) return undefined;
  const measured = isLess ? 0 - number : number;
  if (line.charCodeAt(at) !== PERCENT) return { value: measured, fraction: false, start, end };
  at += 1;
  end = at;
  return { value: measured, unit: '%', fraction: false, start, end };
}

/** A number without a sign; -1 for none, for one that is too large, and where it may be part of a day. */
function unsigned(): number {
  const start = at;
  let digits = 0;
  let code = line.charCodeAt(at);
  for (; isDigit(code); code = line.charCodeAt(++at)) digits = 10 * digits + code - ZERO;
  const whole = at - start;
  let decimals = 0;
  if (code === POINT && isDigit(line.charCodeAt(at + 1))) {
    const point = at;
    for (code = line.charCodeAt(++at); isDigit(code); code = line.charCodeAt(++at))
      digits = 10 * digits + code - ZERO;
    decimals = at - point - 1;
  } else if (whole === 0 || (whole === 4 && code === DASH)) {
    return -1;
  }
  end = at;
  if (end - start > EXACT_DIGITS) return inBounds(Number(line.slice(start, end)));
  // Both are exact, and so the quotient is the nearest number there is, as of `Number`.
  return inBounds(decimals === 0 ? digits : digits / (powersOfTen[decimals] as number));
}

function inBounds(number: number): number {
  return number <= LARGEST_NUMBER ? number : -1;
}

function word(): Word | undefined {
  if (!isLetter(next())) return undefined;
  const start = at;
  at = wordEnd(line, start + 1);
  if (at < 0) return undefined;
  end = at;
  return { text: line.slice(start, end), start, end };
}

/** A word of a closed list, as the list has it. */
function choice<L extends ChoiceList>(list: L): Choice<(typeof choiceLists)[L][number]> | undefined {
  const written = word();
  if (written === undefined) return undefined;
  const words: readonly (typeof choiceLists)[L][number][] = choiceLists[list];
  for (const one of words) {
    if (one === written.text) return { choice: one, start: written.start, end: written.end };
  }
  return undefined;
}

/** The next character that is no blank; `NaN` at the end of the line. */
function next(): number {
  let code = line.charCodeAt(at);
  while (code === SPACE || code === TAB) code = line.charCodeAt(++at);
  return code;
}

function isAtEnd(): boolean {
  return Number.isNaN(next());
}

function isHexDigit(code: number): boolean {
  return isDigit(code) || (code >= 0x61 && code <= 0x66) || (code >= 0x41 && code <= 0x46);
}
