import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCommonLine } from './common-lines.js';
import { lexLine } from './lexer.js';
import { lineParser } from './line-parser.js';
import { SourceLine } from './lines.js';
import { statements } from './statements.js';

const examples = path.resolve(import.meta.dirname, '../examples');
const lines = readdirSync(examples)
  .filter((name) => name.endsWith('.mahl'))
  .flatMap((name) => readFileSync(path.join(examples, name), 'utf8').split('\n'))
  .filter((line) => line.trim() !== '' && !line.trim().startsWith('//'));

/** What usual lines are made of, right and wrong. */
const pieces = fc.constantFrom(
  ...['object', 'shape', 'colour', 'value', 'plane', 'edges', 'detail', 'note', 'x', 'X', 'to', 'at'],
  ...['ground', 'concept', 'avoid', 'mood', 'support', 'medium', 'linen', 'quiet,'],
  ...['rectangle', 'ellipse', 'outline', 'smooth', 'hard', 'Hard', 'dominant', 'middle', 'fine', 'against'],
  ...['(', ')', ',', '%', '-', '–', '/', '.', '"', '#', '×', ':', '@', '\\', '’', '_'],
  ...[
    '3',
    '12.25',
    '.5',
    '007',
    '2026',
    '1/2',
    '½',
    '0.1234567890123456',
    '1000000000',
    '1000000001',
    '8 x 5',
  ],
  ...[
    '(1, 2)',
    '(-1.5,40%)',
    '(1, 2) (3, 4)',
    '(1 2)',
    '(3 cm, 4)',
    '3 left',
    '"wet"',
    '"a \\" b"',
    '#2f6',
    '#2f6f',
  ],
  ...['cm', 'N', '5R', 'PR108', 'weiß', 'focus', '//', '// so', '\t', ' ', '\u00a0'],
);
const made = fc
  .tuple(
    fc.constantFrom('', '  ', '\t', '× '),
    fc.array(pieces, { maxLength: 9 }),
    fc.constantFrom('', ' ', ' '),
  )
  .map(([indentation, parts, between]) => indentation + parts.join(between));
const blocksRead = ['object', 'shape', 'canvas', 'plan'] as const;
const about = statements.filter(({ in: blocks }) => blocksRead.some((block) => blocks.includes(block)));

describe('lines as nearly all are', () => {
  it('say what the grammar reads in them, and other lines are left to it', () => {
    fc.assert(
      fc.property(fc.oneof(made, fc.constantFrom(...lines)), (text) => {
        const opening = new SourceLine(text).opening?.canonical;
        for (const entry of about) {
          if (entry.words.length > 0 && entry.words[0] !== opening) continue;
          expect(new SourceLine(text).readAs(entry)).toEqual(lineParser.read(entry, text, lexLine(text)));
        }
      }),
      { numRuns: 4_000 },
    );
  });

  it.each([
    ['object', '  object  thing1, dominant'],
    ['shape', '  shape   rectangle 12.5 x 8 at (40, 35%)'],
    ['shape', '\tshape rectangle (-1, 2)  to (3,4)'],
    ['shape', 'shape   smooth (12.25, 3), (-0.5, 40%) (7, 8)'],
    ['points', '(1, 2) (3, 4)'],
    ['colour', 'colour  slate'],
    ['colour', 'colour  #2f6f73'],
    ['value', 'value   3.5'],
    ['edges', 'edges   lost'],
    ['note', 'note    "Wet into wet."'],
    ['colour definition', 'colour  slate #44525e dominant'],
    ['colour definition', 'colour  rust slate, discord'],
    ['ground', 'ground  #8a7a66, complement'],
    ['concept', 'concept "Everything leans."'],
    ['avoid', 'avoid   "a postcard"'],
    ['mood', 'mood    quiet, a little cold, about to snow'],
    ['support', 'support linen, oil ground '],
    ['medium', 'medium  "oil"'],
  ])('are read at once as %s: %s', (kind, text) => {
    const entry = statements.find((each) => each.kind === kind);
    const { opening } = new SourceLine(text);
    if (entry === undefined || opening === undefined) throw new Error('nothing opens the line');
    const read = readCommonLine(entry, text, opening.word);
    expect(read).toEqual(lineParser.read(entry, text, lexLine(text)));
  });
});
