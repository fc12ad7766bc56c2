import { expect, test } from 'vitest';
import { parse, type Block } from '../../grammar/index.js';
import { likeliestFirst } from './likeliest.js';

function words(text: string, block: Block, line = text.split('\n').length): readonly string[] {
  return likeliestFirst(parse(text), block, line).map((entry) => entry.words.join(' '));
}

test('an empty plan begins with its title and its idea, not with what few plans have', () => {
  expect(words('', 'plan').slice(0, 3)).toEqual(['plan', 'concept', 'mood']);
  expect(words('', 'plan').at(-1)).toBe('note');
});

test('a plan with a canvas goes on with objects and colours; what it has already comes last', () => {
  const offered = words('plan "a"\ncanvas 40 x 30 cm\nobject sky', 'plan');
  expect(offered.slice(0, 2)).toEqual(['object', 'colour']);
  expect(offered.slice(-2)).toEqual(['plan', 'canvas']);
});

test('an object is offered what it still lacks', () => {
  expect(words('object sky', 'object').slice(0, 5)).toEqual(['shape', 'at', 'colour', 'value', 'plane']);
  const offered = words('object sky\n  shape circle 3\n  value 2', 'object');
  expect(offered.slice(0, 3)).toEqual(['at', 'colour', 'plane']);
  expect(offered.at(-1)).toBe('value');
  expect(offered.indexOf('shape')).toBeLessThan(offered.indexOf('note'));
});

test('a line that is being written does not count as given', () => {
  expect(words('object sky\n  value 2', 'object', 1).indexOf('value')).toBe(3);
});
