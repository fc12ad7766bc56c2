import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import type { Means } from '../../../grammar/index.js';
import type { MeansMeasure } from './means.js';
import { measure } from '../measure.js';

/** Diagonal 100, so that 8 % of it are 8 cm; the focal point well inside. */
const CANVAS = 'canvas  80 x 60 cm\n  ground  N 5/\nfocus   (20, 30)\n  win by  value';
const STONE = 'object  stone, dominant\n  shape   rectangle 4 x 4 at (20, 30)\n  value   5\n  edges   hard';
const OTHER = 'object  other\n  shape   rectangle 4 x 4 at (60, 30)\n  value   5\n  edges   firm';

function means(which: Means, ...blocks: readonly string[]): MeansMeasure {
  const { focal } = measure(planOf([CANVAS, ...blocks].join('\n'))).emphasis;
  const found = focal?.means.find((one) => one.means === which);
  if (!found) throw new Error(`nothing of ${which}`);
  return found;
}

describe('value, worked out by hand', () => {
  // 16 cm of border between Munsell 9 and 5 on a diagonal of 100: 0.16 x 4 / 10; firm edges 0.7 of it.
  it('counts length in diagonals x sharpness x difference of value / 10', () => {
    const measured = means('value', STONE, OTHER);
    expect(measured.there).toBeCloseTo(0.064, 4);
    expect(measured.elsewhere).toBeCloseTo(0.0448, 4);
    expect(measured).toMatchObject({ holds: true, stated: true, areas: [1, -1] });
    expect(measured.inWords).toBe(
      'its contrast of value is 1.4 times that at the strongest place elsewhere, where `other` meets the bare ground',
    );
  });

  it.each([
    // 4 x 1.1 / 0.7 = 6.29.
    ['6.2 x 6.2', true],
    ['6.4 x 6.4', false],
  ])('holds while no place elsewhere is more than a tenth stronger: %s', (size, holds) => {
    expect(means('value', STONE, OTHER.replace('4 x 4', size)).holds).toBe(holds);
  });

  it.each([
    ['hard', 'as great as'],
    ['soft', '2.9 times that'],
  ])('is told in times where it is no less than elsewhere: against %s edges', (edges, told) => {
    const { inWords } = means('value', STONE, OTHER.replace('firm', edges));
    expect(inWords).toContain(`its contrast of value is ${told} at the strongest place elsewhere`);
  });

  it('says when there is none, and when there is none elsewhere', () => {
    expect(means('value', OTHER)).toMatchObject({
      holds: false,
      inWords: 'there is no contrast of value there',
    });
    expect(means('value', STONE).inWords).toBe('there is contrast of value only there');
  });
});

describe('colour', () => {
  it('counts distance in a*, b*, not in value', () => {
    const grey = means('colour', STONE);
    expect(grey.there).toBeCloseTo(0, 3);
    const red = means('colour', STONE.replace('value   5', 'colour  5R 5/10'));
    // From memory: 5R 5/10 lies some 45 to 55 from neutral in a*, b*.
    expect(red.there / 0.16).toBeGreaterThan(0.4);
    expect(red.there / 0.16).toBeLessThan(0.6);
    expect(red.holds).toBe(true);
  });
});

