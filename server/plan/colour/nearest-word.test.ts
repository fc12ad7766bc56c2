import { expect, test } from 'vitest';
import { nearestWord } from './nearest-word.js';

test.each([
  ['rbg', 'rgb'],
  ['gren', 'green'],
  ['oragne', 'orange'],
  ['purpel', 'purple'],
  ['ochre', undefined],
  ['re', undefined],
  ['', undefined],
])('“%s” is nearest to %s', (word, nearest) => {
  expect(nearestWord(word, ['rgb', 'red', 'green', 'orange', 'purple'])).toBe(nearest);
});
