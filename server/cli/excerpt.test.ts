import { describe, expect, it } from 'vitest';
import { cells } from './display.js';
import { excerpt } from './excerpt.js';

/** The excerpt for the place between the marks `<` and `>`. */
function marked(line: string) {
  const start = line.indexOf('<');
  const end = line.indexOf('>') - 1;
  return excerpt([line.replace(/[<>]/g, '')], { line: 0, start, end });
}

describe('excerpt', () => {
  it('puts carets under the place, without the indentation', () => {
    expect(marked('    colour <teel>')).toEqual({ line: 'colour teel', mark: '       ^^^^' });
  });

  it('keeps carets in place behind tabs and wide letters', () => {
    expect(marked('object\t柿の木 <x>')).toEqual({ line: 'object 柿の木 x', mark: '              ^' });
  });

  it('shows at least one caret, also behind the last word', () => {
    expect(marked('object<>')).toEqual({ line: 'object', mark: '      ^' });
  });

  it('cuts a long line around the place', () => {
    const points = '(1, 2) '.repeat(100);
    const found = marked(`shape outline ${points}<(oops)> ${points}`);
    expect(cells(found?.line ?? '')).toBeLessThanOrEqual(100);
    expect(found?.line.startsWith('…')).toBe(true);
    const [from, to] = [found?.mark.indexOf('^') ?? 0, found?.mark.length ?? 0];
    expect(found?.line.slice(from, to)).toBe('(oops)');
  });

  it('has nothing to show of an empty line or one that is not there', () => {
    expect(excerpt(['', '  '], { line: 1, start: 0, end: 0 })).toBeUndefined();
    expect(excerpt([], { line: 0, start: 0, end: 0 })).toBeUndefined();
  });
});
