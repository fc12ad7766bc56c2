import { describe, expect, it } from 'vitest';
import { manifestTexts, rawManifest } from './support/manifest.js';

/** Plain English, as npm shows the manifest as it is written. */
const { description } = JSON.parse(rawManifest) as { readonly description: string };
const named = new Set([...rawManifest.matchAll(/"%(.+)%"/gu)].map(([, key = '']) => key));
const english = manifestTexts();
const german = manifestTexts('de');

describe('the texts of the manifest', () => {
  it('are those that it names, in English and in German', () => {
    expect(named.size).toBeGreaterThan(150);
    expect(Object.keys(english).sort()).toEqual([...named].sort());
    expect(Object.keys(german)).toEqual(Object.keys(english));
  });

  it('are all told: what a person reads in the editor is not written in the manifest itself', () => {
    const told = /"(?:title|shortTitle|description|markdownDescription|altText)": "([^%].*)"/gu;
    expect([...rawManifest.matchAll(told)].map(([, text]) => text)).toEqual([description]);
    const listed = [...rawManifest.matchAll(/"enumDescriptions": \[([^\]]*)\]/gu)];
    expect(listed.length).toBeGreaterThan(1);
    expect(listed.filter(([, texts = '']) => /"[^%"]/u.test(texts.replaceAll(/"%[^"]+%"/gu, '')))).toEqual(
      [],
    );
  });

  it('say the same words of the plan language, and lead to the same commands', () => {
    const kept = (text: string) => (text.match(/`[^`]+`|\(command:[^)]+\)|\*[^*]+\*/gu) ?? []).sort();
    const other = Object.keys(english).filter(
      (key) => kept(english[key] ?? '').join() !== kept(german[key] ?? '').join(),
    );
    expect(other).toEqual([]);
  });

  it('are other words in German, without spaces about them', () => {
    expect(Object.keys(english).filter((key) => english[key] === german[key])).toEqual([]);
    const all = [...Object.values(english), ...Object.values(german)];
    expect(all.filter((text) => text === '' || text.trim() !== text)).toEqual([]);
  });
});
