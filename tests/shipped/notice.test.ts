import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { librariesOf, licenceTexts } from '../../client/licences.mjs';
import { builtForRelease, root } from './built.js';

const notice = readFileSync(path.join(root, 'NOTICE'), 'utf8');

/** Loaded where it is installed; no bundle holds it. */
const loaded = 'node_modules/@resvg/resvg-js/package.json';

/** `name licence` of every line of the list of libraries. */
function listed(): readonly string[] {
  return [...notice.matchAll(/^ {2}(@?[a-z][\w./-]*) {2,}([A-Z0-9][\w.-]+) {2,}\S/gmu)].map(
    ([, name, licence]) => `${name} ${licence}`,
  );
}

async function bundledFiles(): Promise<readonly string[]> {
  return (await builtForRelease()).inputs;
}

describe('NOTICE', () => {
  it('lists each library that is given away, and no other, with its licence', async () => {
    const libraries = librariesOf(root, [...(await bundledFiles()), loaded]);
    expect(listed()).toEqual(libraries.map(({ name, licence }) => `${name} ${licence}`));
  });

  it('has under no licence that asks for more than to be named what is given away', async () => {
    const allowed = /^(?:0BSD|Apache-2\.0|BlueOak-1\.0\.0|BSD-[23]-Clause|BSL-1\.0|ISC|MIT|MPL-2\.0)$/u;
    const libraries = librariesOf(root, [...(await bundledFiles()), loaded]);
    expect(libraries.filter(({ licence }) => !allowed.test(licence))).toEqual([]);
  });

  it('tells of the decoders that a library has compiled into it', async () => {
    const compiled = (await bundledFiles()).filter((file) => file.endsWith('.wasm'));
    const decoders = [...new Set(compiled.map((file) => /@jsquash\/(\w+)/u.exec(file)?.[1] ?? file))].sort();
    expect(decoders).toEqual(['jpeg', 'png', 'webp']);
    for (const decoder of ['mozjpeg', 'png', 'libwebp']) expect(notice).toContain(decoder);
    expect(notice.replaceAll(/\s+/gu, ' ')).toContain(
      'software is based in part on the work of the Independent JPEG Group',
    );
  });

  it('names every file of ours whose data are of others, and no file that is gone', async () => {
    const ours = (await bundledFiles()).filter(
      (file) => /^(?:client|grammar|server)\//u.test(file) && existsSync(path.join(root, file)),
    );
    const borrowed = ours.filter((file) => {
      const text = readFileSync(path.join(root, file), 'utf8');
      return /\bCC BY\b|\bdata set\b|colour-matching functions/u.test(text);
    });
    expect(borrowed.length).toBeGreaterThan(2);
    expect(borrowed.filter((file) => !notice.includes(file))).toEqual([]);
    const named = notice.match(/\b(?:server|tests|client)\/[\w./-]*\w/gu) ?? [];
    expect(named.filter((file) => !existsSync(path.join(root, file)))).toEqual([]);
  });
});

describe('the licences in the package of the extension', () => {
  it('are those of all that it holds, in full, each with its version', async () => {
    const inputs = await bundledFiles();
    const texts = licenceTexts(root, inputs);
    for (const { name, version } of librariesOf(root, inputs))
      expect(texts).toMatch(new RegExp(`^${name} ${version.replaceAll('.', '\\.')}\\n\\n.{3,}`, 'mu'));
    expect(texts).toContain('libjpeg-turbo');
  });
});
