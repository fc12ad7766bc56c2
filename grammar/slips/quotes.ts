import { t } from '../localised.js';
import { inQuotes } from '../words.js';
import { meant, restOf, type Slip } from './slip.js';

/** What closes each mark that painters open a sentence with and the language does not. */
const closingMarks: ReadonlyMap<string, RegExp> = new Map([
  ['„', /[“”"]/],
  ['‚', /[‘’'](?=\s|$)/],
  ['«', /»/],
  ['»', /«/],
  ['‹', /›/],
  ['›', /‹/],
  ['‘', /[’'](?=\s|$)/],
  ["'", /['’](?=\s|$)/],
]);

/** `„Regen“`, `« Pluie »`, `'Rain'` */
export const otherQuotes: Slip = (stumble) => {
  const rest = restOf(stumble);
  const closing = closingMarks.get(rest.charAt(0));
  if (closing === undefined || !/^.\s*\p{L}/u.test(rest)) return undefined;
  const inner = rest.slice(1);
  const end = inner.search(closing);
  const words = (end < 0 ? inner : inner.slice(0, end)).trim();
  const length = end < 0 ? rest.trimEnd().length : end + 2;
  return meant(
    stumble.at,
    stumble.at + length,
    t('A sentence stands between `"` and `"`.'),
    inQuotes(words),
    'unreadable text',
  );
};

/** Where the words of a sentence end when no quotes say so. */
const sentenceEnds: Readonly<Record<string, RegExp>> = {
  plan: /\s+by\s/i,
  cue: /\s+carried\s+by\s/i,
  sitting: /\s+on\s+\d/i,
  shape: /\s/,
};

const fileStatements: ReadonlySet<string> = new Set(['sketch', 'photo', 'basedOn']);

/** `concept my own words`, `from parts/hat.svg` */
export const noQuotes: Slip = (stumble) => {
  if (!stumble.phrases.includes('sentence')) return undefined;
  const rest = restOf(stumble).trimEnd();
  if (rest === '') return undefined;
  const before = stumble.text.slice(0, stumble.at).trim().split(/\s+/).at(-1) ?? '';
  // What stands before the statement's own word is another slip.
  if (before === '') return undefined;
  const { rule } = stumble.entry;
  const end = sentenceEnds[rule] === undefined ? -1 : rest.search(sentenceEnds[rule]);
  const words = end < 0 ? rest : rest.slice(0, end);
  const isFile = fileStatements.has(rule) || before.toLowerCase() === 'from';
  const what = isFile
    ? t('a file name in quotes')
    : rule === 'shape'
      ? t('a name in quotes')
      : t('a sentence in quotes');
  const fix = { title: t('Put it in quotes'), replacement: inQuotes(words.replace(/^["“]|["”]$/g, '')) };
  return {
    start: stumble.at,
    end: stumble.at + words.length,
    code: 'unexpected text',
    message: t('After {0} {1} is needed.', `\`${before}\``, what),
    fix,
  };
};

/** `24" x 18"` */
export const inchMarks: Slip = (stumble) => {
  const rest = restOf(stumble).trimEnd();
  if (!/^["“”″]/.test(rest) || !/[\d½⅓⅔¼¾⅕⅛⅜⅝⅞]\s*$/.test(stumble.text.slice(0, stumble.at)))
    return undefined;
  const replacement = rest.replace(/\s*["“”″]/g, ' in');
  return meant(stumble.at, stumble.at + rest.length, t('Inches are written `in`.'), replacement);
};
