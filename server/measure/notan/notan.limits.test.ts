import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';
import type { TonePiece } from './notan.js';

/** The dark pieces on a light ground, on a canvas that has a cell to a millimetre. */
function darks(...shapes: readonly string[]): readonly TonePiece[] {
  const objects = shapes.map((shape, index) => `object  thing-${index}\n  shape   ${shape}\n  value   1\n`);
  const plan = planOf(`canvas  1024 x 768 mm\n  ground  N 9/\n${objects.join('')}`);
  return measure(plan).notan.tones[0]?.pieces ?? [];
}

const BEAM = 'rectangle (100, 100) to (300, 300)';

/** A heuristic, without a source. */
describe('two darks are one piece', () => {
  it('when they touch along three thousandths of the long side', () => {
    const post = (touching: number) => `rectangle (300, ${300 - touching}) to (400, 500)`;
    expect([2, 3].map((touching) => darks(BEAM, post(touching)).length)).toEqual([2, 1]);
  });

  it('or along a quarter of the border of a smaller one', () => {
    const crumb = (long: number) => `rectangle (300, 150) to (${300 + long}, 152)`;
    expect([2, 3].map((long) => darks(BEAM, crumb(long)).length)).toEqual([1, 2]);
  });
});

describe('the place inside a piece', () => {
  it('is as far from all sides: of a triangle about where the inscribed circle has its middle (Euclid IV, 4)', () => {
    const [sail] = darks('outline (100, 100) (700, 100) (100, 700)');
    const middle = 100 + 600 * (1 - Math.SQRT1_2);
    // Distances over a raster are those of Borgefors 1986, up to 8 % off, in blocks of 4 mm.
    expect(Math.abs((sail?.at.x ?? 0) - middle)).toBeLessThan(7);
    expect(Math.abs((sail?.at.y ?? 0) - middle)).toBeLessThan(7);
  });
});
