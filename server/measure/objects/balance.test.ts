import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { visibleAreas } from '../areas/areas.js';
import { type BalanceMeasure, measureBalance } from './balance.js';
import { partsOf } from '../areas/parts.js';

function balanceOf(text: string): BalanceMeasure {
  const plan = planOf(text);
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  return measureBalance(plan, visibleAreas(plan.canvas, layers), partsOf(plan));
}

/** A ground of value 5 without chroma under all, so that only what is said to weigh weighs. */
const CANVAS = 'canvas  100 x 50 cm\n  ground  N 5/';

describe('a balance worked out by hand', () => {
  /*
   * Poore, Pictorial Composition (1903), "Balance": an important item near the centre is balanced by a small one
   * farther out, as on the steelyard. The large block is 10 x 20 cm with its middle 10 cm left of the centre, the small
   * one 5 x 10 cm with its middle 40 cm right of it: shares 0.04 and 0.01, both N 1/, so four times the weight on a
   * quarter of the arm.
   */
  const steelyard = `${CANVAS}
object  large
  shape   rectangle (35, 15) to (45, 35)
  colour  N 1/
object  small
  shape   rectangle (87.5, 20) to (92.5, 30)
  colour  N 1/`;

  it('hangs level, the small weight far out against the large one near the middle', () => {
    const { offset, centre, weights } = balanceOf(steelyard);
    // Mean value 0.95 x 5 + 0.05 x 1 = 4.8. Weights 0.04 x 3.8 and 0.01 x 3.8.
    expect(weights.map(({ weight }) => Number(weight.toFixed(9)))).toEqual([0.152, 0.038]);
    expect(weights.map(({ arm }) => Number(arm.toFixed(9)))).toEqual([-0.1, 0.4]);
    expect(weights.reduce((sum, { moment }) => sum + moment, 0)).toBeCloseTo(0, 9);
    // The bare ground too: what the blocks take from it on either side is as 4 to 1, on arms as 1 to 4.
    expect(offset).toBeCloseTo(0, 9);
    expect(centre).toBeCloseTo(50, 7);
  });

  it('sinks on the side of the small one when both weigh the same', () => {
    const { offset, total, ground } = balanceOf(
      steelyard.replace('rectangle (35, 15) to (45, 35)', 'rectangle (37.5, 20) to (42.5, 30)'),
    );
    // Shares 0.01 and 0.01; mean 4.92; 0.01 x 3.92 each; ground 0.98 x 0.08, its centre at -(0.01 x -0.1 + 0.01 x
    // 0.4)/0.98.
    const blocks = 0.0392 * (-0.1 + 0.4);
    const bare = 0.0784 * (-0.003 / 0.98);
    expect(ground).toBeCloseTo(0.0784, 9);
    expect(total).toBeCloseTo(0.1568, 9);
    expect(offset).toBeCloseTo((blocks + bare) / 0.1568, 9);
  });

  it('weighs a tenth of Munsell chroma like a step of value', () => {
    const { weights } = balanceOf(
      `${CANVAS}\nobject  flag\n  shape   rectangle (0, 0) to (10, 5)\n  colour  5R 5/12`,
    );
    // Share 0.01, no difference of value, chroma 12.
    expect(weights[0]?.weight).toBeCloseTo(0.012, 9);
  });
});

describe('weights', () => {
  it('of principals count what lies on them', () => {
    const { principals, weights } = balanceOf(`${CANVAS}
object  jug, dominant
  shape   rectangle (20, 10) to (40, 40)
  value   2
object  label
  shape   rectangle (25, 20) to (35, 30)
  value   5`);
    const [jug, label] = [0, 1].map((object) => weights.find((one) => one.object === object)?.weight ?? NaN);
    expect(principals).toEqual([{ object: 0, weight: (jug ?? 0) + (label ?? 0) }]);
  });

  it('are nothing for what has no value, and for nothing at all', () => {
    const { weights, offset } = balanceOf(`${CANVAS}\nobject  jug\n  shape   rectangle (0, 0) to (100, 50)`);
    expect(weights).toEqual([]);
    expect(offset).toBeUndefined();
  });
});

const place = fc.record({
  left: fc.integer({ min: -10, max: 90 }),
  top: fc.integer({ min: -10, max: 45 }),
  width: fc.integer({ min: 2, max: 40 }),
  height: fc.integer({ min: 2, max: 30 }),
  value: fc.integer({ min: 1, max: 5 }),
});

describe('the balance of any picture', () => {
  const drawn = (
    places: readonly { left: number; top: number; width: number; height: number; value: number }[],
    size: number,
    across: (x: number) => number,
  ) =>
    balanceOf(
      `canvas  ${100 * size} x ${50 * size} cm\n  ground  #b9a17c\n${places
        .map(
          ({ left, top, width, height, value }, index) =>
            `object  thing-${index}\n  shape   rectangle (${across(left) * size}, ${top * size}) to (${across(left + width) * size}, ${(top + height) * size})\n  value   ${value}`,
        )
        .join('\n')}`,
    );

  it('is mirrored with the picture and the same at another size', () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 1, maxLength: 5 }),
        fc.constantFrom(2, 0.5, 8),
        (places, size) => {
          const offset = drawn(places, 1, (x) => x).offset ?? 0;
          expect(drawn(places, 1, (x) => 100 - x).offset ?? 0).toBeCloseTo(-offset, 9);
          expect(drawn(places, size, (x) => x).offset ?? 0).toBeCloseTo(offset, 9);
        },
      ),
      { numRuns: 40, seed: 31 },
    );
  });
});
