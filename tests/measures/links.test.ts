import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const root = path.resolve(import.meta.dirname, '../..');
/** The pages of the reference, which the extension ships, and those that only the repository has. */
const shipped = ['grammar/README.md', 'server/findings/README.md', 'server/measure/README.md'];
const others = ['README.md', 'DEVELOPERS.md', 'server/cli/README.md', 'examples/README.md'];

interface Link {
  readonly from: string;
  /** From the root; the page itself for a link within it. */
  readonly file: string;
  readonly anchor: string;
}

function linksOf(page: string): readonly Link[] {
  const text = readFileSync(path.join(root, page), 'utf8').replace(/^```[\s\S]*?^```$/gmu, '');
  return [...text.matchAll(/\]\(([^)\s]+)(?: "[^"]*")?\)/gu)].flatMap(([, address = '']) => {
    if (/^[a-z]+:/u.test(address)) return [];
    const [file = '', anchor = ''] = address.split('#');
    const target = file === '' ? page : path.posix.join(path.posix.dirname(page), file);
    return [{ from: page, file: target, anchor }];
  });
}

function anchorsOf(page: string): ReadonlySet<string> {
  const text = readFileSync(path.join(root, page), 'utf8');
  const headings = [...text.matchAll(/^#+ (.+)$/gmu)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N} -]/gu, '')
      .replaceAll(' ', '-'),
  );
  return new Set([...headings, ...[...text.matchAll(/<a id="([^"]+)">/gu)].map(([, id = '']) => id)]);
}

describe.each([...shipped, ...others])('the links of %s', (page) => {
  it('lead to files that are there, and to headings that these have', () => {
    const astray = linksOf(page).filter(({ file, anchor }) => {
      if (!existsSync(path.join(root, file))) return true;
      return anchor !== '' && !anchorsOf(file).has(anchor);
    });
    expect(astray).toEqual([]);
  });
});

describe('the reference in the extension', () => {
  const packed = readFileSync(path.join(root, '.vscodeignore'), 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('!'))
    .map((line) => new RegExp(`^${line.slice(1).replaceAll('.', '\\.').replaceAll('*', '[^/]*')}$`, 'u'));

  it.each(shipped)('%s is packed with all that it leads to', (page) => {
    const files = [page, ...linksOf(page).map(({ file }) => file)];
    expect(files.filter((file) => !packed.some((pattern) => pattern.test(file)))).toEqual([]);
  });
});
