import { describe, expect, it } from 'vitest';
import { planOf } from '../support/plan.js';
import { advice, box, found, isTold, LAMP, object, outline, ROOM } from './limit-plans.js';

/**
 * Pictures just within and just beyond limits of what is told, on a canvas whose diagonal is 100 cm. The limits are
 * common practice, no source.
 */
describe('what is seen', () => {
  it('of less than a thousandth of a thing is nothing; more is a thing that is mostly hidden', () => {
    const rules = (strip: number) => {
      const text = [
        ROOM,
        object('chair, secondary', box(10, 10, 10, 10), 'colour N 3/'),
        object('curtain', box(5, 5, 15 - strip, 30), 'colour N 7/'),
      ];
      return ['hidden object', 'hidden principal'].map((rule) => isTold(rule, ...text));
    };
    expect([0.009, 0.011].map(rules)).toEqual([
      [true, false],
      [false, true],
    ]);
  });

  it('of a plane is asked for its chroma from 5 % of the picture on', () => {
    const posts = (percent: number) =>
      isTold(
        'chroma by plane',
        `${ROOM}scale 5\n  planes lighten with distance\n`,
        object('hills', box(0, 0, 80, 60), 'plane background', 'colour 5R 7/6'),
        object('posts', box(10, 5, 0.96 * percent, 50), 'plane foreground', 'colour 5R 3/2'),
      );
    expect([4.5, 5.5].map(posts)).toEqual([false, true]);
  });

  it('of a colour that is lost is a touch under 0.2 % of the picture', () => {
    const spark = (percent: number) =>
      isTold(
        'chroma out of reach',
        ROOM,
        object('spark', box(10, 10, 10, 4.8 * percent), 'colour 5Y 8/12', 'value 1'),
      );
    expect([0.18, 0.22].map(spark)).toEqual([false, true]);
  });
});

describe('the focal point', () => {
  it('is in the middle within 4 % of the diagonal', () => {
    const at = (right: number) =>
      isTold('centred focus', `canvas  80 x 60 cm\nfocus   (${40 + right}, 30)\n`, LAMP);
    expect([3.8, 4.2].map(at)).toEqual([true, false]);
  });

  it('is hardly marked by less than a tenth of what marks the strongest place', () => {
    const message = (part: number) =>
      found(
        'rival',
        ROOM,
        object('lamp, dominant', 'circle 6 at focus', `colour N ${5 + 4 * part}/`, 'edges hard'),
        // Thirty cells of the grid of emphasis away.
        object('moon', 'circle 6 at (35, 45)', 'colour N 9/', 'edges hard'),
      )[0]?.message;
    expect(message(0.09)).toMatch(/^Hardly anything marks the focal point/);
    expect(message(0.11)).toMatch(/^Where `moon` meets/);
  });

  it('is on a crossing within 2 % of the diagonal', () => {
    const off = (right: number) =>
      isTold('focus off crossing', ROOM.replace('lower right', `(${60 + right}, 45)`), LAMP);
    expect([1.9, 2.1].map(off)).toEqual([false, true]);
  });

  it('is a little way off within twice the limit, and the dominant object moved', () => {
    const lamp = (away: number) =>
      advice('dominant off focus', ROOM, object('lamp, dominant', box(40, 30, 20 - away, 20), 'colour N 9/'));
    expect(lamp(9.5)).toMatch(/^Move `lamp`/);
    expect(lamp(10.5)).toMatch(/^Write `at focus` under `lamp`/);
  });

  it('holds a dominant object by a middle that lies within 0.1 % of the diagonal of its border', () => {
    const angle = (off: number) =>
      advice(
        'dominant off focus',
        ROOM,
        object(
          'angle, dominant',
          outline([10, 10], [30, 10], [30, 12], [20 - off, 12], [20 - off, 30], [10, 30]),
          'colour N 9/',
        ),
      );
    expect(angle(0.09)).toMatch(/^Write `at focus`/);
    expect(angle(0.11)).not.toMatch(/^Write `at focus`/);
  });
});

describe('a lead runs into a corner', () => {
  it('when it passes the focal point by more than 5 % of the diagonal', () => {
    const past = (miss: number) => {
      // From the focal point to the lower right corner it is 25 cm.
      const angle = Math.atan2(15, 20) - Math.asin(miss / 25);
      const back = (far: number) => `(${80 - far * Math.cos(angle)}, ${60 - far * Math.sin(angle)})`;
      return isTold('lead into corner', ROOM, `lead    path from ${back(60)} to ${back(5)}\n`);
    };
    expect([4.7, 5.3].map(past)).toEqual([false, true]);
  });

  it('when it strays by no more than 1 % of the diagonal on its way from corner to corner', () => {
    const straying = (off: number) =>
      isTold(
        'lead into corner',
        'canvas  80 x 60 cm\nfocus   (40, 30)\n',
        `lead    path from lower left corner through (${16 + 0.6 * off}, ${48 + 0.8 * off}) to (72, 6)\n`,
      );
    expect([0.9, 1.05].map(straying)).toEqual([true, false]);
  });
});

