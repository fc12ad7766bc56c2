import { expect, it } from 'vitest';
import { largestOf, smallestOf } from './extremes.js';

it('the largest and the smallest of numbers are found among more than a call takes arguments', () => {
  const numbers = Array.from({ length: 300_000 }, (_, index) => (index * 7919) % 300_007);
  expect([smallestOf(numbers), largestOf(numbers)]).toEqual([0, 300_006]);
});

it('of no numbers nothing is as small as the largest, and nothing as large as the smallest', () => {
  expect([largestOf([]), smallestOf([])]).toEqual([-Infinity, Infinity]);
});
