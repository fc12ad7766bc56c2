import { describe, expect, it } from 'vitest';
import { URI } from 'vscode-uri';
import { fileSizeLimitBytes } from '../server/language/file-size.js';
import { type Files, readFileForPlan } from './read-file.js';

const file = 1;
const folder = 2;
const link = 64;

/** A file system in memory: text, bytes, or a type alone. */
function filesWith(entries: Readonly<Record<string, string | Uint8Array | number>>): Files {
  const entry = (uri: URI) => {
    const found = entries[uri.toString()];
    return found === undefined
      ? Promise.reject(Object.assign(new Error('none'), { code: 'FileNotFound' }))
      : Promise.resolve(typeof found === 'string' ? new TextEncoder().encode(found) : found);
  };
  return {
    stat: async (uri) => {
      const found = await entry(uri);
      return typeof found === 'number' ? { type: found, size: 0 } : { type: file, size: found.byteLength };
    },
    readFile: async (uri) => {
      const found = await entry(uri);
      if (typeof found === 'number') throw new Error('not a file');
      return found;
    },
  };
}

const studio = { folders: [URI.parse('vscode-vfs://host/studio')], plans: [] };
const parts = filesWith({
  'vscode-vfs://host/studio/parts': folder,
  'vscode-vfs://host/studio/parts/door.svg': '<svg/>',
  'vscode-vfs://host/studio/away': folder | link,
  'vscode-vfs://host/studio/away/door.svg': '<svg/>',
  'vscode-vfs://host/studio/link.svg': file | link,
  'vscode-vfs://host/studio/latin.svg': new Uint8Array([0xe9, 0x20]),
  'vscode-vfs://host/studio/large.svg': new Uint8Array(fileSizeLimitBytes + 1),
  'vscode-vfs://host/studio-of-another/door.svg': '<svg/>',
});

describe('reading a file that a plan names', () => {
  it('gives its text, on a virtual file system as on a disk', async () => {
    const result = await readFileForPlan('vscode-vfs://host/studio/parts/door.svg', studio, parts);
    expect(result).toEqual({ ok: true, text: '<svg/>' });
  });

  it('finds the folder on a Windows disk, whether its letter is large or small', async () => {
    const disk = filesWith({ 'file:///c%3A/studio/door.svg': '<svg/>' });
    for (const path of ['/C:/studio', '/c:/studio/']) {
      const folders = [URI.from({ scheme: 'file', path })];
      const result = await readFileForPlan('file:///c%3A/studio/door.svg', { folders, plans: [] }, disk);
      expect(result).toEqual({ ok: true, text: '<svg/>' });
    }
  });

  it.each([
    ['beside the folder', 'vscode-vfs://host/studio-of-another/door.svg'],
    ['above the folder by dots', 'vscode-vfs://host/studio/../studio-of-another/door.svg'],
    ['above the folder by dots in disguise', 'vscode-vfs://host/studio/%2e%2e/studio-of-another/door.svg'],
    ['above the folder by backslashes', 'vscode-vfs://host/studio/..%5Cdoor.svg'],
    ['on another host', 'vscode-vfs://elsewhere/studio/parts/door.svg'],
    ['on another file system', 'file:///studio/parts/door.svg'],
    ['nowhere', 'door.svg'],
  ])('refuses one that lies %s', async (_where, uri) => {
    const result = await readFileForPlan(uri, studio, parts);
    expect(result).toEqual({ ok: false, reason: 'This file lies outside the folder that is open.' });
  });

  it.each([
    ['is a link', 'link.svg', 'This is a link to another place.'],
    ['lies behind a link', 'away/door.svg', 'This is a link to another place.'],
    ['is a folder', 'parts', 'This is not a file.'],
    ['is not there', 'none.svg', 'There is no such file.'],
    ['is no UTF-8', 'latin.svg', 'This file is not a text in UTF-8.'],
    ['is too large', 'large.svg', 'This file is larger than 5 MB.'],
  ])('says why when it %s', async (_what, path, reason) => {
    const result = await readFileForPlan(`vscode-vfs://host/studio/${path}`, studio, parts);
    expect(result).toEqual({ ok: false, reason });
  });

  it('reads beside an open plan only while no folder is open', async () => {
    const loose = { 'file:///tmp/sketch/tree.svg': '<svg/>' };
    const plans = [URI.parse('untitled:Untitled-1'), URI.parse('file:///tmp/sketch/plan.mahl')];
    const uri = 'file:///tmp/sketch/tree.svg';
    expect(await readFileForPlan(uri, { folders: [], plans }, filesWith(loose))).toEqual({
      ok: true,
      text: '<svg/>',
    });
    expect(await readFileForPlan(uri, { ...studio, plans }, filesWith(loose))).toMatchObject({ ok: false });
    expect(await readFileForPlan(uri, { folders: [], plans: [] }, filesWith(loose))).toMatchObject({
      ok: false,
    });
  });
});
