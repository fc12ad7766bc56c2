import { expect, it } from 'vitest';
import { marked, reasonInWords, speaking } from './localised.js';
import { reasonOf } from './reason.js';

const german = {
  'there are {0} {1}': '{1}: es gibt {0}',
  'too many': 'zu viele',
};

it('a reason is told with its values, of which one may be another reason, in the language that is spoken', () => {
  const reason = reasonOf(marked('there are {0} {1}'), 300, reasonOf(marked('too many')));
  expect(reasonInWords(reason)).toBe('there are 300 too many');
  expect(speaking(german, () => reasonInWords(reason))).toBe('zu viele: es gibt 300');
});

it('a reason without values may be a string', () => {
  expect(reasonInWords(marked('too many'))).toBe('too many');
  expect(speaking(german, () => reasonInWords(marked('too many')))).toBe('zu viele');
});

it('a reason can be copied to another thread and written as JSON', () => {
  const reason = reasonOf(marked('there are {0} {1}'), 300, reasonOf(marked('too many')));
  expect(structuredClone(reason)).toEqual(reason);
  expect(JSON.parse(JSON.stringify(reason))).toEqual(reason);
});
