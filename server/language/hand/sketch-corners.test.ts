import { describe, expect, it } from 'vitest';
import { differing, handBench } from './test-support.js';

const at = (words: string): string => `canvas 40 x 30 cm\nsketch  "sheet.png"\n${words}  opacity 40%\n`;
const place = { kind: 'sketch corner', to: { x: 201.4, y: 59 }, width: 800, height: 600 } as const;

describe('a corner of the canvas in the sketch', () => {
  it.each([
    [
      '  corners (200, 60) (640, 100) (740, 560) (40, 540)\n',
      'upper right',
      'corners (200, 60) (201, 59) (740, 560) (40, 540)',
    ],
    [
      '  corners  ( 3% , 4%), (97%, 3%)  (98%, 96%) (20, 5%)  // of the photograph\n',
      'lower left',
      'corners  ( 3% , 4%), (97%, 3%)  (98%, 96%) (201, 9.8%)  // of the photograph',
    ],
    ['', 'upper left', 'corners (25.2%, 9.8%) (100%, 0%) (100%, 100%) (0%, 100%)'],
  ] as const)('%s by its %s', (words, corner, after) => {
    expect(differing(at(words), handBench(at(words)).after({ ...place, corner }))).toBe(after);
  });

  it('tells a pixel from the next in a large photograph', () => {
    const change = { ...place, corner: 'lower right', to: { x: 3_999, y: 1 }, width: 4_000 } as const;
    expect(handBench(at('')).after(change)).toContain('(99.98%, 0.2%)');
  });

  it('may lie a little beside the sketch', () => {
    const change = { ...place, corner: 'upper left', to: { x: -8, y: -0.2 } } as const;
    expect(handBench(at('  corners (2, 6) (640, 10) (740, 560) (40, 540)\n')).after(change)).toContain(
      'corners (-8, 0) (640, 10)',
    );
  });

  it.each([
    ['canvas 40 x 30 cm\n', 'The plan has no sketch any more.'],
    [
      at('  corners (2 cm, 6) (640, 10) (740, 560) (40, 540)\n'),
      'The corners are given otherwise than in pixels or per cent: mend that, and they can be moved.',
    ],
  ])('of %j is refused', (text, why) => {
    expect(handBench(text).write({ ...place, corner: 'upper left' })).toBe(why);
  });
});

describe('the photograph of a sitting', () => {
  const photographed = (below: string): string =>
    `canvas 40 x 30 cm\nobject jug\n  shape circle 4 at (20, 15)\nsitting "One" on 2027-01-04\n  works jug\nsitting "Two" on 2027-01-05\n  works jug\n  photo "two.jpg"\n${below}`;
  const corner = { kind: 'sketch corner', corner: 'upper left', sitting: 1, to: { x: 80, y: 60 } } as const;
  const grey = { kind: 'grey patch', sitting: 1, to: { x: 600.2, y: 300.4 } } as const;
  const size = { width: 800, height: 600 };

  it.each([
    ['', '    corners (10%, 10%) (100%, 0%) (100%, 100%) (0%, 100%)'],
    [
      '    corners (1, 2) (640, 10) (740, 560) (40, 540)\n',
      '    corners (80, 60) (640, 10) (740, 560) (40, 540)',
    ],
  ])('has its corners placed: %j', (below, after) => {
    const text = handBench(photographed(below)).after({ ...corner, ...size });
    expect(text.trimEnd().split('\n').at(-1)).toBe(after);
  });

  it.each([
    ['', '    grey (75%, 50.1%)'],
    ['    grey (5, 6)\n', '    grey (600, 300)'],
  ])('has its grey patch placed: %j', (below, after) => {
    const text = handBench(photographed(below)).after({ ...grey, ...size });
    expect(text.trimEnd().split('\n').at(-1)).toBe(after);
  });

  it.each([
    [{ ...corner, sitting: 0 }, 'The plan has no such photograph any more.'],
    [{ ...grey, sitting: 7 }, 'The plan has no such photograph any more.'],
  ])('that is not there is refused: %j', (change, why) => {
    expect(handBench(photographed('')).write({ ...change, ...size })).toBe(why);
  });

  it('is left alone where its grey patch is given in centimetres', () => {
    expect(handBench(photographed('    grey (5 cm, 6)\n')).write({ ...grey, ...size })).toBe(
      'The grey patch is given otherwise than in pixels or per cent: mend that, and it can be moved.',
    );
  });
});
