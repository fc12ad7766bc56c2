import { choiceLists, connectingWords, namingWords, otherUnits } from './words.js';
import { statements } from './statements.js';

/** A rule of a TextMate grammar, as far as this language needs them. */
export interface TextMateRule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<
    Record<string, { readonly name?: string; readonly patterns?: readonly TextMateRule[] }>
  >;
  readonly patterns?: readonly TextMateRule[];
  readonly include?: string;
}

export interface TextMateGrammar {
  readonly name: string;
  readonly scopeName: string;
  readonly fileTypes: readonly string[];
  readonly patterns: readonly TextMateRule[];
  readonly repository: Readonly<Record<string, TextMateRule>>;
}

/**
 * Where a line of a plan begins: behind what a list or a quotation of a page that it stands in has before each of its
 * lines.
 */
const lineStart = '(?:^|\\G)\\s*';
const inWord = "[\\p{L}\\p{M}\\p{N}_\\x{200C}\\x{200D}]|[-'’](?=[\\p{L}\\p{N}])";
const word = `\\p{L}(?:${inWord})*`;
/** No word goes on here. Where one begins needs no test: words are always matched whole. */
const wordEnd = `(?!${inWord})`;

const americanSpellings: Readonly<Record<string, string>> = {
  colour: 'colou?r',
  grey: 'gr[ea]y',
  centre: 'cent(?:re|er)',
};

function anyOf(words: Iterable<string>): string {
  const longestFirst = [...new Set(words)].sort(
    (one, other) => other.length - one.length || (one < other ? -1 : 1),
  );
  return `(?i:${longestFirst.map((text) => americanSpellings[text] ?? text.replace(' ', '\\s+')).join('|')})`;
}

const freeTextWords = ['mood', 'support', 'medium'];
const openings = statements.map((entry) => entry.words.join(' ')).filter((text) => text !== '');
const units = [...choiceLists.LengthUnit, ...choiceLists.Degrees, ...otherUnits];
const terms = [...Object.values(choiceLists).flat(), ...namingWords].filter(
  (text) => !(units as readonly string[]).includes(text),
);
const number = '(?:\\d+(?:\\.\\d+)?|\\.\\d+)';

/** What follows the word that opens a line. */
const parts: readonly TextMateRule[] = [
  { include: '#comment' },
  { include: '#sentence' },
  { include: '#colour' },
  { include: '#date' },
  { include: '#number' },
  { include: '#word' },
];

/**
 * The grammar by which editors colour a plan before (and without) the language server. It has no memory of
 * blocks: a word is coloured by its own look, the first of a line as a statement.
 */
export function textMateGrammar(): TextMateGrammar {
  return {
    name: 'Mahlstick plan',
    scopeName: 'source.mahl',
    fileTypes: ['mahl'],
    patterns: [{ include: '#free-words' }, { include: '#definition' }, { include: '#statement' }, ...parts],
    repository: {
      comment: { name: 'comment.line.double-slash.mahl', match: '//.*$' },
      'free-words': {
        match: `${lineStart}(${anyOf(freeTextWords)})${wordEnd}\\s*((?!["“][^"”]*["”]\\s*(?://|$))(?:(?!//).)*)`,
        captures: {
          1: { name: 'keyword.control.mahl' },
          2: { name: 'string.unquoted.mahl' },
        },
      },
      definition: {
        match: `${lineStart}(${anyOf(['object', 'lead', 'paint'])})\\s+(${word})`,
        captures: {
          1: { name: 'keyword.control.mahl' },
          2: { name: 'entity.name.type.mahl' },
        },
      },
      statement: {
        match: `${lineStart}(${anyOf(openings)})${wordEnd}`,
        captures: { 1: { name: 'keyword.control.mahl' } },
      },
      sentence: {
        patterns: [
          {
            name: 'string.quoted.double.mahl',
            begin: '"',
            end: '"|$',
            patterns: [{ name: 'constant.character.escape.mahl', match: '\\\\["“”\\\\]' }],
          },
          {
            name: 'string.quoted.double.mahl',
            begin: '“',
            end: '”|$',
            patterns: [{ name: 'constant.character.escape.mahl', match: '\\\\["“”\\\\]' }],
          },
        ],
      },
      colour: {
        name: 'constant.other.color.mahl',
        match: [
          '#[0-9A-Za-z]+',
          `(?i:rgba?|hsla?|hwb|oklab|oklch|lab|lch|color)\\([^()]*\\)`,
          `(?<![\\d.])\\d+(?:\\.\\d+)?(?i:RP|YR|GY|BG|PB|[RYGBP]) *\\d+(?:\\.\\d+)?/\\d+(?:\\.\\d+)?`,
          `(?i:N) *\\d+(?:\\.\\d+)?/\\d*`,
          `(?i:[PN](?:BK|BR|[BGMORVWY]))\\d+(?::\\d+)?${wordEnd}`,
        ].join('|'),
      },
      date: { name: 'constant.other.date.mahl', match: '\\d{4}-\\d{2}-\\d{2}' },
      number: {
        patterns: [
          {
            match: `(${number})\\s*([xX×])(?=\\s*[\\d.½⅓⅔¼¾⅕⅛⅜⅝⅞])`,
            captures: {
              1: { name: 'constant.numeric.mahl' },
              2: { name: 'keyword.operator.mahl' },
            },
          },
          { name: 'constant.numeric.mahl', match: `(?:\\d+/\\d+|${number}|[½⅓⅔¼¾⅕⅛⅜⅝⅞])` },
          {
            name: 'keyword.other.unit.mahl',
            match: `[%°]|(?<=[\\d½⅓⅔¼¾⅕⅛⅜⅝⅞]|\\s)${anyOf(units)}${wordEnd}`,
          },
          { name: 'keyword.operator.mahl', match: '(?<=\\s)[xX×](?=\\s*[\\d.½⅓⅔¼¾⅕⅛⅜⅝⅞])' },
        ],
      },
      word: {
        patterns: [
          { name: 'keyword.other.mahl', match: `${anyOf(connectingWords)}${wordEnd}` },
          { name: 'support.constant.mahl', match: `${anyOf(terms)}${wordEnd}` },
          { name: 'variable.other.mahl', match: `${word}` },
        ],
      },
    },
  };
}
