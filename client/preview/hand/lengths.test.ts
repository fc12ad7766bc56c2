import { describe, expect, it } from 'vitest';
import { lengthInWords, placeInWords, sizeInWords, steps, wayInWords } from './lengths.js';

describe('lengths as they are told', () => {
  it.each([
    [3.5, 'cm', '3.5 cm'],
    [3.0000001, 'cm', '3 cm'],
    [34.6, 'mm', '35 mm'],
    [0.125, 'm', '0.125 m'],
    [2.5, 'in', '2 1/2 in'],
    [0.0625, 'in', '1/16 in'],
    [1.99, 'in', '2 in'],
    [0.75, 'in', '3/4 in'],
  ] as const)('tells %d %s as %s', (length, unit, words) => {
    expect(lengthInWords(length, unit)).toBe(words);
  });

  it('tells a way by its two directions, and leaves out what is nothing', () => {
    expect(wayInWords({ x: 3.5, y: -1 }, 'cm')).toBe('3.5 cm right, 1 cm up');
    expect(wayInWords({ x: -0.5, y: 0.02 }, 'cm')).toBe('0.5 cm left');
    expect(wayInWords({ x: 0.01, y: 0 }, 'cm')).toBe('where it was');
    expect(wayInWords({ x: 0, y: 0.5 }, 'in')).toBe('1/2 in down');
  });

  it('tells a size and a place', () => {
    expect(sizeInWords({ x: 8, y: 2 }, { x: 2, y: 6.5 }, 'cm')).toBe('6 × 4.5 cm');
    expect(placeInWords({ x: 12, y: 7.5 }, 'cm')).toBe('12 cm from the left, 7.5 cm from the top');
  });

  it('steps by a millimetre, or a sixteenth of an inch', () => {
    expect(lengthInWords(steps.cm.small, 'cm')).toBe('0.1 cm');
    expect(lengthInWords(steps.in.small, 'in')).toBe('1/16 in');
    expect(lengthInWords(steps.m.large, 'm')).toBe('0.01 m');
  });
});
