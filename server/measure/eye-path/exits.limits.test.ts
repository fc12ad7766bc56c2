import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { ROOM } from '../../../tests/support/room.js';
import { measure } from '../measure.js';
import type { Exit } from './exits.js';

/**
 * Pictures just within and just beyond each limit of what leads out of a picture. The limits are common practice, no
 * source.
 */
const WALL = `${ROOM}object  lamp, dominant
  shape   circle 6 at focus
  colour  N 6/
`;

type Place = readonly [number, number];

function shape(name: string, outline: readonly Place[], colour: string, edges = 'hard'): string {
  const points = outline.map(([x, y]) => `(${x}, ${y})`).join(' ');
  return `object  ${name}\n  shape   outline ${points}\n  colour  ${colour}\n  edges   ${edges}\n`;
}

function box(name: string, from: Place, to: Place, colour: string, edges = 'hard'): string {
  return shape(name, [from, [to[0], from[1]], to, [from[0], to[1]]], colour, edges);
}

/**
 * A dark roof whose eaves run in from the left edge through some places, and end at a gable that is too short to lead.
 */
function roof(eaves: readonly Place[], colour = 'N 1/'): string {
  const [right] = eaves.at(-1) ?? [0];
  return shape('roof', [[-5, -5], ...eaves, [right + 0.5, -5]], colour);
}

const EAVES = roof([
  [-5, 8],
  [30, 8],
]);

function exits(...lines: readonly string[]): readonly Exit[] {
  return measure(planOf(WALL + lines.join(''))).eyePath.exits;
}

function roofLeadsOut(...lines: readonly string[]): boolean {
  const plan = planOf(WALL + lines.join(''));
  return measure(plan).eyePath.exits.some(({ areas: [front] }) => plan.objects[front]?.name === 'roof');
}

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);

describe('the eaves of a roof lead out of the picture', () => {
  it('when they run straight for 15 % of the diagonal', () => {
    const eaves = (right: number): string =>
      roof([
        [-5, 8],
        [right, 8],
      ]);
    expect([14, 16].map((right) => roofLeadsOut(eaves(right)))).toEqual([false, true]);
  });

  it('when they reach to within 0.6 % of the diagonal of the edge', () => {
    // A stretch of a border is half a centimetre long, and its middle is what is near the edge or not.
    const mist = (wide: number): string => box('mist', [-1, -1], [wide, 61], 'N 5/', 'lost');
    expect([0.3, 0.42].map((wide) => roofLeadsOut(EAVES, mist(wide)))).toEqual([true, false]);
  });

  it('over a gap of up to 1.2 % of the diagonal', () => {
    const smoke = (wide: number): string => box('smoke', [10, -1], [10 + wide, 30], 'N 5/', 'lost');
    expect([1.1, 1.3].map((wide) => roofLeadsOut(EAVES, smoke(wide)))).toEqual([true, false]);
  });

  it('at more than 15 degrees to the edge', () => {
    const curtain = (degrees: number): string =>
      shape(
        'roof',
        [
          [-10 * tan(degrees), 50],
          [30 * tan(degrees), 10],
          [-5, 10],
        ],
        'N 1/',
      );
    expect([13.5, 16.5].map((degrees) => roofLeadsOut(curtain(degrees)))).toEqual([false, true]);
  });

  it('round a bend of up to 15 degrees', () => {
    const bent = (degrees: number): string =>
      roof([
        [-5, 8],
        [10, 8],
        [30, 8 + 20 * tan(degrees)],
      ]);
    expect([13.5, 16.5].map((degrees) => roofLeadsOut(bent(degrees)))).toEqual([true, false]);
  });

  it('the way that the last 3 % of the diagonal go as a whole', () => {
    // Level for 2 cm and then 10 degrees down; of the stretches whose middles lie within 3 cm, 1.5 cm go down.
    const [exit] = exits(
      roof([
        [-5, 8],
        [2, 8],
        [30, 8 + 28 * tan(10)],
      ]),
    );
    expect(Math.abs(180 + (exit?.heading ?? 0) - (10 * 1.5) / 3.5)).toBeLessThan(0.5);
  });

  it('into a corner that is within 3 % of the diagonal', () => {
    const at = (height: number) =>
      exits(
        roof([
          [-5, height],
          [30, height],
        ]),
      ).map(({ corner }) => corner);
    expect([2.7, 3.3].map(at)).toEqual([['upper left'], [undefined]]);
  });
});

describe('a way out is stopped', () => {
  it('by what stands across it within 8 % of the diagonal', () => {
    const post = (x: number): string => box('post', [x, 9], [x + 1, 20], 'N 2.5/');
    expect([7.4, 8.6].map((x) => roofLeadsOut(EAVES, post(x)))).toEqual([false, true]);
  });

  it('by what draws the eye at least half as much', () => {
    // The roof is 4 steps of Munsell value off the wall.
    const post = (colour: string): string => box('post', [3, 9], [4, 20], colour);
    expect(['N 2.8/', 'N 3.2/'].map((colour) => roofLeadsOut(EAVES, post(colour)))).toEqual([false, true]);
  });

  it('by what crosses it at 30 degrees or more', () => {
    const rail = (degrees: number): string =>
      shape(
        'rail',
        [
          [-5, 10 - 5 * tan(degrees)],
          [12, 10 + 12 * tan(degrees)],
          [12, 11.5 + 12 * tan(degrees)],
          [-5, 11.5 - 5 * tan(degrees)],
        ],
        'N 2.5/',
      );
    expect([33, 27].map((degrees) => roofLeadsOut(EAVES, rail(degrees)))).toEqual([false, true]);
  });
});

describe('the eye stays in the picture', () => {
  it('for a border as strong within 8 % of the diagonal of the focal point', () => {
    const window = (away: number): string => box('window', [60 + away, 40], [74, 50], 'N 9/');
    expect([7.4, 8.6].map((away) => roofLeadsOut(EAVES, window(away)))).toEqual([false, true]);
  });

  it('for more than a tenth of all borders that draw it more', () => {
    const slate = roof(
      [
        [-5, 8],
        [30, 8],
      ],
      'N 2/',
    );
    // Lamp, eaves and gable are 56.9 cm: with the crate its border is 9 and 11 % of all.
    const crate = (side: number): string => box('crate', [30, 30], [30 + side, 30 + side], 'N 1/');
    expect([1.4, 1.75].map((side) => roofLeadsOut(slate, crate(side)))).toEqual([true, false]);
  });

  it('for all but the 24 strongest places at the edge, which are many', () => {
    const pickets = (count: number) =>
      Array.from({ length: count }, (_, i) => box(`picket-${i}`, [2 + 3 * i, 44], [3.5 + 3 * i, 65], 'N 1/'));
    // Two borders each.
    expect([11, 16].map((count) => exits(...pickets(count)).length)).toEqual([22, 24]);
  });
});
