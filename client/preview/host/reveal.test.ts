import { describe, expect, it } from 'vitest';
import { checkPlace } from './reveal.js';

const lines = ['plan "Quay"', '', 'object crane'];
const document = {
  version: 7,
  lineCount: lines.length,
  lineLength: (line: number) => lines[line]?.length ?? 0,
};

describe('a place that a drawing points at', () => {
  it('is there while the document has the version that was drawn', () => {
    expect(checkPlace(document, 7, { line: 2, start: 7, end: 12 })).toBe('here');
    expect(checkPlace(document, 7, { line: 1, start: 0, end: 0 })).toBe('here');
  });

  it('is stale once the document has changed, or was never at that version', () => {
    expect(checkPlace(document, 6, { line: 2, start: 7, end: 12 })).toBe('stale');
    expect(checkPlace(document, 8, { line: 2, start: 7, end: 12 })).toBe('stale');
  });

  it('is outside past the end of the document or of its line', () => {
    expect(checkPlace(document, 7, { line: 3, start: 0, end: 0 })).toBe('outside');
    expect(checkPlace(document, 7, { line: 2, start: 7, end: 13 })).toBe('outside');
    expect(checkPlace(document, 7, { line: 2, start: 9, end: 7 })).toBe('outside');
  });
});
