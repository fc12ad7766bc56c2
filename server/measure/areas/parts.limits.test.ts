import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';

type Place = readonly [number, number];

function outline(places: readonly Place[]): string {
  return `outline ${places.map(([x, y]) => `(${x}, ${y})`).join(' ')}`;
}

/**
 * Whether a thing lies on a wall, so that a painter takes both for one, on a canvas whose diagonal is 100 cm. The
 * limits are common practice, no source.
 */
function liesOn(wall: string, thing: string): boolean {
  const plan = `canvas  80 x 60 cm
object  wall, secondary
  shape   ${wall}
  value   3
object  thing
  shape   ${thing}
  value   4
`;
  return measure(planOf(plan)).parts[0]?.includes(1) ?? false;
}

describe('what lies on a thing', () => {
  it('may stand out by 3 % of its own height at one end, as a door does below its wall', () => {
    const door = (beyond: number) => `rectangle (20, ${40 + beyond}) to (28, ${30 + beyond})`;
    expect([0.27, 0.33].map((beyond) => liesOn('rectangle (10, 10) to (40, 40)', door(beyond)))).toEqual([
      true,
      false,
    ]);
  });

  it('has three quarters of its corners on it', () => {
    const angle = 'outline (10, 10) (50, 10) (50, 30) (30, 30) (30, 50) (10, 50)';
    const ivy = (corner: Place) =>
      outline([[14, 14], [22, 12], [29, 18], corner, [33, 33], [34, 36], [24, 30], [16, 26]]);
    // Two of eight corners lie in the angle, and three.
    expect([ivy([29, 28]), ivy([36, 32])].map((shape) => liesOn(angle, shape))).toEqual([true, false]);
  });

  it('ends within 2 % of the diagonal of where the thing does', () => {
    const vane = (beyond: number) =>
      outline([
        [20, 30],
        [20, 20],
        [23, 20],
        [24, 10 - beyond],
        [25, 20],
        [28, 20],
        [28, 30],
        [24, 32],
      ]);
    expect([1.8, 2.2].map((beyond) => liesOn('rectangle (10, 10) to (40, 40)', vane(beyond)))).toEqual([
      true,
      false,
    ]);
  });

  it('lies on no texture of more than 4,000 corners', () => {
    const hedge = (corners: number) =>
      outline(
        Array.from({ length: corners }, (_, corner): Place => {
          const angle = (2 * Math.PI * corner) / corners;
          return [30 + 15 * Math.cos(angle), 30 + 15 * Math.sin(angle)];
        }),
      );
    expect([3_900, 4_100].map((corners) => liesOn(hedge(corners), 'circle 4 at (30, 30)'))).toEqual([
      true,
      false,
    ]);
  });
});
