import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import type { Point } from '../../plan/geometry/point.js';
import { visibleAreas } from '../areas/areas.js';
import type { BorderStretch } from '../borders/borders.js';
import { measureStops } from './stops.js';

/** Sides 3 : 4, so that the diagonal is 50 cm and 5 % of it are 2.5. */
const SCENE = `canvas  40 x 30 cm
focus   (30, 15)
object  sheet
  shape   rectangle (0, 20) to (10, 30)
object  cup
  shape   rectangle (2, 2) to (6, 6)
object  lid
  plane   background
  shape   rectangle (1, 21) to (3, 23)
object  pot
  shape   rectangle (32.5, 10) to (38, 20)
path    cup, lid, pot`;

/** Cells of 10 x 10 cm: 1, 2, 3 ... row by row. */
const FIELD = { columns: 4, rows: 3, strengths: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], strongest: 12 };

function stretch(front: number, at: Point, behind = -1): BorderStretch {
  const contrast = { valueContrast: 2, colourContrast: 0, sharpness: 1, pull: 0.12 };
  return { at, length: 0.25, direction: 0, front, behind, ...contrast };
}

function stops(stretches: readonly BorderStretch[], text = SCENE, focal?: number) {
  const plan = planOf(text);
  const layers = plan.coveringOrder.flatMap((index) => plan.objects[index] ?? []);
  return measureStops(plan, visibleAreas(plan.canvas, layers), stretches, {
    field: FIELD,
    ...(focal === undefined ? {} : { focal: { strength: focal } }),
  });
}

describe('the stops of a path', () => {
  it('have the emphasis of the strongest place along their borders', () => {
    const [cup] = stops([
      stretch(1, { x: 4, y: 2 }),
      stretch(1, { x: 12, y: 4 }),
      stretch(0, { x: 25, y: 25 }, 3),
    ]);
    expect(cup).toEqual({ object: 1, at: { x: 12, y: 4 }, strength: 2, isSeen: true, isAtFocus: false });
  });

  it('have at least the emphasis of the focal point where they are at it', () => {
    const seen = [stretch(1, { x: 4, y: 2 }), stretch(3, { x: 33, y: 15 })];
    expect(stops(seen, SCENE, 9).map(({ strength }) => strength)).toEqual([1, 0, 9]);
    expect(stops(seen, SCENE, 7).map(({ strength }) => strength)).toEqual([1, 0, 8]);
  });

  it('count a border with what lies in front of them as theirs', () => {
    expect(stops([stretch(0, { x: 25, y: 25 }, 3)])[2]).toMatchObject({ object: 3, strength: 11 });
  });

  it('take the upper of two places that are as strong, and the edge of the canvas with the last cells', () => {
    const [cup] = stops([stretch(1, { x: 40, y: 29 }), stretch(1, { x: 40, y: 30 })]);
    expect(cup).toMatchObject({ at: { x: 40, y: 29 }, strength: 12 });
  });

  it('are told when nothing is seen of them, or when they come to the focal point', () => {
    expect(stops([]).map(({ isSeen, isAtFocus, strength }) => [isSeen, isAtFocus, strength])).toEqual([
      [true, false, 0],
      [false, false, 0],
      [true, true, 0],
    ]);
    const farther = SCENE.replace('(32.5, 10)', '(32.6, 10)');
    expect(stops([], farther)[2]).toMatchObject({ isAtFocus: false });
    expect(stops([], farther)[2]?.at).toEqual({ x: 35.3, y: 15 });
  });

  it('are none without a path', () => {
    expect(stops([], SCENE.replace('path    cup, lid, pot', 'note    "no path yet"'))).toEqual([]);
  });
});
