import { expect, test } from 'vitest';
import { parse } from '../../grammar/index.js';
import { withinQuotes, writtenWithin } from './quotes.js';

test.each([
  ['sitting "one"', 'one'],
  ['sitting “one”', 'one'],
  ['sitting “a "great" day”', 'a "great" day'],
  ['sitting "a \\"great\\" day"', 'a \\"great\\" day'],
  ['sitting "ends in \\\\"', 'ends in \\\\'],
  ['sitting ""', ''],
  ['sitting "one', 'one'],
  ['sitting “one"', 'one"'],
  ['sitting "one\\"', 'one\\"'],
  ['sitting "', ''],
])('%s', (line, words) => {
  const { start, end } = withinQuotes(line, { start: 'sitting '.length, end: line.length });
  expect(line.slice(start, end)).toBe(words);
});

test.each(['"', '“'])('a text within %s reads as it is', (opening) => {
  const line = `sitting ${opening}one`;
  for (const text of ['a “b” c', 'a "b" c', 'back \\ slash', 'ends in \\']) {
    const within = writtenWithin(line, 'sitting '.length + 1, text);
    const [node] = parse(`sitting ${opening}${within}${opening === '“' ? '”' : '"'}`).nodes;
    expect(node?.statement).toMatchObject({ kind: 'sitting', title: { value: text } });
  }
});
