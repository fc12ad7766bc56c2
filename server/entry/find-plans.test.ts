import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { URI } from 'vscode-uri';
import { findPlansOnDisk } from './find-plans.js';

let base: string;

beforeAll(async () => {
  base = await mkdtemp(path.join(os.tmpdir(), 'mahlstick-plans-'));
  for (const folder of ['studio/a/b', 'studio/.git', 'studio/node_modules', 'other'])
    await mkdir(path.join(base, folder), { recursive: true });
  for (const file of [
    'studio/z.mahl',
    'studio/a/b/deep.MAHL',
    'studio/door.svg',
    'studio/.git/c.mahl',
    'studio/node_modules/d.mahl',
    'other/e.mahl',
  ])
    await writeFile(path.join(base, file), '');
  await symlink(path.join(base, 'other'), path.join(base, 'studio/linked'));
  await symlink(path.join(base, 'other/e.mahl'), path.join(base, 'studio/e.mahl'));
});
afterAll(() => rm(base, { recursive: true, force: true }));

test('plans below the folder, those near the top first, and nothing by links or in hidden folders', async () => {
  const found = await findPlansOnDisk([URI.file(path.join(base, 'studio')).toString()]);
  const names = found.map((uri) => path.relative(base, URI.parse(uri).fsPath));
  expect(names).toEqual([path.join('studio', 'z.mahl'), path.join('studio', 'a', 'b', 'deep.MAHL')]);
});

test('nothing where there is no such folder, and nothing off the disk', async () => {
  expect(await findPlansOnDisk(['file:///no/such/folder', 'http://localhost/studio'])).toEqual([]);
});
