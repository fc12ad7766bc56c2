import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { grammarPages } from './production.js';
import { railroad } from './railroad.js';

const pages = grammarPages();

describe('the railroad diagrams', () => {
  // After a change of the grammar: `npx vitest run grammar/railroad.test.ts -u` draws them anew.
  it.each(pages)('show %s as the parser reads it', async (page) => {
    await expect(railroad(page)).toMatchFileSnapshot(`railroad/${page}.svg`);
  });

  it('have no page that the grammar no longer has', () => {
    const drawn = readdirSync(new URL('railroad', import.meta.url)).map((name) => name.replace('.svg', ''));
    expect(drawn.filter((page) => !pages.includes(page))).toEqual([]);
  });

  it('write every word of a statement into its track', () => {
    const words = [...railroad('sitting').matchAll(/<text[^>]*>([^<]*)</g)].map(([, word]) => word);
    expect(words).toEqual(['sitting', 'sitting', 'sentence', 'on', 'date']);
  });
});
