import type { Sentences } from '../../grammar/index.js';
import { german } from '../../server/entry/german.js';
import { knownPigments } from '../../server/plan/materials/pigments.js';

/** The German sentences with what they say themselves between marks; quotes round a place stay without. */
export const markedGerman: Sentences = Object.fromEntries(
  Object.entries(german).map(([sentence, told]) => [
    sentence,
    told
      .split(/(`[^`]*\{\d\}[^`]*`|„\{\d\}“|\{\d\})/u)
      .map((part) => (/\{\d\}/u.test(part) || part === '' ? part : `⟦${part}⟧`))
      .join(''),
  ]),
);

/** Names of pigments are those on the tubes; the longest first, for some begin as others are. */
const pigmentNames = knownPigments()
  .map(({ name }) => name)
  .sort((one, other) => other.length - one.length);

/**
 * What of a sentence is neither German, nor a name, a piece of the language, a figure with its unit, or a colour in
 * Munsell's way.
 */
export function notGerman(told: string, names: readonly string[] = []): string {
  return wordsLeft(told, names).replaceAll(/[^\p{L}]/gu, '');
}

/** The same with what stands between its words. */
export function wordsLeft(told: string, names: readonly string[] = []): string {
  return [...pigmentNames, ...names]
    .reduce((left, name) => left.replaceAll(name, ' '), told.replaceAll(/⟦[^⟧]*⟧/gu, ' '))
    .replaceAll(/`[^`]*`|„[^“]*“|“[^”]*”/gu, ' ')
    .replaceAll(/\bP[A-Z]{1,2}\d+(?::\d+)?\b/gu, ' ')
    .replaceAll(/\bN ?\d+(?:\.\d+)?\/?|\b\d+(?:\.\d+)?(?:R|YR|Y|GY|G|BG|B|PB|P|RP)\b/gu, ' ')
    .replaceAll(/\b\d+(?:\.\d+)?\s(?:mm|cm|m|in|ml|x \d+(?:\.\d+)? (?:mm|cm|m|in))\b/gu, ' ');
}