describe('edges', () => {
  it('are the mean sharpness of the borders with contrast, there and elsewhere', () => {
    expect(means('edges', STONE, OTHER)).toMatchObject({
      there: 1,
      elsewhere: 0.7,
      holds: true,
      inWords: 'edges are hard there (1) and softer elsewhere (0.7)',
    });
    expect(means('edges', STONE.replace('hard', 'firm'), OTHER).holds).toBe(false);
  });

  describe('where the focal point lies deep in the dominant object', () => {
    const head = (edges: string, side = 24) =>
      `object  head, dominant\n  shape   rectangle ${side} x ${side} at (20, 30)\n  value   5\n  edges   ${edges}`;

    it('are those of the object', () => {
      expect(means('edges', head('hard'), OTHER)).toMatchObject({
        there: 1,
        elsewhere: 0.7,
        holds: true,
        inWords: 'the edges of `head` are hard (1) and softer elsewhere (0.7)',
      });
      expect(means('edges', head('soft'), OTHER)).toMatchObject({
        holds: false,
        inWords: 'the edges of `head` are soft (0.35) and harder elsewhere (0.7)',
      });
    });

    it('are those near it where there are some, as of eyes in a head', () => {
      const eye = 'object  eye\n  shape   rectangle 2 x 2 at (20, 30)\n  value   1\n  edges   soft';
      const { there, elsewhere, inWords } = means('edges', head('hard'), eye);
      expect(there).toBeCloseTo(0.35, 9);
      expect(elsewhere).toBe(1);
      expect(inWords).toContain('edges are soft there');
    });

    it.each([
      [16, 'edges are hard there'],
      [17, 'the edges of `head` are hard'],
    ])('from 8 %% of the diagonal on: in the middle of %i', (side, told) => {
      expect(means('edges', head('hard', side), OTHER).inWords).toContain(told);
    });

    it('are those that are one place with it: the far end of a long one is elsewhere', () => {
      const bench = head('hard').replace('24 x 24 at (20, 30)', '60 x 24 at (39, 30)');
      // Of 64.6 from corner to corner half is 32.3: the right end from (50, 18) and (50, 42) on.
      const { there, elsewhere } = means('edges', bench);
      expect([there, elsewhere]).toEqual([1, 1]);
      const nearEnd = bench.replace('60 x 24 at (39, 30)', '24 x 24 at (20, 30)');
      expect(means('edges', nearEnd)).toMatchObject({ there: 1, elsewhere: 0 });
    });

    it('are none where it is not set off from what is behind it', () => {
      expect(means('edges', head('hard').replace('value   5', 'value   3'), OTHER)).toMatchObject({
        there: 0,
        inWords: 'there is no border with contrast there',
      });
    });
  });

  it('leave out borders without contrast', () => {
    const unseen = 'object  mist\n  shape   rectangle 20 x 20 at (60, 30)\n  value   3\n  edges   hard';
    expect(means('edges', STONE, unseen).elsewhere).toBe(0);
  });
});

describe('detail', () => {
  it('is the mean by area within 8 % of the diagonal, and in the rest', () => {
    const fine = means('detail', `${STONE}\n  detail  fine`, OTHER);
    // 16 of pi x 8 x 8 square centimetres are fine, the rest is bare ground.
    expect(fine.there).toBeCloseTo(16 / (Math.PI * 64), 2);
    // 16 of 4800 less these, with some detail.
    expect(fine.elsewhere).toBeCloseTo((16 * 0.5) / (4800 - Math.PI * 64), 3);
    expect(fine.holds).toBe(true);
    expect(means('detail', `${STONE}\n  detail  little`, OTHER).holds).toBe(false);
  });
});

describe('scale', () => {
  it('compares the object there, with what lies on it, with the largest other', () => {
    const spot = 'object  spot\n  shape   rectangle 2 x 2 at (20, 30)\n  value   1';
    expect(means('scale', STONE, spot, OTHER)).toMatchObject({ holds: true });
    expect(means('scale', STONE, spot, OTHER).there).toBeCloseTo(16 / 4800, 9);
    const larger = means('scale', STONE, OTHER.replace('4 x 4', '5 x 5'));
    expect(larger).toMatchObject({
      holds: false,
      inWords: '`stone` takes 0.3 % of the picture and `other`, the largest other, 0.5 %',
    });
  });

  it('leaves out the background and what runs to two sides of the canvas', () => {
    const wall = 'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (70, 40)\n  value   4';
    const floor = 'object  floor\n  shape   rectangle (0, 50) to (80, 60)\n  value   4';
    expect(means('scale', wall, floor, STONE)).toMatchObject({ elsewhere: 0, holds: true });
  });
});

describe('isolation', () => {
  const beside = 'object  near\n  shape   rectangle 2 x 2 at (34, 30)\n  value   5';

  it('holds where the ring from 8 to 20 % is less busy than the picture', () => {
    expect(means('isolation', STONE, OTHER)).toMatchObject({ there: 0, holds: true });
    const busy = means('isolation', STONE, OTHER, beside);
    expect(busy.there).toBeGreaterThan(busy.elsewhere);
    expect(busy.holds).toBe(false);
  });

  it('does not count the borders of the object there', () => {
    const large = STONE.replace('4 x 4', '24 x 24');
    expect(means('isolation', large, OTHER)).toMatchObject({ there: 0, holds: true });
  });
});
