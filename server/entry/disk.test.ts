import { execFileSync } from 'node:child_process';
import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { URI } from 'vscode-uri';
import { toldAnswer } from '../../tests/support/told-answer.js';
import { readBytesFromDisk, readFromDisk } from './disk.js';

let base: string;

beforeAll(async () => {
  base = await mkdtemp(path.join(os.tmpdir(), 'mahlstick-'));
  await mkdir(path.join(base, 'studio', 'parts'), { recursive: true });
  await writeFile(path.join(base, 'studio', 'door.svg'), '<svg/>');
  await writeFile(path.join(base, 'studio', 'latin1.svg'), Buffer.from([0x3c, 0xe9, 0x3e]));
  await writeFile(path.join(base, 'studio', 'large.svg'), Buffer.alloc(5 * 1024 * 1024 + 1, 0x20));
  await writeFile(path.join(base, 'studio', 'full.svg'), Buffer.alloc(5 * 1024 * 1024, 0x20));
  await writeFile(path.join(base, 'secret.svg'), 'secret');
  await symlink(path.join(base, 'secret.svg'), path.join(base, 'studio', 'out.svg'));
  await symlink(path.join(base, 'studio', 'door.svg'), path.join(base, 'studio', 'in.svg'));
  await symlink(path.join(base, 'studio', 'ring.svg'), path.join(base, 'studio', 'ring.svg'));
  await symlink(path.join(base, 'studio'), path.join(base, 'link-to-studio'));
  execFileSync('mkfifo', [path.join(base, 'studio', 'pipe.svg')]);
});

afterAll(() => rm(base, { recursive: true, force: true }));

const uriOf = (file: string) => URI.file(path.join(base, file)).toString();
const read = (file: string, root = 'studio') => readFromDisk(uriOf(file), [uriOf(root)]);

test('a text below the root', async () => {
  expect(await read('studio/door.svg')).toEqual({ ok: true, text: '<svg/>' });
  expect(await read('studio/in.svg')).toEqual({ ok: true, text: '<svg/>' });
});

test('a root that is itself a link', async () => {
  expect(await read('link-to-studio/door.svg', 'link-to-studio')).toEqual({ ok: true, text: '<svg/>' });
});

test('as large as the limit, and no larger', async () => {
  expect((await read('studio/full.svg')).ok).toBe(true);
});

test.each([
  ['studio/out.svg', 'This file lies outside the folder that is open.'],
  ['secret.svg', 'This file lies outside the folder that is open.'],
  ['studio/ring.svg', 'This file could not be read.'],
  ['studio/none.svg', 'There is no such file.'],
  ['studio/door.svg/a.svg', 'There is no such file.'],
  ['studio/parts', 'This is not a file.'],
  ['studio/pipe.svg', 'This is not a file.'],
  ['studio/large.svg', 'This file is larger than 5 MB.'],
  ['studio/latin1.svg', 'This file is not a text in UTF-8.'],
])('%s is refused', async (file, reason) => {
  expect(toldAnswer(await read(file))).toEqual({ ok: false, reason });
});

test('what is not on a disk is refused', async () => {
  expect((await readFromDisk('http://localhost/a.svg', ['http://localhost/'])).ok).toBe(false);
});

test('photographs are read as bytes, larger ones than texts may be, and by the same rules', async () => {
  const bytesOf = (file: string) => readBytesFromDisk(uriOf(file), [uriOf('studio')]);
  expect(await bytesOf('studio/latin1.svg')).toMatchObject({ ok: true });
  const large = await bytesOf('studio/large.svg');
  expect(large.ok && large.bytes.length).toBeGreaterThan(5 * 1024 * 1024);
  expect(await bytesOf('studio/out.svg')).toMatchObject({ ok: false });
  expect(await bytesOf('secret.svg')).toMatchObject({ ok: false });
});
