import { describe, expect, it } from 'vitest';
import { checkEdits } from './edit-check.js';

const lines = ['object pear', '  at (25, 16)'];
const document = {
  version: 4,
  lineCount: lines.length,
  lineLength: (line: number) => lines[line]?.length ?? 0,
};
const edit = (line: number, start: number, end: number) => ({
  range: { start: { line, character: start }, end: { line, character: end } },
  newText: '20',
});

describe('edits of a change by hand', () => {
  it('are made in the version that they are for, at places that are there', () => {
    expect(checkEdits(document, 4, [edit(1, 6, 8)])).toBe('here');
    expect(checkEdits(document, 3, [edit(1, 6, 8)])).toBe('stale');
    expect(checkEdits(document, 4, [edit(1, 6, 8), edit(2, 0, 0)])).toBe('outside');
    expect(checkEdits(document, 4, [edit(0, 4, 12)])).toBe('outside');
  });
});
