import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import type { Photographs } from '../photograph/photographs.js';
import { noPhotographs } from '../photograph/photographs.js';
import { measureSketch } from './sketch.js';

function sized(width: number, height: number): Photographs {
  return { ...noPhotographs, sizeOf: () => ({ ok: true, width, height }) };
}

const PLAN = 'canvas 50 x 40 cm\nsketch "idea.png"';

describe('a sketch against its canvas', () => {
  it('is stretched by how much its proportion misses the canvas’s', () => {
    expect(measureSketch(planOf(PLAN), sized(1600, 1200))).toEqual({
      is: 'measured',
      width: 1600,
      height: 1200,
      stretch: expect.closeTo(4 / 3 / (5 / 4) - 1, 12) as number,
      isTooWide: true,
    });
    expect(measureSketch(planOf(PLAN), sized(1200, 1200))).toMatchObject({
      stretch: 0.25,
      isTooWide: false,
    });
  });

  it('is not compared before it is known, when it can’t be read, or where its corners are stated', () => {
    expect(measureSketch(planOf('canvas 50 x 40 cm'), noPhotographs)).toBeUndefined();
    expect(measureSketch(planOf(PLAN), noPhotographs)).toEqual({ is: 'on its way' });
    const lost: Photographs = { ...noPhotographs, sizeOf: () => ({ ok: false, reason: 'It is gone.' }) };
    expect(measureSketch(planOf(PLAN), lost)).toEqual({ is: 'unreadable', reason: 'It is gone.' });
    const squared = planOf(`${PLAN}\n  corners (3%, 4%) (97%, 3%) (98%, 96%) (2%, 97%)`);
    expect(measureSketch(squared, sized(10, 900))).toEqual({ is: 'squared up' });
  });

  it.each([
    ['cross', '(3%, 4%) (98%, 96%) (97%, 3%) (2%, 97%)'],
    ['lie on a line', '(0, 0) (100, 100) (200, 200) (300, 300)'],
  ])('is none whose corners %s', (_, corners) => {
    expect(measureSketch(planOf(`${PLAN}\n  corners ${corners}`), noPhotographs)).toEqual({ is: 'folded' });
  });

  it('is judged by corners in pixels and parts once its size is known', () => {
    const plan = planOf(`${PLAN}\n  corners (0, 0) (100%, 0) (50, 50%) (0, 100%)`);
    expect(measureSketch(plan, noPhotographs)).toEqual({ is: 'squared up' });
    expect(measureSketch(plan, sized(4000, 3000))).toEqual({ is: 'folded' });
    expect(measureSketch(plan, sized(60, 3000))).toEqual({ is: 'squared up' });
  });
});
