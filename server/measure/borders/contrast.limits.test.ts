import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';

/** The pull of the edge of a square on a ground. */
function pull(ground: string, square: string): number | undefined {
  const plan = `canvas  80 x 60 cm
  ground  ${ground}
object  square
  shape   rectangle (20, 20) to (40, 40)
  colour  ${square}
  edges   hard
`;
  return measure(planOf(plan)).borders.borders[0]?.pull;
}

describe('a border', () => {
  it('is looked at in stretches of half a per cent of the diagonal', () => {
    const plan =
      'canvas  80 x 60 cm\nobject  square\n  shape   rectangle (20, 20) to (40, 40)\n  value   2\n';
    const { stretches } = measure(planOf(plan)).borders;
    expect(stretches).toHaveLength(160);
    expect(Math.max(...stretches.map(({ length }) => length))).toBeCloseTo(0.5, 6);
  });
});

/** The weights are a heuristic, without a source. */
describe('a hard edge draws the eye', () => {
  it('by six tenths of its contrast of value, as a part of all ten steps of Munsell', () => {
    expect(pull('N 5/', 'N 8/')).toBeCloseTo((0.6 * 3) / 10, 3);
  });

  it('by four tenths of its contrast of colour, as a part of a hundred in CIELAB a*, b*', () => {
    // To a place less: `lab()` is of the white D50, and the measure of D65.
    expect(pull('lab(50% 0 0)', 'lab(50% 24 18)')).toBeCloseTo((0.4 * 30) / 100, 2);
  });
});
