import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lexByPatterns, lexLine } from './lexer.js';
import { lexPlain } from './plain-lexer.js';

const examples = path.resolve(import.meta.dirname, '../examples');
const lines = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .flatMap((name) => readFileSync(path.join(examples, name), 'utf8').split('\n'));

/** What a line is made of, right and wrong, with and without blanks between. */
const pieces = fc.constantFrom(
  ...[
    'object',
    'x',
    'X',
    'N',
    '5R',
    'N5',
    'rgb',
    'PR108',
    'won’t',
    "don't",
    'a-b',
    'a-',
    '_',
    'cm',
    'Color',
    'ß',
  ],
  ...[
    '12',
    '3.5',
    '.5',
    '4',
    '2026',
    '-',
    '–',
    '/',
    '//',
    ':',
    '.',
    ',',
    '(',
    ')',
    '%',
    '°',
    '½',
    '×',
    '#2f6',
    '#',
  ],
  ...['"words"', '"a\\"b"', '"', '“so”', '\\', '\t', ' ', '  ', '\u00a0', '\v', '@', '\ud83d'],
);

describe('lines taken apart by their first characters', () => {
  it('are as the patterns take them apart, whatever they are', () => {
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 12 }), fc.constantFrom('', ' '), (parts, between) => {
        const text = parts.join(between);
        expect(lexLine(text)).toEqual(lexByPatterns(text));
      }),
      { numRuns: 2_000 },
    );
  });

  it('are nearly all lines of the examples', () => {
    for (const line of lines) expect(lexLine(line)).toEqual(lexByPatterns(line));
    const plain = lines.filter((line) => lexPlain(line) !== undefined);
    expect(plain.length).toBeGreaterThan(0.9 * lines.length);
  });

  it('are not those that may be something else', () => {
    const others = [
      'rgb(1 2 3)',
      'PR108:1',
      '2026-12-01',
      '7 1/2',
      '7.5R 4/10',
      '"a\\"b"',
      '"open',
      'weiß',
      'N 5//',
    ];
    for (const line of others) expect(lexPlain(line)).toBeUndefined();
  });
});
