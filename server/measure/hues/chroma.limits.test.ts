import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';

/** On a canvas of 100 x 50 cm, so that half a square centimetre is a hundredth of a per cent of it. */
const ROOM = `canvas  100 x 50 cm
focus   lower right
object  wall
  plane   background
  shape   rectangle (0, 0) to (100, 50)
  colour  N 5/
`;

function strongest(...objects: readonly string[]): string | undefined {
  const plan = planOf(ROOM + objects.join(''));
  return plan.objects[measure(plan).hues.strongestChroma?.object ?? -1]?.name;
}

/** A heuristic, without a source. */
describe('the strongest chroma', () => {
  it('is of what takes 0.2 % of the picture; less is a speck', () => {
    const ribbon = (area: number) =>
      strongest(
        `object  ribbon\n  shape   rectangle (10, 10) to (20, ${10 + area / 10})\n  colour  5R 5/10\n`,
        'object  coat\n  shape   rectangle (60, 10) to (80, 40)\n  colour  5R 5/4\n',
      );
    expect([9, 11].map(ribbon)).toEqual(['coat', 'ribbon']);
  });

  it('is the one nearer to the focal point, of two that are less than 0.05 apart', () => {
    const near = (chroma: number) =>
      strongest(
        'object  flag\n  shape   rectangle (0, 0) to (20, 10)\n  colour  5R 5/8\n',
        `object  coat\n  shape   rectangle (55, 25) to (75, 45)\n  colour  5R 5/${chroma}\n`,
      );
    expect([7.955, 7.945].map(near)).toEqual(['coat', 'flag']);
  });
});
