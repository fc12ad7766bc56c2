import fc from 'fast-check';
import svgpath from 'svgpath';
import { describe, expect, it } from 'vitest';
import { pathData } from './outline.js';
import { commandsOfPathData, outlineOfPathData } from './path-data.js';
import { areaOf } from './regions.js';
import { reasonInWords } from '../../../grammar/index.js';

function read(text: string, tolerance = 0.001) {
  const reading = outlineOfPathData(text, tolerance);
  if (!reading.ok) throw new Error(reasonInWords(reading.reason));
  return reading.outline;
}

describe('SVG path data', () => {
  it.each([
    ['absolute', 'M10 10 H20 V20 H10 Z', 100],
    ['relative', 'm10,10 h10 v10 h-10z', 100],
    ['moves that go on as lines', 'M0 0 10 0 10 10 0 10', 100],
    ['open, closed by a straight line', 'M0 0L10 0L10 10', 50],
    ['two pieces, the first open', 'M0 0h10v10h-10M20 0h10v10h-10', 200],
    ['a piece begun where the last one closed', 'M0 0h10v10h-10z h-5 v-5 h5', 125],
    ['numbers without spaces', 'M0 0h10v10l-10.0.0z', 100],
    ['arcs', 'M0 10a10 10 0 0 1 20 0a10 10 0 0 1-20 0z', Math.PI * 100],
    ['arc flags run together', 'M0 10a10 10 0 0120 0a10 10 0 01-20 0z', Math.PI * 100],
    ['a parabola, two thirds of its box', 'M0 0Q10 20 20 0z', (2 / 3) * 20 * 10],
    ['a smooth parabola after it', 'M0 0Q10 20 20 0T40 0z', 2 * (2 / 3) * 20 * 10],
    ['a cubic and its smooth neighbour', 'M0 0C0 10 10 10 10 0S20-10 20 0z', 2 * 0.6 * 10 * 10],
  ])('%s', (_, text, area) => {
    expect(areaOf(read(text).rings) / area).toBeCloseTo(1, 3);
  });

  it('is kept as absolute moves, lines and cubics', () => {
    expect(pathData(read('m1 1 h9 v9 q-9 0-9-9z'), 2)).toBe('M1 1L10 1L10 10C4 10 1 7 1 1Z');
  });

  it('holds even-odd holes when told to', () => {
    const reading = outlineOfPathData('M0 0h10v10h-10zM2 2h6v6h-6z', 0.01, 'evenodd');
    expect(reading.ok && areaOf(reading.outline.rings, reading.outline.fillRule)).toBeCloseTo(64, 6);
  });

  it.each([
    ['', 'the path is empty', undefined],
    [
      'M0 0R1 1 2 2',
      'at "R" stands no command; a path is made of M, L, H, V, C, S, Q, T, A and Z',
      undefined,
    ],
    ['L1 1', 'a path starts with M, the point where drawing begins', undefined],
    ['M0 0 X5', 'at "X5" stands no command; a path is made of M, L, H, V, C, S, Q, T, A and Z', 5],
    ['M0 0 L5', 'a number is missing at its end', 7],
    ['M0 0 L5,z', 'a number was expected at "z"', 8],
    ['M0 0 L NaN 3', 'a number was expected at "NaN 3"', 7],
    ['M0 0 A5 5 0 2 0 9 9z', 'the fourth and fifth numbers of an arc are 0 or 1 (at "2 0 9 9z")', 12],
    ['M0 0 L05 5', 'a number cannot begin with a needless 0 (at "05 5")', 6],
    ['M0 0 L1e 5', 'a number has no digits after its e (at "5")', 8],
    ['M0 0 L1e999 0 5 5', 'a number in the path is too large to be drawn', undefined],
    ['M0 0 h1e9 h1e9 v9', 'a number in the path is too large to be drawn', undefined],
    ['M1 1', 'the path has no area: a shape needs at least three points that are not in a line', undefined],
    [
      'M0 0 L9 0 L4 0z',
      'the path has no area: a shape needs at least three points that are not in a line',
      undefined,
    ],
    [`M0 0${'h1v1'.repeat(150_000)}`, 'the path has more than 200\u{202f}000 points', undefined],
    [`M0 0${' '.repeat(8_000_000)}`, 'the path is too long to be read', undefined],
  ])('is refused with a reason: %.24s', (text, reason, offset) => {
    const reading = outlineOfPathData(text, 0.01);
    expect(reading.ok ? 'it was read' : [reasonInWords(reading.reason), reading.offset]).toEqual([
      reason,
      offset,
    ]);
  });

  it('never throws, whatever the text', () => {
    const scrap = fc.array(
      fc.constantFrom(...'MmLlHhVvCcSsQqTtAaZzRr 0159.,-+eE\n'.split(''), '1e308', 'é'),
      {
        maxLength: 60,
      },
    );
    fc.assert(
      fc.property(scrap, (pieces) => {
        const reading = outlineOfPathData(pieces.join(''), 0.01);
        if (reading.ok)
          expect(reading.outline.rings.flatMap((ring) => [...ring]).every(Number.isFinite)).toBe(true);
        else expect(reasonInWords(reading.reason)).not.toMatch(/SvgPath|undefined/);
      }),
      { numRuns: 3000, seed: 3 },
    );
  });

  it('ends where svgpath says it does', () => {
    const text = 'm3 4c1 2 3 4 5 6s1 1 2-2t3 3q1-4 2 2a3 4 30 1 0 5 5v2h-3';
    const reading = commandsOfPathData(text);
    let end = [0, 0];
    svgpath(`${text}l0 0`).iterate((_, __, x, y) => void (end = [x, y]));
    const last = reading.ok ? reading.path.at(-2) : undefined;
    if (last?.kind !== 'L') throw new Error('the path does not end with its line');
    expect(last.x).toBeCloseTo(end[0] ?? NaN, 9);
    expect(last.y).toBeCloseTo(end[1] ?? NaN, 9);
  });
});
