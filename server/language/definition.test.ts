import { expect, test } from 'vitest';
import { openPlan } from './test-support.js';

const text = `canvas 40 x 30 cm
scale 5
  group dark 1-2, light 3-5
budget value dark 30%, light 70%
colour teal #2f6f73
palette
  paint ultra PB29
  mother ultra
object sky
  colour teal
object Straße, dominant
  edges soft against sky
lead wires from left of sky to straße
path sky, STRASSE
cue "bells" carried by sky
lead sky from left edge to straße
allow lead past focus for sky, wires because "so"
allow hidden object for Straße because "so"
sitting "a"
  works sky
`;

function definedAt(marked: string): string | undefined {
  const { service, uri, position, text: plain } = openPlan(marked);
  const range = service.definition(uri, position)?.targetSelectionRange;
  return range && plain.split('\n')[range.start.line]?.slice(range.start.character, range.end.character);
}

const at = (words: string): string => {
  expect(text).toContain(words);
  return text.replace(words, `${words.slice(0, -1)}|${words.slice(-1)}`);
};

test.each([
  ['value dark', 'dark'],
  ['colour teal\nobject', undefined],
  ['  colour teal', 'teal'],
  ['mother ultra', 'ultra'],
  ['against sky', 'sky'],
  ['left of sky', 'sky'],
  ['to straße', 'Straße'],
  ['path sky', 'sky'],
  ['carried by sky', 'sky'],
  ['works sky', 'sky'],
  ['sky, wires', 'wires'],
  ['object for Straße', 'Straße'],
])('%s', (words, name) => {
  expect(definedAt(at(words))).toBe(name);
});

test('nothing for a name that nothing has, and for a word of the language', () => {
  expect(definedAt('path no|body')).toBeUndefined();
  expect(definedAt('ca|nvas 40 x 30 cm')).toBeUndefined();
});

test('a place is found from right before its name to right behind it', () => {
  expect(definedAt('object sky\npath |sky')).toBe('sky');
  expect(definedAt('object sky\npath sky|')).toBe('sky');
});

test('the definition and every use are highlighted', () => {
  const { service, uri, position } = openPlan(at('path sky'));
  const lines = service.highlights(uri, position).map(({ range, kind }) => [range.start.line, kind]);
  expect(lines).toEqual([
    [8, 3],
    [11, 2],
    [12, 2],
    [13, 2],
    [14, 2],
    [19, 2],
  ]);
});

test('an exception for a rule about leads means the lead, where an object has its name too', () => {
  const { service, uri, position } = openPlan(text.replace('focus for sky', 'focus for s|ky'));
  expect(service.definition(uri, position)?.targetSelectionRange.start.line).toBe(15);
});
