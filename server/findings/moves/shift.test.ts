import { describe, expect, it } from 'vitest';
import { checked, mended } from '../../../tests/support/plan.js';
import { boxCentre } from '../../plan/geometry/point.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import { isMovable, movedWith, roundedOn, shiftFix, shifted } from './shift.js';

const SCENE = `canvas  80 x 60 cm
object  wall
  plane   background
  shape   rectangle (0, 0) to (80, 60)
object  jug
  shape   rectangle 10 x 20 at (20, 30)
object  label
  shape   rectangle 6 x 6 at (20, 32)
object  flower
  shape   circle 4
  at      top edge of jug by bottom
object  house
  shape   rectangle (50, 30) to (60, 50)
object  roof
  shape   outline (48, 30) (55, 22) (62, 30)`;

const { plan, measures } = checked(SCENE);
const [WALL, JUG, LABEL, FLOWER, HOUSE, ROOF] = [0, 1, 2, 3, 4, 5] as const;

describe('a shift', () => {
  it('takes along what lies on a thing and what is placed by it', () => {
    expect(movedWith(plan, measures.parts, JUG)).toEqual([JUG, LABEL, FLOWER]);
  });

  it('is tried as the edits then make it', () => {
    const shift = { object: JUG, right: 5, down: -2 };
    const trial = shifted(plan, measures, shift);
    const fix = shiftFix(plan, measures.parts, shift);
    expect(fix?.title).toBe('Move `jug` 5 cm to the right and 2 cm up');
    const after = checked(mended(SCENE, fix ?? { title: '', edits: [] })).plan;
    for (const index of [WALL, JUG, LABEL, FLOWER, HOUSE]) {
      const [tried, made] = [trial.plan, after].map(({ objects }) => objects[index]?.outline.box);
      expect(tried && boxCentre(tried)).toEqual(made && boxCentre(made));
    }
  });

  it('is cut once as long as nothing about it is another', () => {
    const outlines = new OutlineCache();
    const tried = (text: string) => {
      const after = checked(text, { outlines });
      const { areas } = shifted(after.plan, after.measures, { object: JUG, right: 5, down: -2 });
      return after.plan.coveringOrder.map((_, position) => areas.layers[position]?.visible);
    };
    const first = tried(SCENE);
    const roofMoved = tried(SCENE.replace('(55, 22)', '(55, 20)'));
    expect(roofMoved[JUG]).toBe(first[JUG]);
    expect(roofMoved[ROOF]).not.toEqual(first[ROOF]);
    // The label goes along, and covers another part of the jug.
    const labelMoved = tried(SCENE.replace('(20, 32)', '(20, 33)'));
    expect(labelMoved[JUG]).not.toEqual(first[JUG]);
    expect(tried(SCENE)[JUG]).toEqual(first[JUG]);
  });

  it('is not for grounds and for what is built onto another', () => {
    const free = [WALL, JUG, HOUSE, ROOF].map((index) => isMovable(plan, measures.parts, index));
    expect(free).toEqual([false, true, false, false]);
    expect(isMovable(plan, measures.parts, ROOF, HOUSE)).toBe(true);
  });

  it('goes on to round figures', () => {
    expect([0.41, -0.41, 0.5, 0].map((far) => roundedOn(far, { unit: 'cm' }))).toEqual([0.5, -0.5, 0.5, 0]);
    expect(roundedOn(0.411, { unit: 'm' })).toBe(0.42);
  });
});
