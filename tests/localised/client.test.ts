import { readFileSync } from 'node:fs';
import path from 'node:path';
import * as esbuild from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { german as inServer } from '../../server/entry/german.js';
import { bundleOptions } from '../support/bundle-options.js';
import { sourcesIn } from '../support/sources.js';
import { placesOf, sentencesIn } from './keys.js';

const root = path.resolve(import.meta.dirname, '../..');
const german = JSON.parse(
  readFileSync(path.join(root, 'client/l10n/bundle.l10n.de.json'), 'utf8'),
) as Readonly<Record<string, string>>;
const pairs = Object.entries(german);

const inClient = sentencesIn(root, sourcesIn(root, ['client']));
const elsewhere = sentencesIn(root, sourcesIn(root, ['grammar', 'server']));

/**
 * What of the rest of the project is said in the extension and its pages: bundles hold what is used, and nothing else.
 */
async function saidOfOthers(): Promise<readonly string[]> {
  const entries = ['client/extension.node.ts', 'client/preview/main.ts', 'client/side-by-side/page/main.ts'];
  const built = await Promise.all(
    entries.map(async (entry) =>
      esbuild.build({
        ...(await bundleOptions(entry)),
        absWorkingDir: root,
        entryPoints: [entry],
        outdir: 'dist',
        bundle: true,
        write: false,
        external: ['vscode'],
        loader: { '.css': 'empty' },
        charset: 'utf8',
        logLevel: 'silent',
      }),
    ),
  );
  const text = built.flatMap(({ outputFiles = [] }) => outputFiles.map((file) => file.text)).join('\n');
  // Names may be told apart by a figure behind them.
  const calls = text.matchAll(/\b(?:t|marked)\d*\(\s*("(?:[^"\\]|\\.)*")/gu);
  const called = new Set([...calls].map(([, sentence = '""']) => JSON.parse(sentence) as string));
  return [...elsewhere.files.keys()].filter((sentence) => called.has(sentence));
}

describe('the German sentences of the extension and its pages', () => {
  let others: readonly string[];
  beforeAll(async () => {
    others = await saidOfOthers();
  });

  it('are there for all that is said, and for nothing else', () => {
    const said = new Set([...inClient.files.keys(), ...others]);
    expect([...said].filter((sentence) => !Object.hasOwn(german, sentence))).toEqual([]);
    expect(Object.keys(german).filter((sentence) => !said.has(sentence))).toEqual([]);
    expect(said.size).toBeGreaterThan(300);
  });

  it('have the places of the English ones, and each is given its values', () => {
    expect(inClient.unwritten).toEqual([]);
    expect(inClient.miscounted).toEqual([]);
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

  it('are those of the server in what both say', () => {
    expect(others).toContain('{0} and {1}');
    expect(others.filter((sentence) => german[sentence] !== inServer[sentence])).toEqual([]);
  });
});
