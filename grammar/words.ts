/**
 * The words of the language, once. A keyword is still a word: names may be any word wherever the grammar
 * reads a name, so `object value` or `colour path` are fine.
 */

/** The closed lists: a statement asks for "one of these". The list's name is also its name in the grammar. */
export const choiceLists = {
  ColourRole: ['dominant', 'complement', 'discord', 'neutral'],
  ObjectRole: ['dominant', 'secondary', 'minor'],
  Plane: ['background', 'middle', 'foreground'],
  Edges: ['hard', 'firm', 'soft', 'lost'],
  Means: ['value', 'colour', 'edges', 'detail', 'scale', 'isolation'],
  OneWordLayer: ['imprimatura', 'underpainting', 'block-in', 'scumble', 'glaze', 'detail', 'varnish'],
  OneWordSystem: ['golden', 'thirds', 'quarters', 'rabatment', 'diagonals', 'armature', 'own'],
  BudgetSubject: ['value', 'colour'],
  Wheel: ['painters', 'munsell'],
  Trend: ['lighten', 'darken'],
  Dimension: ['wide', 'high'],
  Detail: ['fine', 'some', 'little'],
  Temperature: ['warm', 'cool'],
  Body: ['lean', 'fat'],
  Severity: ['warning', 'hint'],
  Orientation: ['upright', 'landscape'],
  Side: ['left', 'right', 'top', 'bottom'],
  Row: ['upper', 'middle', 'lower', 'top', 'bottom'],
  Column: ['left', 'centre', 'right'],
  Direction: ['left', 'right', 'up', 'down'],
  LengthUnit: ['mm', 'cm', 'm', 'in'],
  Degrees: ['degrees', 'degree'],
} as const satisfies Record<string, readonly string[]>;

export type ChoiceList = keyof typeof choiceLists;
export type ChoiceOf<L extends ChoiceList> = (typeof choiceLists)[L][number];

/** Words that hold a statement together. */
export const connectingWords = [
  'by',
  'on',
  'with',
  'carried',
  'of',
  'at',
  'to',
  'from',
  'through',
  'along',
  'within',
  'against',
  'for',
  'because',
  'and',
  'every',
  'turning',
  'resized',
  'full',
  'tint',
  'limit',
  'part',
] as const;

/** Fixed words that name a thing: a part of a place, a form of a shape, a division of two words. */
export const namingWords = [
  'edge',
  'side',
  'corner',
  'crossing',
  'focus',
  'root',
  'two',
  'three',
  'body',
  'distance',
  'rectangle',
  'ellipse',
  'circle',
  'outline',
  'smooth',
  'path',
] as const;

/** Units that are words and no length. */
export const otherUnits = ['ml'] as const;

/** Other spellings that are read as the word beside them. */
const otherSpellings: ReadonlyMap<string, string> = new Map([
  ['color', 'colour'],
  ['gray', 'grey'],
  ['center', 'centre'],
]);

/**
 * The keyword a word stands for: lower case, in the spelling of this language. Not for names, which are
 * compared with `nameKey`.
 */
export function canonicalWord(text: string): string {
  const lower = isLowerCase(text) ? text : text.toLowerCase();
  return otherSpellings.get(lower) ?? lower;
}

function isLowerCase(text: string): boolean {
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code < 0x61 || code > 0x7a) return false;
  }
  return true;
}

/** Words of the studio that the language says otherwise, with the keywords they may stand for. */
const wordsMeant: Readonly<Record<string, readonly string[]>> = {
  sharp: ['hard'],
  crisp: ['hard'],
  blurred: ['soft'],
  blurry: ['soft'],
  vanished: ['lost'],
  front: ['foreground'],
  fore: ['foreground'],
  near: ['foreground'],
  back: ['background', 'bottom'],
  far: ['background'],
  behind: ['background'],
  midground: ['middle'],
  'middle-ground': ['middle'],
  middleground: ['middle'],
  main: ['dominant'],
  principal: ['dominant'],
  primary: ['dominant'],
  subordinate: ['secondary'],
  accent: ['discord'],
  complementary: ['complement'],
  lighter: ['lighten'],
  darker: ['darken'],
  contrast: ['value'],
  contour: ['edges'],
  size: ['scale'],
  tall: ['high'],
  height: ['high'],
  width: ['wide'],
  broad: ['wide'],
  across: ['wide'],
  portrait: ['upright'],
  vertical: ['upright'],
  horizontal: ['landscape'],
  above: ['up'],
  below: ['down'],
  high: ['fine'],
  none: ['little'],
  hot: ['warm'],
  cold: ['cool'],
  rect: ['rectangle'],
  square: ['rectangle'],
  box: ['rectangle'],
  oval: ['ellipse'],
  polygon: ['outline'],
  curve: ['smooth'],
  error: ['warning'],
  into: ['to'],
  towards: ['to'],
  via: ['through'],
  since: ['because'],
};

/** The candidate that `word` stands for in other words of the studio, if there is one. */
export function wordMeantBy(word: string, candidates: readonly string[]): string | undefined {
  const lower = word.toLowerCase();
  const meant = Object.hasOwn(wordsMeant, lower) ? wordsMeant[lower] : undefined;
  return meant?.find((candidate) => candidates.includes(candidate));
}

/** A sentence as it is written in a plan. */
export function inQuotes(sentence: string): string {
  return `"${sentence.replace(/["\\]/g, '\\$&')}"`;
}
