import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { partsOf, wholeOf } from './parts.js';

const BIRD = `canvas  40 x 30 cm
object  wall
  shape   rectangle (0, 0) to (40, 20)
object  bird, dominant
  shape   ellipse 12 x 8 at (20, 15)
object  wing
  shape   ellipse 6 x 3 at (21, 15)
object  feather
  shape   ellipse 2 x 1 at (21, 15)
object  twig
  shape   rectangle (10, 18) to (30, 19)
object  moth, secondary
  shape   circle 1 at (17, 14)
object  leaf
  plane   foreground
  shape   circle 1 at (18, 15)`;

describe('what lies on a thing', () => {
  it('is what lies inside its outline, in its plane, and is no principal itself', () => {
    const parts = partsOf(planOf(BIRD));
    expect(parts).toEqual([[], [2], [3], [], [], [], []]);
    expect(wholeOf(parts, 1)).toEqual([1, 2, 3]);
    expect(wholeOf(parts, 4)).toEqual([4]);
  });

  it('is nothing on a ground that runs to two sides of the canvas', () => {
    const parts = partsOf(planOf(BIRD.replace('ellipse 12 x 8 at (20, 15)', 'rectangle (0, 0) to (40, 30)')));
    expect(parts[1]).toEqual([]);
  });

  it.each([
    // All corners inside; of five three, for the two on the right go out over the sloping end.
    ['(13, 13) (17, 13) (17, 15) (13, 15)', [1]],
    ['(13, 13) (16, 13) (27, 13) (27, 15) (13, 15)', []],
  ])('lies with three quarters of its corners inside: %s', (corners, parts) => {
    const plan = planOf(
      `canvas 40 x 30 cm\nobject roof, dominant\n  shape outline (10, 10) (20, 10) (28, 20) (10, 20)\nobject tile\n  shape outline ${corners}`,
    );
    expect(partsOf(plan)[0]).toEqual(parts);
  });

  it('is nothing in a plan without objects', () => {
    expect(partsOf(planOf('canvas  40 x 30 cm'))).toEqual([]);
  });
});