describe('the path of the eye', () => {
  it('goes back when a stop draws it by a tenth less than the one before', () => {
    const moon = (name: string, part: number, x: number) =>
      object(name, `circle 6 at (${x}, 45)`, `colour N ${5 + 4 * part}/`, 'edges hard');
    // Thirty cells of the grid of emphasis apart.
    const back = (part: number) =>
      isTold(
        'path order',
        ROOM,
        LAMP,
        moon('moon', 0.8, 10),
        moon('star', 0.8 * part, 35),
        'path moon, star, lamp\n',
      );
    expect([0.92, 0.88].map(back)).toEqual([false, true]);
  });
});

describe('a thing', () => {
  it('fills a corner within 0.2 % of the diagonal', () => {
    const leaf = (away: number) => {
      const off = away / Math.SQRT2;
      return isTold(
        'filled corner',
        ROOM,
        object('leaf', outline([off, 60 - off], [20, 20], [30, 50]), 'value 2'),
      );
    };
    expect([0.19, 0.21].map(leaf)).toEqual([true, false]);
  });

  it('has lost its chroma when more than two fifths can’t be had', () => {
    const cloth = (chroma: number) => [
      ROOM,
      object('cloth', box(10, 10, 20, 20), `colour 5Y 8/${chroma}`, 'value 2'),
    ];
    const most = planOf(cloth(12).join('')).objects[0]?.chroma?.reached ?? NaN;
    const lost = (part: number) => isTold('chroma out of reach', ...cloth(most / (1 - part)));
    expect([0.38, 0.42].map(lost)).toEqual([false, true]);
  });
});

describe('two areas', () => {
  const neighbours = (front: readonly string[], behind: readonly string[], wide = 20) =>
    isTold(
      'merged neighbours',
      `canvas  80 x 60 cm\n`,
      object('wall', box(0, 0, 80, 60), 'plane background', ...behind),
      object('door', box(10, 10, wide, 20), 'edges hard', ...front),
    );

  it('lie on one step when they are less than half a step apart', () => {
    const door = (step: number) => neighbours([`value ${step}`], ['value 2']);
    expect([2.45, 2.55].map(door)).toEqual([true, false]);
  });

  it('matter without being principals from 5 % of the picture on', () => {
    const door = (percent: number) => neighbours(['value 2'], ['value 2'], 2.4 * percent);
    expect([4.75, 5.25].map(door)).toEqual([false, true]);
  });

  const message = (...door: readonly string[]) =>
    found(
      'merged neighbours',
      'canvas  80 x 60 cm\n',
      object('wall', box(0, 0, 80, 60), 'plane background', 'colour lab(30% 0 0)', 'value 2'),
      object('door', box(10, 10, 20, 20), 'value 2', ...door),
    )[0]?.message ?? '';

  it('are kept apart by colour alone from 25 in CIELAB a*, b*', () => {
    const isKept = (red: number) =>
      message(`colour lab(30% ${red} 0)`, 'edges hard').includes('colour alone keeps them apart');
    expect([24, 26].map(isKept)).toEqual([false, true]);
  });

  it('are to have the edge that is stated: firm, or hard; a softer one is meant to be lost', () => {
    const edge = (edges: string) =>
      /the edge is to be (\w+)/.exec(message('colour N 3/', `edges ${edges}`))?.[1];
    expect(['soft', 'firm', 'hard'].map(edge)).toEqual([undefined, 'firm', 'hard']);
  });

  it('have a border from 15 % of the diagonal on', () => {
    const border = (long: number) =>
      isTold(
        'merged neighbours',
        `canvas  80 x 60 cm\n`,
        object('wall', box(0, 0, 40, 60), 'value 2'),
        object('door, dominant', box(40, 10, 20, long), 'edges hard', 'value 2'),
      );
    expect([14, 16].map(border)).toEqual([false, true]);
  });
});

describe('pieces of a tone are spots', () => {
  const spots = (...shapes: readonly string[]) =>
    isTold(
      'spots',
      'canvas  80 x 60 cm\n  ground  N 9/\n',
      object('wall', box(0, 0, 80, 60), 'plane background', 'value 5'),
      ...shapes.map((shape, index) => object(`crow-${index}`, shape, 'value 1')),
    );

  it('from 0.1 % of the picture on', () => {
    const crow = (percent: number) => {
      const side = Math.sqrt(48 * percent);
      return spots(box(10, 10, side, side), box(40, 30, 3, 3), box(70, 50, 3, 3));
    };
    expect([0.092, 0.108].map(crow)).toEqual([false, true]);
  });

  it('apart from each other by more than 10 % of the diagonal', () => {
    const crows = (apart: number) => spots(box(10, 10, 3, 3), box(10 + apart, 10, 3, 3), box(70, 50, 3, 3));
    expect([9.5, 10.5].map(crows)).toEqual([false, true]);
  });
});

describe('a picture', () => {
  it('is weighed when no more than a tenth of it is without a value', () => {
    const door = (percent: number) =>
      isTold(
        'off balance',
        ROOM,
        object('tree', box(5, 5, 15, 50), 'value 1'),
        object('door', box(60, 5, 0.96 * percent, 50)),
      );
    expect([9.5, 10.5].map(door)).toEqual([true, false]);
  });

  it('is halved by edges that all but meet, within a thousandth of the height', () => {
    const field = (below: number) =>
      isTold(
        'halved picture',
        'canvas  80 x 60 cm\n',
        object('sky', box(0, 0, 80, 30), 'plane background', 'value 5'),
        object('field', box(0, 30 + below, 80, 40), 'plane background', 'value 2'),
      );
    expect([0.057, 0.063].map(field)).toEqual([true, false]);
  });
});
