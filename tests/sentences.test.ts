import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { saidSentences } from './support/said-sentences.js';

const root = path.resolve(import.meta.dirname, '..');

/** Where sentences are said, and the bundle that has them in German. */
const bundles = [{ folders: ['client'], file: 'client/l10n/bundle.l10n.de.json' }] as const;

const placesOf = (sentence: string): readonly string[] => [
  ...new Set(Array.from(sentence.match(/\{\d\}/gu) ?? []).sort()),
];
/** Words of the plan language, which stay as they are. */
const quotedIn = (sentence: string): readonly string[] => (sentence.match(/`[a-z]+`/gu) ?? []).sort();

describe.each(bundles)('the German sentences of $file', ({ folders, file }) => {
  const german = JSON.parse(readFileSync(path.join(root, file), 'utf8')) as Record<string, string>;
  const said = saidSentences(folders);
  const pairs = Object.entries(german);

  it('are those that are said, none missing and none too many', () => {
    const missing = said.filter(({ english }) => !Object.hasOwn(german, english));
    expect(missing.map(({ english, place }) => `${place}: ${english}`)).toEqual([]);
    const known = new Set(said.map(({ english }) => english));
    expect(pairs.map(([english]) => english).filter((english) => !known.has(english))).toEqual([]);
    expect(known.size).toBeGreaterThan(100);
  });

  it('have the same places for values, from {0} on, and each is given its values', () => {
    const other = pairs.filter(([english, told]) => placesOf(english).join() !== placesOf(told).join());
    expect(other).toEqual([]);
    const wrong = said.filter(
      ({ english, values }) =>
        placesOf(english).join() !==
          placesOf(english)
            .map((_, index) => `{${index}}`)
            .join() ||
        (values !== undefined && values !== placesOf(english).length),
    );
    expect(wrong).toEqual([]);
  });

  it('keep words of the plan language, and end as the English ones do', () => {
    const isWhole = (sentence: string) => /[^.][.?]$/u.test(sentence);
    const other = pairs.filter(
      ([english, told]) =>
        quotedIn(english).join() !== quotedIn(told).join() ||
        isWhole(english) !== isWhole(told) ||
        told !== told.trim() ||
        told === '',
    );
    expect(other).toEqual([]);
  });
});
