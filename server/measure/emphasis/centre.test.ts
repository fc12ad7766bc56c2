import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { GROUND } from '../borders/borders.js';
import { measure } from '../measure.js';
import { type Centre, centreOfInterest, isElsewhere } from './centre.js';

/** Diagonal 100, so that a centimetre is one per cent of it. */
const CANVAS = 'canvas  80 x 60 cm\n  ground  N 5/\nfocus   (20, 30)';
/** Corner to corner 50: its edges are its own up to 25. */
const TABLE = 'object  table, dominant\n  shape   rectangle (18, 25) to (66, 39)\n  value   5';

function centreOf(...blocks: readonly string[]): Centre {
  const plan = planOf([CANVAS, ...blocks].join('\n'));
  return centreOfInterest(plan, measure(plan));
}

/** Whether a place so far to the right of the focal point, where two areas meet, is another. */
function elsewhere(away: number, areas: readonly [number, number], ...blocks: readonly string[]): boolean {
  return isElsewhere({ at: { x: 20 + away, y: 30 }, areas }, { x: 20, y: 30 }, centreOf(...blocks), 100);
}

describe('an edge of the dominant object is one with the focal point', () => {
  it('up to half of the diagonal of the box round it', () => {
    const far = [24.9, 25, 25.1].map((away) => elsewhere(away, [0, GROUND], TABLE));
    expect(far).toEqual([false, false, true]);
  });

  it('up to the shorter side of that box where it is nearly as broad as long', () => {
    const screen = TABLE.replace('(18, 25) to (66, 39)', '(18, 10) to (58, 40)');
    const far = [29.9, 30, 30.1].map((away) => elsewhere(away, [0, GROUND], screen));
    expect(far).toEqual([false, false, true]);
  });

  it('by what is seen of it', () => {
    // The cloth leaves 40 x 14 of it, 42.4 from corner to corner.
    const cloth = 'object  cloth, secondary\n  shape   rectangle (58, 5) to (70, 45)\n  value   2';
    const far = [21.1, 21.3].map((away) => elsewhere(away, [0, GROUND], TABLE, cloth));
    expect(far).toEqual([false, true]);
  });

  it('with that of all that lies on it', () => {
    // The loaf stands out by one.
    const loaf = 'object  loaf\n  shape   rectangle (20, 26) to (67, 38)\n  value   2';
    expect([...centreOf(TABLE, loaf).keys()]).toEqual([0, 1]);
    const half = Math.hypot(49, 14) / 2;
    const far = (part: number) =>
      [-0.1, 0.1].map((more) => elsewhere(half + more, [part, GROUND], TABLE, loaf));
    expect([far(0), far(1)]).toEqual([
      [false, true],
      [false, true],
    ]);
  });

  it('up to 16 % of the diagonal of the canvas where it is small, as what stands against it is', () => {
    const pear = TABLE.replace('(18, 25) to (66, 39)', '(18, 28) to (22, 32)');
    const far = (areas: readonly [number, number]) =>
      [15.9, 16.1].map((away) => elsewhere(away, areas, pear));
    expect([far([0, GROUND]), far([5, 0])]).toEqual([
      [false, true],
      [false, true],
    ]);
    // What has to do with neither is another place from 8 % on.
    expect([7.9, 8.1].map((away) => elsewhere(away, [5, GROUND], pear))).toEqual([false, true]);
  });

  it('as far as its mirror image has it', () => {
    const mirrored = planOf(
      [CANVAS, TABLE]
        .join('\n')
        .replace('(20, 30)', '(60, 30)')
        .replace('(18, 25) to (66, 39)', '(14, 25) to (62, 39)'),
    );
    expect(centreOfInterest(mirrored, measure(mirrored)).get(0)).toBeCloseTo(
      centreOf(TABLE).get(0) ?? NaN,
      12,
    );
  });
});

it('one that lies away from the focal point has no part in the centre of interest', () => {
  expect(centreOf(TABLE.replace('(18, 25)', '(24.9, 25)')).size).toBe(1);
  expect(centreOf(TABLE.replace('(18, 25)', '(25.1, 25)')).size).toBe(0);
});
