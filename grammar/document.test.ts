import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAgain, readDocument, type Reading } from './document.js';

const blocks = [
  ['// A street.', 'plan    "Street"', ''],
  ['canvas  80 x 60 cm', '  ground  #8a7a66  // warm', ''],
  ['object  wall, dominant', '  shape   outline (1, 2) (3, 4)', '    (5, 6)', '  value   2'],
  ['object  roof', '  value   2', '', '  edges   soft'],
  ['objct   dog', '  value   2'],
  ['  value   3'],
  ['object  moon', '  shape   ellipse 3 x 4 at (5, 6)', '    value 2'],
  ['colour  slate #44525e', 'colour  slat'],
];
const written = fc.constantFrom(
  ...['', '', ' ', '  ', '\t', '\n', '\n\n', '\r\n', '\r', '//', '"', '(', ',', '7'],
  ...['object a', '\nobject b\n', '\n  value 3\n', '\n    (1, 2) (3, 4)', '\n   edges hard\n', 'note "x"'],
);
const edit = fc.record({ at: fc.nat(400), taken: fc.oneof(fc.nat(3), fc.nat(80)), put: written });
const plan = fc
  .tuple(fc.array(fc.constantFrom(...blocks), { maxLength: 12 }), fc.constantFrom('\n', '\n', '\r\n'))
  .map(([parts, ending]) => parts.flat().join(ending));

/** All of a reading but what is kept with its lines. */
function comparable({ lines, nodes, detached, problems, comments, losses, isEven }: Reading): unknown {
  const placed = lines.map(({ source, level, entry, reading }) => [source.text, level, entry?.kind, reading]);
  return { placed, nodes, detached, problems, comments, losses, isEven };
}

describe('a text that was read before', () => {
  it('is read as afresh, edit after edit', () => {
    fc.assert(
      fc.property(plan, fc.array(edit, { minLength: 1, maxLength: 8 }), (text, edits) => {
        let now = text;
        let reading = readDocument(now);
        for (const { at, taken, put } of edits) {
          const from = Math.min(at, now.length);
          now = now.slice(0, from) + put + now.slice(from + taken);
          reading = readAgain(now, reading);
          expect(comparable(reading)).toEqual(comparable(readDocument(now)));
        }
      }),
      { numRuns: 500 },
    );
  });

  it('keeps what stands before and after the block that changed', () => {
    const before = readDocument('object a\n  value 1\nobject b\n  value 2\nobject c\n  value 3');
    const after = readAgain('object a\n  value 1\nobject b\n  value 4\nobject c\n  value 3', before);
    expect(after.nodes[0]).toBe(before.nodes[0]);
    expect(after.nodes[1]).not.toBe(before.nodes[1]);
    expect(after.nodes[2]).toBe(before.nodes[2]);
    expect(after.lines[1]).toBe(before.lines[1]);
    expect(after.lines[5]).toBe(before.lines[5]);
  });

  it('moves what stands below lines that came in, with the same statements', () => {
    const before = readDocument('object a\n  value 1\nobject b // so\n  value 9x');
    const after = readAgain('object a\n  edges soft\n  value 1\nobject b // so\n  value 9x', before);
    expect(after.nodes[1]).toMatchObject({ line: 3, lastLine: 4 });
    expect(after.nodes[1]?.statement).toBe(before.nodes[1]?.statement);
    expect(after.comments.map(({ line }) => line)).toEqual([3]);
    expect(after.problems.map(({ line }) => line)).toEqual([4]);
  });

  it('is read on to the end where a line disagrees with the blocks above it', () => {
    const text = 'object a\n    value 1\n  edges soft\nobject b\n  value 2';
    const uneven = readAgain(text, readDocument(text.replace('  edges', '    edges')));
    expect(comparable(uneven)).toEqual(comparable(readDocument(text)));
    const even = readAgain(text.replace('  edges', '    edges'), uneven);
    expect(even.isEven).toBe(true);
    expect(even.problems).toEqual([]);
  });
});
