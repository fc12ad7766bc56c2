import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { editsWithin, minimalEdits } from './edits.js';

const edited = (before: string, after: string): string =>
  TextDocument.applyEdits(TextDocument.create('plan', 'mahlstick', 1, before), [
    ...minimalEdits(before, after),
  ]);

describe('the edits between two texts', () => {
  test('the same text needs none', () => {
    expect(minimalEdits('a\nb\n', 'a\nb\n')).toEqual([]);
  });

  test('a changed line is edited where it changed', () => {
    expect(minimalEdits('object  sky\n  value 4\n', 'object sky\n  value 4\n')).toEqual([
      { range: { start: { line: 0, character: 7 }, end: { line: 0, character: 8 } }, newText: '' },
    ]);
  });

  test('blank lines that go leave their neighbours alone', () => {
    expect(minimalEdits('a\n\n\n\nb\nc', 'a\n\nb\nc')).toEqual([
      { range: { start: { line: 2, character: 0 }, end: { line: 4, character: 0 } }, newText: '' },
    ]);
  });

  test('lines put in end as the others do', () => {
    expect(edited('a\r\nb', 'a\r\nx\r\nb')).toBe('a\r\nx\r\nb');
  });

  test('a pair of surrogates is not cut', () => {
    expect(minimalEdits('🎨', '🎩')).toEqual([
      { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 2 } }, newText: '🎩' },
    ]);
  });

  test('only those within the range', () => {
    const edits = minimalEdits('a \nb \nc ', 'a\nb\nc');
    const range = { start: { line: 1, character: 0 }, end: { line: 2, character: 0 } };
    expect(editsWithin(edits, range).map((edit) => edit.range.start.line)).toEqual([1]);
  });

  test('always lead from the one to the other', () => {
    const text = fc
      .array(fc.constantFrom('', 'a', 'b ', '  c', '🎨', '🎩'), { maxLength: 12 })
      .map((lines) => lines.join('\n'));
    fc.assert(fc.property(text, text, (before, after) => edited(before, after) === after));
  });
});
