import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import * as fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { lexLine } from './lexer.js';
import { lineParser, readLine } from './line-parser.js';
import { parse } from './parse.js';
import { statements } from './statements.js';

const examples = path.resolve(import.meta.dirname, '../examples');
const texts = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .map((name) => readFileSync(path.join(examples, name), 'utf8'));
const words = texts
  .flatMap((text) => text.split('\n'))
  .map((line) => line.trim())
  .filter((line) => line !== '' && !line.startsWith('//'))
  .map((line) => line.split(/\s+/));

/** A line of an example, with words of it left out, doubled, and taken from elsewhere. */
const spoilt = fc
  .record({
    line: fc.constantFrom(...words),
    other: fc.constantFrom(...words),
    at: fc.nat(12),
    change: fc.constantFrom('none', 'leave out', 'double', 'put in', 'end'),
  })
  .map(({ line, other, at, change }) => {
    const place = at % line.length;
    const changed: Readonly<Record<typeof change, readonly string[]>> = {
      none: line,
      'leave out': line.toSpliced(place, 1),
      double: line.toSpliced(place, 0, line[place] ?? ''),
      'put in': line.toSpliced(place, 0, other[at % other.length] ?? ''),
      end: line.slice(0, place),
    };
    return changed[change].join(' ');
  });

describe('lines read without what only faulty ones need', () => {
  it('say what the whole parser reads in them, as whatever statement they are read', () => {
    fc.assert(
      fc.property(spoilt, fc.constantFrom(undefined, ...statements), (text, other) => {
        const own = statements.find((entry) => entry.words[0] === text.split(' ')[0]);
        const entry = other ?? own;
        if (entry === undefined) return;
        const line = lexLine(text);
        expect(readLine(entry, text, line)).toEqual(lineParser.read(entry, text, lexLine(text)));
      }),
      { numRuns: 800 },
    );
  });

  it('are all lines that are right', () => {
    const whole = vi.spyOn(lineParser, 'read');
    const problems = texts.flatMap((text) => parse(text).problems);
    expect(problems).toEqual([]);
    expect(whole).not.toHaveBeenCalled();
    whole.mockRestore();
  });
});
