import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { measure } from '../measure.js';
import type { TangentMeasure } from './tangents.js';

type Place = readonly [number, number];

function outline(...places: readonly Place[]): string {
  return `outline ${places.map(([x, y]) => `(${x}, ${y})`).join(' ')}`;
}

/**
 * Near tangents of some shapes, the last in front, just within and just beyond each limit, on a canvas whose diagonal
 * is 100 cm, so that a centimetre is one per cent of it. The limits are common practice, no source.
 */
function tangents(...shapes: readonly string[]): TangentMeasure {
  const objects = shapes.map((shape, index) => `object  thing-${index}\n  shape   ${shape}\n  value   2\n`);
  return measure(planOf(`canvas  80 x 60 cm\n${objects.join('')}`)).tangents;
}

function touches(...shapes: readonly string[]): number {
  return tangents(...shapes).touches.length;
}

const CHEST = outline([10, 10], [30, 10], [30, 50], [10, 50]);

/**
 * A bell to the right of a place, whose mouth stands upright there; its box is 24.7 cm across from corner to corner.
 */
function bell(left: number, mouth: number): string {
  return outline([left, 30 - mouth / 2], [left, 30 + mouth / 2], [left + 14.5, 40], [left + 14.5, 20]);
}

/** A board of the same box, whose left side leans to the right by so much. */
function board(left: number, leaning: number): string {
  return outline([left, 20], [left + leaning, 40], [left + 14.5, 40], [left + 14.5, 20]);
}

describe('two outlines', () => {
  it('are looked at when they come within 2 % of the diagonal', () => {
    const plums = (apart: number) => touches('circle 10 at (20, 20)', `circle 10 at (${30 + apart}, 20)`);
    expect([1.9, 2.1].map(plums)).toEqual([1, 0]);
  });

  it('only touch as long as one reaches less than 0.05 % of the diagonal over the other', () => {
    const beak = (over: number) => touches(CHEST, outline([30 - over, 30], [40, 25], [40, 35]));
    expect([0.045, 0.055].map(beak)).toEqual([1, 0]);
  });

  it('run along each other when they stay as near for a third of the smaller', () => {
    // A third of 24.7 cm is 8.2 cm; the slanting sides add 0.2 cm to the mouth.
    const along = (mouth: number) => tangents(CHEST, bell(30.5, mouth)).touches.map((touch) => touch.along);
    expect([7.6, 8.6].map(along)).toEqual([[false], [true]]);
  });

  it('stay as near within 0.08 % of the diagonal', () => {
    // So it does for 7.6 and for 8.9 of its 20 cm.
    const along = (leaning: number) =>
      tangents(CHEST, board(30.5, leaning)).touches.map((touch) => touch.along);
    expect([0.21, 0.18].map(along)).toEqual([[false], [true]]);
  });

  it('that run along each other were drawn as one line up to 0.05 % of the diagonal apart', () => {
    expect([0.045, 0.055].map((apart) => touches(CHEST, board(30 + apart, 0)))).toEqual([0, 1]);
  });

  it('were drawn to frame one another where they run along for 60 % of the smaller border', () => {
    // That of the chest is 120 cm: 40 on its left, 20 above it, and 12 on its right.
    const bracket = (right: number) =>
      outline(
        [5, 5],
        [35, 5],
        [35, 10 + right],
        [30.5, 10 + right],
        [30.5, 9.5],
        [9.5, 9.5],
        [9.5, 50],
        [5, 50],
      );
    expect([10.5, 13].map((right) => touches(CHEST, bracket(right)))).toEqual([1, 0]);
  });

  it('stand in a row of even gaps where another gap beside one of them is as wide within 0.08 % of the diagonal', () => {
    const row = (gap: number) => touches(CHEST, board(30.5, 0), board(45 + gap, 0));
    expect([0.57, 0.59].map(row)).toEqual([0, 2]);
  });

  it('were drawn to be one where they are for 0.2 % of the diagonal', () => {
    expect([0.18, 0.22].map((mouth) => touches(CHEST, bell(30, mouth)))).toEqual([1, 0]);
  });

  it('meet midway between places that are as near, up to six times as far from each other as is looked', () => {
    const rail = outline([10, 10], [70, 10], [70, 20], [10, 20]);
    const fork = (wide: number) => {
      const right = 30 + wide;
      const tines: readonly Place[] = [
        [30, 20.5],
        [32, 30],
        [right - 2, 30],
        [right, 20.5],
        [right + 2, 40],
        [28, 40],
      ];
      return tangents(rail, outline(...tines)).touches[0]?.at.x;
    };
    expect(fork(11)).toBeCloseTo(35.5, 6);
    // Farther apart it is the one nearer to the middle of the canvas.
    expect(fork(13)).toBeCloseTo(43, 6);
  });

  it('are looked at where more than 0.1 % of the diagonal is seen of them', () => {
    const touchesChest = (seen: number) =>
      tangents(
        CHEST,
        outline([5, 5], [30 - seen, 5], [30 - seen, 55], [5, 55]),
        'circle 10 at (35.5, 30)',
      ).touches.some(({ one, other }) => one === 0 && other === 2);
    expect([0.09, 0.11].map(touchesChest)).toEqual([false, true]);
  });

  it('are things, not textures of more than 4,000 sides', () => {
    const hedge = (sides: number) => {
      const leaves = Array.from({ length: sides }, (_, i): Place => {
        const angle = (2 * Math.PI * i) / sides;
        return [25 + 10 * Math.cos(angle), 30 + 10 * Math.sin(angle)];
      });
      return touches(outline(...leaves), 'circle 10 at (40.5, 30)');
    };
    expect([3_900, 4_100].map(hedge)).toEqual([1, 0]);
  });

  it('are those of an object and of the 32 smallest round it, in a crowd', () => {
    const sun = (rays: number) => {
      const round = Array.from({ length: rays }, (_, i) => {
        const place = (away: number, beside: number): Place => {
          const angle = (2 * Math.PI * i) / rays + beside;
          return [40 + away * Math.cos(angle), 30 + away * Math.sin(angle)];
        };
        return outline(place(2.9, 0), place(8, 0.03), place(8, -0.03));
      });
      return tangents('circle 2 at (40, 30)', ...round).touches.filter(({ one }) => one === 0).length;
    };
    expect([30, 40].map(sun)).toEqual([30, 32]);
  });
});

