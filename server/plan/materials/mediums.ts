/** The binders of paint that drying goes by. */
const binders = [
  'oil',
  'alkyd',
  'tempera',
  'casein',
  'acrylic',
  'gouache',
  'watercolour',
  'encaustic',
  'pastel',
] as const;
export type Binder = (typeof binders)[number];

/** What the words of a medium tell. */
export interface MediumWords {
  /** In the order in which `binders` has them, the slowest to dry first; empty when none is recognised. */
  readonly binders: readonly Binder[];
  /** It is thinned with turpentine, white spirit or the like. */
  readonly hasSolvent: boolean;
  /** It holds an oil that dries by taking up air, and warms as it does. */
  readonly hasDryingOil: boolean;
  /** It is handled as a dry powder, or leaves dust. */
  readonly hasDust: boolean;
}

/** Words of the studio in English, and what oil is called in some other languages; from memory. */
const binderWords: readonly (readonly [Binder, RegExp])[] = [
  ['oil', wordAmong('oils?', 'öl', 'ölfarben?', 'huile', 'olio', 'óleo', 'λάδι', 'масло', 'olej')],
  ['alkyd', wordAmong('alkyds?')],
  ['tempera', wordAmong('tempera', 'egg', 'eggs')],
  ['casein', wordAmong('casein', 'milk paint')],
  ['acrylic', wordAmong('acrylics?')],
  ['gouache', wordAmong('gouaches?')],
  ['watercolour', wordAmong('water-? ?colou?rs?', 'aquarelle?')],
  ['encaustic', wordAmong('encaustic', 'hot wax')],
  ['pastel', wordAmong('pastels?', 'charcoal', 'chalks?')],
];

const dryingOils = wordAmong('linseed', 'walnut', 'poppy', 'safflower', 'stand oil', 'tung', 'perilla');
const spirits = wordAmong(
  'turpentine',
  'turps',
  'white spirits?',
  'mineral spirits?',
  'petroleum spirits?',
  'naphtha',
  'spike',
  'solvents?',
  'thinners?',
);
const powders = wordAmong('dry pigments?', 'pigment powders?', 'powdered pigments?', 'pigments?');

function wordAmong(...words: readonly string[]): RegExp {
  return new RegExp(`(?<!\\p{L})(?:${words.join('|')})(?!\\p{L})`, 'u');
}

/** Reads the words of a medium. What it does not know it passes over, so that nothing is claimed of it. */
export function mediumIn(text: string): MediumWords {
  const words = text.toLowerCase();
  const found = binderWords.filter(([, pattern]) => pattern.test(words)).map(([binder]) => binder);
  const hasSolvent = spirits.test(words);
  const named = new Set(found);
  // Oil of spike is a spirit that thins, and no oil that dries.
  if (/^(?:spike oil|oil of spike)$/u.test(words.trim())) named.delete('oil');
  if (dryingOils.test(words)) named.add('oil');
  return {
    binders: binders.filter((binder) => named.has(binder)),
    hasSolvent,
    hasDryingOil: named.has('oil') || named.has('alkyd'),
    hasDust: powders.test(words) || named.has('pastel'),
  };
}

/** The slowest to dry of the binders that are named in any of these words; oil where none is recognised. */
export function slowestBinder(...texts: readonly (string | undefined)[]): Binder {
  const named = new Set(texts.flatMap((text) => (text === undefined ? [] : mediumIn(text).binders)));
  return binders.find((binder) => named.has(binder)) ?? 'oil';
}
