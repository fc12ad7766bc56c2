import { describe, expect, test } from 'vitest';
import { contains, resolvePath } from './paths.js';

const plan = 'file:///studio/winter/tram.mahl';
const studio = ['file:///studio'];

describe('the file that a path means', () => {
  test.each([
    ['tram.svg', 'file:///studio/winter/tram.svg'],
    ['./parts/door.svg', 'file:///studio/winter/parts/door.svg'],
    ['parts\\door.svg', 'file:///studio/winter/parts/door.svg'],
    ['../base.mahl', 'file:///studio/base.mahl'],
    ['été 1.svg', 'file:///studio/winter/%C3%A9t%C3%A9%201.svg'],
    ['100%25#1?.svg', 'file:///studio/winter/100%2525%231%3F.svg'],
  ])('%s', (path, uri) => {
    expect(resolvePath(plan, path, studio)).toEqual({ ok: true, uri });
  });

  test.each([
    ['', 'No file is named.'],
    ['/etc/passwd', 'Files are named by their path from the plan, not from the top of the disk.'],
    ['\\\\server\\share', 'Files are named by their path from the plan, not from the top of the disk.'],
    ['http://example.com/a.svg', 'Files are named by their path from the plan, not by an address.'],
    ['C:\\a.svg', 'Files are named by their path from the plan, not by an address.'],
    ['a\0.svg', 'This holds a character that no file name can hold.'],
    ['../../private/a.svg', 'This file lies outside the folder that is open.'],
    ['../../../../../studio/a.svg', 'This file lies outside the folder that is open.'],
    ['..\\..\\a.svg', 'This file lies outside the folder that is open.'],
    ['../../studio-two/a.svg', 'This file lies outside the folder that is open.'],
  ])('%s is refused', (path, reason) => {
    expect(resolvePath(plan, path, studio)).toEqual({ ok: false, reason });
  });

  test('with no folder open, only what lies in or below the plan’s own folder', () => {
    expect(resolvePath(plan, 'tram.svg', []).ok).toBe(true);
    expect(resolvePath(plan, '../base.mahl', []).ok).toBe(false);
  });

  test('a plan outside the open folder keeps its own', () => {
    expect(resolvePath('file:///elsewhere/a.mahl', 'a.svg', studio).ok).toBe(true);
    expect(resolvePath('file:///elsewhere/a.mahl', '../b/a.svg', studio).ok).toBe(false);
  });

  test('a plan that was never saved has no folder', () => {
    expect(resolvePath('untitled:Untitled-1', 'a.svg', studio)).toEqual({
      ok: false,
      reason: 'Save the plan first: files are looked for beside it.',
    });
  });

  test('on a virtual file system', () => {
    expect(resolvePath('vscode-vfs://github/a/b/plan.mahl', 'x.svg', ['vscode-vfs://github/a/b'])).toEqual({
      ok: true,
      uri: 'vscode-vfs://github/a/b/x.svg',
    });
    expect(contains('vscode-vfs://github/a', 'vscode-vfs://gitlab/a/b')).toBe(false);
  });
});