describe('an edge of the canvas', () => {
  const kisses = (...shapes: readonly string[]) =>
    tangents(...shapes).edges.filter(({ object, side }) => object === 0 && side === 'left').length;

  const along = (shape: string) => tangents(shape).edges.map((edge) => edge.along);

  it('has beside it what ends as far from it over a third of its length', () => {
    // A third of 20 cm is 6.7 cm; the slanting sides add 0.2 cm to the mouth.
    expect([6.2, 7].map((mouth) => along(bell(0.5, mouth)))).toEqual([[false], [true]]);
  });

  it('bounds what keeps beside it no farther in than 0.05 % of the diagonal, or runs over it all along', () => {
    expect([-0.5, 0.045, 0.055].map((left) => kisses(board(left, 0)))).toEqual([0, 0, 1]);
  });

  it('has an even margin to what is as far from the opposite one within 0.08 % of the diagonal', () => {
    const blind = (right: number) => outline([0.5, 10], [80 - right, 10], [80 - right, 50], [0.5, 50]);
    expect([0.57, 0.59].map((right) => tangents(blind(right)).edges.length)).toEqual([0, 2]);
  });

  it('has a row beside it of three as far from it', () => {
    const tiles = (...lefts: readonly number[]) =>
      tangents(
        ...lefts.map((left, i) =>
          outline([left, 5 + 18 * i], [left + 9, 5 + 18 * i], [left + 9, 15 + 18 * i], [left, 15 + 18 * i]),
        ),
      ).edges.length;
    expect([tiles(0.5, 0.5), tiles(0.5, 0.5, 0.5), tiles(0.5, 0.5, 0.59)]).toEqual([2, 0, 3]);
  });

  it('is as far within 0.08 % of the diagonal', () => {
    // So it is for 6.2 and for 7.2 of 20 cm.
    expect([0.262, 0.225].map((leaning) => along(board(0.5, leaning)))).toEqual([[false], [true]]);
  });

  it('is looked at where what is seen begins within 0.01 % of the diagonal of it', () => {
    const curtain = (wide: number) => outline([-1, 0], [wide, 0], [wide, 60], [-1, 60]);
    const beak = outline([-0.2, 30], [15, 25], [15, 35]);
    expect([0.009, 0.011].map((wide) => kisses(beak, curtain(wide)))).toEqual([1, 0]);
  });
});

describe('a corner of the canvas', () => {
  const filled = (shape: string) => tangents(shape).corners.length;

  it('is filled by what comes within 0.5 % of the diagonal of it', () => {
    const leaf = (away: number) => {
      const off = away / Math.SQRT2;
      return outline([off, 60 - off], [20, 20], [30, 50]);
    };
    expect([0.45, 0.55].map((away) => filled(leaf(away)))).toEqual([1, 0]);
  });

  it('is not by what does not reach 1.5 % of the diagonal from it', () => {
    // Looked at from 10 degrees on: there a slope reaches 1.5 cm with a leg of 1.74 cm.
    const chip = (leg: number) => outline([0, 0], [leg, 0], [0, leg]);
    expect([1.65, 1.9].map((leg) => filled(chip(leg)))).toEqual([0, 1]);
  });

  it('is filled by a rectangle up to 0.5 % of the diagonal off it, and cut off in a line up to as much off a straight one', () => {
    const box = (off: number) => outline([0, 45], [10, 45 - off], [20, 45], [20, 60], [0, 60]);
    const flag = (off: number) => outline([0, 45], [10 + 0.6 * off, 52.5 - 0.8 * off], [20, 60], [0, 60]);
    for (const shape of [box, flag]) {
      expect([0.45, 0.55].map((off) => filled(shape(off)))).toEqual([1, 0]);
    }
  });

  it('is not by a ground, which takes more than 70 % of one edge', () => {
    const box = (wide: number) => outline([0, 40], [wide, 40], [wide, 60], [0, 60]);
    expect([55.5, 56.5].map((wide) => filled(box(wide)))).toEqual([1, 0]);
  });
});
