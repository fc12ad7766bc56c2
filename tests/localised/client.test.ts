import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { german as inServer } from '../../server/entry/german.js';
import { placesOf, runningWith, sentencesIn, sourcesIn } from './keys.js';

const root = path.resolve(import.meta.dirname, '../..');
const german = JSON.parse(
  readFileSync(path.join(root, 'client/l10n/bundle.l10n.de.json'), 'utf8'),
) as Readonly<Record<string, string>>;
const pairs = Object.entries(german);

/** All of the client, and what of the rest runs in the extension and in its pages. */
const sources = new Set([
  ...sourcesIn(root, ['client']),
  ...runningWith(root, [
    'client/extension.node.ts',
    'client/extension.web.ts',
    'client/preview/main.ts',
    'client/side-by-side/page/main.ts',
  ]),
]);
sources.delete('grammar/localised.ts');
const { files: said, unwritten, miscounted } = sentencesIn(root, [...sources]);

describe('the German sentences of the extension and its pages', () => {
  it('are there for all that is said, and for nothing else', () => {
    expect([...said.keys()].filter((sentence) => !Object.hasOwn(german, sentence))).toEqual([]);
    expect(Object.keys(german).filter((sentence) => !said.has(sentence))).toEqual([]);
    expect(said.size).toBeGreaterThan(300);
  });

  it('have the places of the English ones, and each is given its values', () => {
    expect(unwritten).toEqual([]);
    expect(miscounted).toEqual([]);
    const other = pairs.filter(([english, told]) => placesOf(english).join() !== placesOf(told).join());
    expect(other).toEqual([]);
  });

  it('keep words of the plan language, and end as the English ones do', () => {
    const quotedIn = (sentence: string) => (sentence.match(/`[a-z]+`/gu) ?? []).sort().join();
    const isWhole = (sentence: string) => /[^.][.?]$/u.test(sentence);
    const other = pairs.filter(
      ([english, told]) =>
        quotedIn(english) !== quotedIn(told) ||
        isWhole(english) !== isWhole(told) ||
        told !== told.trim() ||
        told === '',
    );
    expect(other).toEqual([]);
  });

  it('are those of the server in what both run', () => {
    const shared = [...said].flatMap(([sentence, files]) =>
      [...files].every((file) => file.startsWith('client/')) ? [] : [sentence],
    );
    expect(shared.filter((sentence) => german[sentence] !== inServer[sentence])).toEqual([]);
  });

  it('reach into the rest of the project, where that says something in the extension', () => {
    expect([...sources].filter((file) => file.startsWith('server/')).length).toBeGreaterThan(20);
    expect(said.get('{0} and {1}')).toContain('server/plan/problems.ts');
  });
});
