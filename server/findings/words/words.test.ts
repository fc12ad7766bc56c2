import { describe, expect, it } from 'vitest';
import {
  againstLimit,
  bothShares,
  counted,
  enoughPercent,
  length,
  longerThan,
  sharesApart,
  someOf,
  timesAbove,
} from './words.js';

describe('a length', () => {
  it.each([
    [447.21, 'mm', '447 mm'],
    [9.84, 'mm', '9.8 mm'],
    [14.52, 'cm', '14.5 cm'],
    [0.354, 'm', '0.35 m'],
    [0.0354, 'm', '0.035 m'],
    [4.77, 'in', '4.8 in'],
    [0.142, 'in', '0.14 in'],
    [0, 'cm', '0 cm'],
  ] as const)('of %d %s is told no finer than a rule shows it: %s', (size, unit, told) => {
    expect(length(size, { unit })).toBe(told);
  });

  it.each([
    [0.4, 'cm', '0.5 cm'],
    [0.44, 'cm', '0.5 cm'],
    [0, 'cm', '0.1 cm'],
    [39, 'mm', '40 mm'],
    [0.995, 'in', '1 in'],
  ] as const)('longer than %d %s is told as %s', (size, unit, told) => {
    expect(longerThan(size, { unit })).toBe(told);
  });
});

describe('a share', () => {
  it.each([
    [0.49, 0.51, ['49 %', '51 %']],
    [0.4998, 0.5002, ['49.98 %', '50.02 %']],
    [0.0002, 0.0004, ['0.02 %', '0.04 %']],
    [0.5, 0.5, ['50 %', '50 %']],
  ] as const)('of %d is told apart from %d', (one, other, told) => {
    expect(sharesApart(one, other)).toEqual(told);
  });

  it.each([
    [0.031, '3.1 %'],
    [0.0311, '3.2 %'],
    [0.0002, '0.1 %'],
    [0, '0.1 %'],
  ] as const)('of %d is asked for as %s, which is enough', (share, told) => {
    expect(enoughPercent(share)).toBe(told);
  });
});

describe('a length against its limit', () => {
  const CANVAS = { unit: 'cm', diagonal: 100 } as const;

  it('is told in the unit of the canvas, the limit with its part of the diagonal too', () => {
    expect(againstLimit(0.368, 0.05, CANVAS)).toEqual({
      measured: '36.8 cm',
      wanted: '5 cm (5 % of the diagonal)',
      isNothing: false,
    });
  });

  it('is told as finely as it takes to see on which side it lies', () => {
    expect(againstLimit(0.05004, 0.05, CANVAS).measured).toBe('5.004 cm');
    expect(againstLimit(0.05, 0.05, CANVAS).measured).toBe('5 cm');
  });

  it('may be a part of a side', () => {
    const width = { size: 60, name: 'the width' as const };
    expect(againstLimit(0.2, 0.12, CANVAS, width)).toEqual({
      measured: '12 cm',
      wanted: '7.2 cm (12 % of the width)',
      isNothing: false,
    });
  });
});

describe('numbers in sentences', () => {
  it('are words up to twelve', () => {
    expect([1, 3, 12, 13].map(counted)).toEqual(['one', 'three', 'twelve', '13']);
  });

  it('are so many times, told beyond what is let pass', () => {
    expect([2.04, 1.44, 1.22].map((times) => timesAbove(times, 1.2))).toEqual([
      'twice',
      '1.4 times',
      '1.22 times',
    ]);
  });

  it('tell two shares once that read alike', () => {
    expect(bothShares(0.068, 0.065)).toBe('6.8 % and 6.5 % of the picture');
    expect(bothShares(0.0531, 0.0529)).toBe('5.3 % of the picture each');
  });

  it('say how many names are left out', () => {
    const names = ['`jar`', '`tin`', '`pot`', '`salt`'];
    expect(someOf(names, 4)).toBe('`jar`, `tin`, `pot` and `salt`');
    expect(someOf(names, 2)).toBe('`jar`, `tin` and two more');
  });
});
