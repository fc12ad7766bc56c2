import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { galleryPage } from './gallery-page.mjs';

const readme = readFileSync(path.resolve(import.meta.dirname, '../README.md'), 'utf8');

describe('the page of the extension', () => {
  it('has no picture that would not be found', () => {
    expect(galleryPage('A\n\n![One](a/b.png)\n\nB\n\n![Two](https://example.org/c.png)\n')).toBe(
      'A\n\nB\n\n![Two](https://example.org/c.png)\n',
    );
  });

  it('leaves links that lead somewhere, and the words of the others', () => {
    expect(galleryPage('[here](#top), [there](https://example.org/x), [file](a/b.md#c).')).toBe(
      '[here](#top), [there](https://example.org/x), file.',
    );
  });

  it('leaves code alone', () => {
    const code = '```md\n![One](a.png) [file](b.md)\n```\n';
    expect(galleryPage(code)).toBe(code);
  });

  it('has all words of the README, and nothing that leads beside it', () => {
    const page = galleryPage(readme);
    const prose = page.replaceAll(/^```[\s\S]*?^```$/gmu, '');
    const addresses = [...prose.matchAll(/\]\(([^)\s]+)\)/gu)].map(([, address = '']) => address);
    expect(addresses.filter((address) => !/^(?:https:|#)/u.test(address))).toEqual([]);
    expect(page.match(/^#.*$/gmu)).toEqual(readme.match(/^#.*$/gmu));
    expect(page.length).toBeGreaterThan(0.8 * readme.length);
  });
});
