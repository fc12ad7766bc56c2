import { describe, expect, it } from 'vitest';
import { editDistance, nearestWord } from './nearest.js';

describe('nearestWord', () => {
  it.each([
    ['sft', 'soft'],
    ['FRIM', 'firm'],
    ['lsot', 'lost'],
    ['haard', 'hard'],
  ])('takes %s for %s', (typed, meant) => {
    expect(nearestWord(typed, ['hard', 'firm', 'soft', 'lost'])).toBe(meant);
  });

  it('suggests nothing that is not near', () => {
    expect(nearestWord('blurry', ['hard', 'firm', 'soft', 'lost'])).toBeUndefined();
  });

  it('suggests nothing for a word that is too long to be a slip of the pen', () => {
    const long = 'reed'.repeat(16);
    expect(nearestWord(`${long.slice(1)}`, [long])).toBe(long);
    expect(nearestWord(`${long}s`, [long])).toBeUndefined();
  });

  it('prefers the first of two that are equally near', () => {
    expect(nearestWord('lst', ['lost', 'last'])).toBe('lost');
  });
});

describe('editDistance', () => {
  // Damerau, "A technique for computer detection and correction of spelling errors", CACM 7 (1964): one
  // insertion, deletion, change or swap of neighbours counts one. The pair kitten/sitting is the usual
  // textbook example of the Levenshtein distance; the figures are from memory and can be counted by hand.
  it.each([
    ['', '', 0],
    ['value', '', 5],
    ['kitten', 'sitting', 3],
    ['ab', 'ba', 1],
    ['ca', 'abc', 3],
  ])('%s to %s is %i', (from, to, distance) => {
    expect(editDistance(from, to)).toBe(distance);
  });
});
