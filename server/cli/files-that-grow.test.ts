import * as fs from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { toldAnswer } from '../../tests/support/told-answer.js';
import { fileSizeLimitBytes } from '../language/file-size.js';
import { filesBeside } from './files-beside.js';

const folder = fs.mkdtempSync(path.join(tmpdir(), 'mahlstick-growing-'));
const growing = path.join(folder, 'growing.svg');
let grownBytes = 0;

// As if somebody wrote to the file between the look at its size and the reading of it.
vi.mock('node:fs', async (original) => {
  const real = await original<typeof fs>();
  return {
    ...real,
    fstatSync: (handle: number) => {
      const status = real.fstatSync(handle);
      real.truncateSync(growing, grownBytes);
      return status;
    },
  };
});

afterAll(() => fs.rmSync(folder, { recursive: true }));

/** What is read of a file that has one byte when it is looked at, and so many when it is read. */
function readGrownTo(bytes: number) {
  fs.writeFileSync(growing, '.');
  grownBytes = bytes;
  const answer = filesBeside(folder, folder)('growing.svg');
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
