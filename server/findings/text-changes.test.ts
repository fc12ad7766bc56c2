import { describe, expect, it } from 'vitest';
import { changedText, type TextChange } from './text-changes.js';

const LINES = ['object  jug', '  value   4', 'object  cup'];

function change(line: number, from: number, to: number, text: string): TextChange {
  return { from: { line, column: from }, to: { line, column: to }, text };
}

describe('a text after changes', () => {
  const { text, onward } = changedText(LINES, [
    change(2, 0, 0, 'focus   centre\n'),
    change(1, 10, 11, '12'),
    change(0, 11, 11, ', dominant'),
  ]);

  it('has each of them, in whatever order they are given', () => {
    expect(text).toBe('object  jug, dominant\n  value   12\nfocus   centre\nobject  cup');
  });

  it.each([
    ['before them all', [0, 8], [0, 8]],
    ['that is replaced', [1, 10], [1, 10]],
    ['behind what is replaced', [1, 11], [1, 12]],
    ['where something is written before it', [2, 0], [3, 0]],
    ['further on', [2, 8], [3, 8]],
  ] as const)('has a place %s at %j where it was at %j', (_, [line, column], [newLine, newColumn]) => {
    expect(onward({ line, column })).toEqual({ line: newLine, column: newColumn });
  });

  it('may lose a line', () => {
    const fewer = changedText(LINES, [
      { from: { line: 1, column: 0 }, to: { line: 2, column: 0 }, text: '' },
    ]);
    expect(fewer.text).toBe('object  jug\nobject  cup');
    expect(fewer.onward({ line: 2, column: 8 })).toEqual({ line: 1, column: 8 });
  });

  it('has what is written later at one place later', () => {
    expect(changedText(['a'], [change(0, 1, 1, 'b'), change(0, 1, 1, 'c')]).text).toBe('abc');
  });
});
