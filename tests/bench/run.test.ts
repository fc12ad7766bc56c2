import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import process from 'node:process';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { partNames } from './options.js';

const patienceMilliseconds = 240_000;

describe('a quick benchmark of this server alone', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'mahlstick-benchmark-'));
  const read = (file: string) => readFileSync(path.join(folder, file), 'utf8');
  beforeAll(async () => {
    const words = [path.join(import.meta.dirname, 'run.mjs'), '--quick', '--alone', '--to', folder];
    await promisify(execFile)(process.execPath, words, { timeout: patienceMilliseconds });
  }, patienceMilliseconds);
  afterAll(() => rmSync(folder, { recursive: true }));

  it('measures every part', () => {
    expect(Object.keys(JSON.parse(read('bench.json')) as object)).toEqual(
      expect.arrayContaining([...partNames]),
    );
    for (const row of [
      'mahlstick, a value',
      'mahlstick, an object moved: its drawing',
      'a value: the same',
      'all of it',
    ])
      expect(read('bench.md')).toMatch(new RegExp(`^\\| ${row} +\\|.* \\d+(?:\\.\\d+)? \\(`, 'mu'));
  });

  it('leaves blank what could not be measured', () => {
    expect(read('bench.md')).not.toMatch(/NaN|Infinity|undefined/u);
    expect(read('bench.md')).toMatch(/^\| node -e 0 .*\d\) \| +\| +\|$/mu);
  });
});
