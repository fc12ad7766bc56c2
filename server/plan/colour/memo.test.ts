import { expect, test } from 'vitest';
import { memoise } from './memo.js';

test('a result is worked out once, also when it is undefined', () => {
  const remember = memoise<number | undefined>(10);
  let worked = 0;
  const ask = (key: string, result: number | undefined) =>
    remember(key, () => {
      worked++;
      return result;
    });
  expect([ask('a', 1), ask('a', 2), ask('b', undefined), ask('b', 3)]).toEqual([1, 1, undefined, undefined]);
  expect(worked).toBe(2);
});

test('a full store begins afresh', () => {
  const remember = memoise<number>(2);
  for (const key of ['a', 'b', 'c']) remember(key, () => 1);
  expect(remember('a', () => 2)).toBe(2);
  expect(remember('c', () => 2)).toBe(1);
});
