import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { andMore, canvasSize, partOrTimes, percent } from './words.js';

describe('words', () => {
  it('says shares in whole parts of a hundred, and does not call a little nothing', () => {
    expect([0.684, 0.0049, 0, 1].map(percent)).toEqual(['68 %', 'under 1 %', '0 %', '100 %']);
  });

  it('tells what is much more than the whole in times', () => {
    expect([0.84, 1.07, 2.46, 10.29].map(partOrTimes)).toEqual(['84 %', '107 %', '2.5 times', '10 times']);
  });

  it('says the size of any canvas that a plan may have, never as nothing', () => {
    const size = (canvas: string): string => canvasSize(planOf(`canvas ${canvas}`).canvas);
    expect(['80 x 50 cm', '7 1/2 x 10 in', '1.25 x 0.8 m', '0.001 x 100 m'].map(size)).toEqual([
      '80 × 50 cm',
      '7.5 × 10 in',
      '1.25 × 0.8 m',
      '0.001 × 100 m',
    ]);
  });

  it('says how many more there are', () => {
    expect([1, 2, 13].map((count) => andMore(count, 'way out', 'ways out'))).toEqual([
      'and one more way out',
      'and two more ways out',
      'and 13 more ways out',
    ]);
  });
});
