import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { galleryPage } from './gallery-page.mjs';

const root = path.resolve(import.meta.dirname, '..');
const none = () => Buffer.from('png');

describe('the page of the extension', () => {
  it('has its first picture in it, and no other', () => {
    expect(galleryPage('A\n\n![One](a/b.png)\n\nB\n\n![Two](c.png)\n\nC\n', none)).toBe(
      'A\n\n![One](data:image/png;base64,cG5n)\n\nB\n\nC\n',
    );
  });

  it('leaves links that lead somewhere, and the words of the others', () => {
    expect(galleryPage('[here](#top), [there](https://example.org/x), [file](a/b.md#c).', none)).toBe(
      '[here](#top), [there](https://example.org/x), file.',
    );
  });

  it('leaves code alone', () => {
    const code = '```md\n![One](a.png) [file](b.md)\n```\n';
    expect(galleryPage(code, none)).toBe(code);
  });

  it('reaches for nothing, made of the README', () => {
    const read = (file: string) => readFileSync(path.join(root, file));
    const page = galleryPage(readFileSync(path.join(root, 'README.md'), 'utf8'), read);
    const prose = page.replaceAll(/^```[\s\S]*?^```$/gmu, '');
    const addresses = [...prose.matchAll(/\]\(([^)\s]+)\)/gu)].map(([, address = '']) => address);
    expect(addresses.filter((address) => !/^(?:https:|#|data:image\/png;base64,)/u.test(address))).toEqual(
      [],
    );
    expect(addresses.filter((address) => address.startsWith('data:'))).toHaveLength(1);
  });
});
