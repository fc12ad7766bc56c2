import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { toldAnswer } from '../../tests/support/told-answer.js';
import { fileSizeLimitBytes } from '../language/file-size.js';
import { filesBeside } from './files-beside.js';

const folder = fs.mkdtempSync(path.join(tmpdir(), 'mahlstick-growing-'));
const growing = path.join(folder, 'growing.svg');
afterAll(() => fs.rmSync(folder, { recursive: true }));

/** Does something as if somebody wrote to the file between each look at its size and the reading of it. */
function whileItGrowsTo<T>(bytes: number, work: () => T): T {
  const { fstatSync } = fs;
  const grown = (handle: number): fs.Stats => {
    const status = fstatSync(handle);
    fs.truncateSync(growing, bytes);
    return status;
  };
  Object.assign(fs, { fstatSync: grown });
  syncBuiltinESMExports();
  try {
    return work();
  } finally {
    Object.assign(fs, { fstatSync });
    syncBuiltinESMExports();
  }
}

/** What is read of a file that has one byte when it is looked at, and so many when it is read. */
function readGrownTo(bytes: number) {
  fs.writeFileSync(growing, '.');
  const answer = whileItGrowsTo(bytes, () => filesBeside(folder, folder)('growing.svg'));
  return answer && toldAnswer(answer);
}

describe('a file that grows while it is read', () => {
  it('is refused beyond the limit, whatever size it had before', () => {
    const tooLarge = { ok: false, reason: 'This file is larger than 5 MB.' };
    expect(readGrownTo(fileSizeLimitBytes + 1)).toEqual(tooLarge);
    expect(readGrownTo(100 * fileSizeLimitBytes)).toEqual(tooLarge);
  });

  it('is read as a whole within it', () => {
    const text = `.${'\0'.repeat(fileSizeLimitBytes - 1)}`;
    expect(readGrownTo(fileSizeLimitBytes)).toEqual({ ok: true, text });
  });
});
