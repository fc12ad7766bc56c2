import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { keep, keptCases } from './corpus.js';

it('keeps a case that failed, without the folder of the machine that it failed on', () => {
  const root = mkdtempSync(path.join(tmpdir(), 'mahlstick-corpus-'));
  try {
    const what = `It differs.\n    at hold (${path.join(root, 'tests/fuzz/child.ts')}:44:5)`;
    const file = keep(root, 'edits', { what, seed: 7, case: { steps: [] } });
    const kept: unknown = JSON.parse(readFileSync(file, 'utf8'));
    expect(kept).toEqual({
      what: 'It differs.\n    at hold (tests/fuzz/child.ts:44:5)',
      seed: 7,
      case: { steps: [] },
    });
    expect(keptCases(root, 'edits')).toEqual([{ steps: [] }]);
  } finally {
    rmSync(root, { recursive: true });
  }
});
