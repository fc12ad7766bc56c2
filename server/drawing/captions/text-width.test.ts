import { describe, expect, it } from 'vitest';
import { fitted, textWidth, wrapped } from './text-width.js';

describe('the width of text', () => {
  it('counts narrow, broad and wide letters as such, and marks as nothing', () => {
    expect(textWidth('ill', 10)).toBeLessThan(textWidth('mmm', 10));
    expect(textWidth('月', 10)).toBe(10);
    expect(textWidth('e\u0301', 10)).toBe(textWidth('e', 10));
    expect(textWidth('abc', 20)).toBe(2 * textWidth('abc', 10));
  });

  it('cuts a line to a width', () => {
    expect(fitted('lantern', 10, 200)).toBe('lantern');
    const cut = fitted('a very long name indeed', 10, 60);
    expect(cut).toMatch(/^a very.*…$/);
    expect(textWidth(cut, 10)).toBeLessThanOrEqual(60);
  });

  it('wraps into lines, the last of which is cut', () => {
    const lines = wrapped('one two three four five six seven eight nine ten', 10, 60, 3);
    expect(lines).toHaveLength(3);
    for (const line of lines) expect(textWidth(line, 10)).toBeLessThanOrEqual(60);
    expect(lines[2]).toMatch(/…$/);
    expect(wrapped('', 10, 60, 3)).toEqual([]);
  });

  it('does not part a figure from what it counts', () => {
    const lines = wrapped('the darks hold 41 % of it', 10, textWidth('the darks hold 41', 10) + 1, 3);
    expect(lines[0]).toBe('the darks hold');
  });
});
