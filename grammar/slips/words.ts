import { t } from '../localised.js';
import type { IToken } from 'chevrotain';
import { endOf } from '../lexer.js';
import { nearestWord } from '../nearest.js';
import { statementIn, opensBlock } from '../statements.js';
import { Css, Hex, isKeyword, Munsell, Word } from '../tokens.js';
import { canonicalWord, choiceLists } from '../words.js';
import { meant, restOf, type Slip } from './slip.js';

/** `concept: …`, `colour teal = …`, `(9; 5)`, a full stop at the end */
export const needlessSign: Slip = (stumble) => {
  const { text, at } = stumble;
  const rest = restOf(stumble).trimEnd();
  const sign = rest.charAt(0);
  const isLast = rest.length === 1;
  const takeOut = (message: string) => meant(at, at + 1, message, '', 'unreadable text');
  if ((sign === ':' || sign === '=') && !/\d$/.test(text.slice(0, at))) {
    return takeOut(t('No `{0}` is needed here.', sign));
  }
  if (isLast && (sign === ';' || sign === '.'))
    return takeOut(t('No `{0}` is needed at the end of a line.', sign));
  if (sign === '±') return takeOut(t('No `{0}` is needed here.', sign));
  if (sign === '{' || sign === '}') {
    return takeOut(t('No braces are needed: what is indented under a line belongs to it.'));
  }
  if (sign === ';') return meant(at, at + 1, t('Write a comma here.'), ',', 'unreadable text');
  if (sign === '&') return meant(at, at + 1, t('Write `and` here.'), 'and', 'unreadable text');
  if (sign === '*')
    return meant(at, at + 1, t('Between width and height stands `x`.'), 'x', 'unreadable text');
  const square = /^\[([^\]]*)\]/.exec(rest);
  if (square) {
    const replacement = `(${square[1] ?? ''})`;
    return meant(at, at + square[0].length, t('Brackets are round here.'), replacement, 'unreadable text');
  }
  return undefined;
};

/** `object sky, value 4` on one line */
export const twoFacts: Slip = (stumble) => {
  const { entry, text, at } = stumble;
  const found = /^(,?\s*)(\p{L}[\p{L}-]*)(\s+\S.*)?$/u.exec(restOf(stumble).trimEnd());
  const [, gap = '', written = '', more = ''] = found ?? [];
  const word = canonicalWord(written);
  const start = text.slice(0, at).replace(/[\s,]+$/, '').length;
  if (start === 0 || written === '') return undefined;
  const isPlane = entry.rule === 'object' && (choiceLists.Plane as readonly string[]).includes(word);
  const isOpening = more !== '' || isPlane;
  const below = opensBlock(entry.kind) && statementIn(entry.kind, word) !== undefined;
  const beside = entry.in.some((block) => statementIn(block, word) !== undefined);
  if (!isOpening || !(isPlane || below || beside)) return undefined;
  const indent = /^\s*/.exec(text)?.[0] ?? '';
  const line = `${indent}${isPlane || below ? '  ' : ''}${isPlane ? 'plane ' : ''}${written}${more}`;
  const moved = isPlane ? `plane ${written}` : written;
  const message =
    isPlane || below
      ? t('`{0}` wants a line of its own, indented under this one.', moved)
      : t('`{0}` wants a line of its own.', moved);
  return {
    start,
    end: at + gap.length + written.length + more.length,
    code: 'unexpected text',
    message,
    fix: { title: t('Put it on a line of its own'), replacement: `\n${line}` },
  };
};

/** `shape rectangle from (0, 0) to (40, 18)` */
export const needlessFrom: Slip = ({ entry, tokens: [, form, from, next] }) => {
  if (entry.rule !== 'shape' || form === undefined || from === undefined || next === undefined)
    return undefined;
  if (canonicalWord(form.image) !== 'rectangle' || canonicalWord(from.image) !== 'from') return undefined;
  if (next.image !== '(') return undefined;
  return meant(from.startOffset, next.startOffset, t('No `{0}` is needed here.', 'from'), '');
};

const namingStatements: ReadonlySet<string> = new Set([
  'object',
  'colourDefinition',
  'colour',
  'lead',
  'paint',
]);

