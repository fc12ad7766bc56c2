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