/** `object row of houses`, `colour brick red #8a4a36` */
export const nameOfSeveralWords: Slip = ({ entry, text, tokens, at }) => {
  if (!namingStatements.has(entry.rule)) return undefined;
  const words = nameWords(entry.rule, tokens.slice(1));
  const [first] = words;
  const last = words.at(-1);
  if (first === undefined || last === undefined || words.length < 2) return undefined;
  const next = tokens[words.length + 1];
  if (at <= first.startOffset || at > (next?.startOffset ?? text.length)) return undefined;
  const between = text.slice(first.startOffset, endOf(last));
  if (/[^\p{L}\p{M}\p{N}\s'’_-]/u.test(between)) return undefined;
  if (nearestWord(last.image, closingWords[entry.rule] ?? []) !== undefined) return undefined;
  const isColour = [Hex, Css, Munsell].some((type) => type === next?.tokenType);
  if (entry.rule === 'colourDefinition' && !isColour) return undefined;
  const name = words.map(({ image }) => image).join('-');
  return meant(first.startOffset, endOf(last), t('A name is one word: `{0}`.', name), name);
};

/** The words that may follow a name. */
const closingWords: Readonly<Record<string, readonly string[]>> = {
  object: choiceLists.ObjectRole,
  colourDefinition: choiceLists.ColourRole,
  colour: choiceLists.ColourRole,
  lead: ['from', 'along'],
  paint: ['full', 'tint', ...choiceLists.Temperature],
};

function nameWords(rule: string, tokens: readonly IToken[]): readonly IToken[] {
  const closing = closingWords[rule] ?? [];
  const end = tokens.findIndex(({ tokenType, image }) => {
    if (tokenType !== Word && !isKeyword(tokenType)) return true;
    return closing.includes(canonicalWord(image)) || (rule === 'paint' && /^[A-Z]{1,3}[a-z]?\d/.test(image));
  });
  return end < 0 ? tokens : tokens.slice(0, end);
}

const months = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

/** `1.12.2026`, `1 December 2026`, `2026/12/1` */
export const otherDate: Slip = (stumble) => {
  if (!stumble.phrases.includes('date')) return undefined;
  const rest = restOf(stumble);
  const read = dateForms.map((form) => form(rest)).find((found) => found !== undefined);
  if (read === undefined) return undefined;
  const end = stumble.at + read.length;
  const message = t('A day is written year, month, day, such as `2026-12-01`.');
  if (read.day === undefined) return { start: stumble.at, end, code: 'unexpected text', message };
  return meant(stumble.at, end, message, read.day);
};

interface ReadDate {
  readonly length: number;
  /** Undefined where day and month can't be told apart, or there is no such day. */
  readonly day: string | undefined;
}

const dateForms: readonly ((text: string) => ReadDate | undefined)[] = [
  (text) => readDate(/^(?<d>\d{1,2})\.\s*(?<m>\d{1,2})\.\s*(?<y>\d{4})/, text),
  (text) => readDate(/^(?<y>\d{4})[-/.](?<m>\d{1,2})[-/.](?<d>\d{1,2})/, text),
  (text) =>
    readDate(/^(?<d>\d{1,2})(?:st|nd|rd|th|\.)?\s+(?:of\s+)?(?<m>\p{L}{3,})\.?,?\s+(?<y>\d{4})/iu, text),
  (text) => readDate(/^(?<m>\p{L}{3,})\.?\s+(?<d>\d{1,2})(?:st|nd|rd|th)?,?\s+(?<y>\d{4})/iu, text),
  (text) => {
    const found = /^(\d{1,2})\/(\d{1,2})\/(\d{4})/.exec(text);
    if (found === null) return undefined;
    const [whole, one = '', other = '', year = ''] = found;
    const candidates = [dayOf(year, one, other), dayOf(year, other, one)].filter((day) => day !== undefined);
    return { length: whole.length, day: new Set(candidates).size === 1 ? candidates[0] : undefined };
  },
];

function readDate(form: RegExp, text: string): ReadDate | undefined {
  const found = form.exec(text);
  const { y = '', m = '', d = '' } = found?.groups ?? {};
  if (found === null) return undefined;
  const named = months.findIndex((month) => m.length > 2 && month.startsWith(m.toLowerCase()));
  return { length: found[0].length, day: dayOf(y, named < 0 ? m : String(named + 1), d) };
}

function dayOf(year: string, month: string, day: string): string | undefined {
  const text = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text) ? text : undefined;
}
