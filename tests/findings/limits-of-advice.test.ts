import { describe, expect, it } from 'vitest';
import { advice, box, found, object, outline, ROOM } from './limit-plans.js';

/**
 * Pictures just within and just beyond limits of what is advised, on a canvas whose diagonal is 100 cm. The limits are
 * common practice, no source.
 */
describe('a thing is moved', () => {
  it('out of a corner, when it takes up to seven tenths of the canvas each way', () => {
    const leaf = (wide: number) =>
      advice('filled corner', ROOM, object('leaf', outline([0, 60], [wide, 48], [wide, 56]), 'value 2'));
    expect(leaf(55)).toMatch(/^Move `leaf`/);
    expect(leaf(57)).toMatch(/^Let it end/);
  });

  it('back onto the canvas to 3 % of the diagonal from its edge', () => {
    expect(advice('off the canvas', ROOM, object('plum', 'circle 10 at (90, 30)'))).toMatch(
      /^Move it 18 cm to the left/,
    );
  });

  it('into sight by the first of 2, 4, 7, 11 and 16 % of the diagonal that is enough', () => {
    // A strip along the top of the chair is seen, and four tenths of it when it is moved from under the curtain.
    const moved = (needed: number) =>
      /^Move `chair` (\S+) cm to the right/.exec(
        advice(
          'hidden principal',
          ROOM,
          object('chair, secondary', box(10, 0, 10, 10), 'plane foreground', 'colour N 3/'),
          object('curtain', box(-5, 0.5, 21.3 + needed, 59.5), 'plane foreground', 'colour N 7/'),
        ),
      )?.[1];
    expect([1.8, 3.8, 6.8, 10.8, 15.8, 16.2].map(moved)).toEqual(['2', '4', '7', '11', '16', undefined]);
  });

  it('over the edge of the canvas, when no more than 15 % of it is cut off', () => {
    // It can’t go in, for the thorn; of a leaf 2.32 cm long, 0.9 cm cut off its tip are 15 %.
    const leaf = (long: number) =>
      advice(
        'kissed edge',
        ROOM,
        object('leaf', outline([0.5, 30], [0.5 + long, 25], [0.5 + long, 35]), 'value 2'),
        object('thorn', outline([0.7 + long, 30], [12, 29], [12, 31]), 'value 3'),
      );
    expect(leaf(2.4)).toMatch(/^Move `leaf` 1.4 cm to the left/);
    expect(leaf(2.25)).toMatch(/^Draw the outline of `leaf`/);
  });

  describe('to level a picture', () => {
    const tree = (left: number, lamp: number, top: number, ...colours: readonly string[]) =>
      advice(
        'off balance',
        'canvas  80 x 60 cm\n  ground  N 5/\n',
        object('lamp, dominant', box(lamp, top, 8, 16), colours[1] ?? ''),
        object('tree', box(left, 20, 6, 12), colours[0] ?? ''),
      );

    it('by up to 15 % of the width, rather than taken to another value', () => {
      expect(tree(3, 40, 20, 'value 1', 'colour N 7/')).toMatch(/^Move `tree` 11.3 cm/);
      expect(tree(2, 40, 20, 'value 1', 'colour N 7/')).toMatch(/^Take `tree` from step 1/);
    });

    it('by up to 40 % of the width', () => {
      expect(tree(1, 1, 40, 'colour N 1/', 'colour N 2.6/')).toMatch(/^Move `tree` 31.2 cm/);
      // It would have to go 32.2 cm.
      expect(tree(1, 0, 40, 'colour N 1/', 'colour N 2.6/')).not.toContain('Move');
    });

    it('or an accent is set at 40 % of the width from the middle', () => {
      // The whole weighs 0.2076 and lies 0.2067 off, on a mean value of 4.89: 0.2076 (0.2067 - 0.12) / (0.4 + 0.12) /
      // 4.11.
      expect(
        advice(
          'off balance',
          'canvas  80 x 60 cm\n  ground  N 5/\n',
          object('lamp, dominant', box(2, 20, 8, 16), 'colour N 1/'),
        ),
      ).toContain('about 0.8 % of the picture');
    });
  });
});

describe('what is alike', () => {
  const jars = (...cup: readonly string[]) =>
    [0, 1, 2]
      .map((i) =>
        object(
          `jar-${i}, ${i === 1 ? 'dominant' : 'secondary'}`,
          box(5 + 20 * i, 20, 10, 15 + 4 * i),
          `value ${i + 1}`,
        ),
      )
      .concat(cup);
  const pots = (taller: number) => [
    object('pot, secondary', box(5, 5, 10, 20), 'value 2'),
    object('pan, secondary', box(40, 25, 10, 20 + taller), 'value 1'),
  ];

  it('is equal when it differs by less than a thousandth', () => {
    const gaps = (wider: number) =>
      found(
        'like gaps',
        ROOM,
        ...[5, 25, 45 + wider].map((left, i) =>
          object(`jar-${i}, secondary`, box(left, 20, 10, 15 + 4 * i), 'value 2'),
        ),
      )[0]?.message;
    expect(gaps(0.009)).toContain('at equal distances');
    expect(gaps(0.011)).toContain('at almost equal distances');
    const sizes = (taller: number) => found('like sizes', ROOM, ...pots(taller))[0]?.message;
    expect(sizes(0.018)).toContain('of the same size');
    expect(sizes(0.022)).toContain('of almost the same size');
  });

  it('is made unlike by half as much again as the limit, where that is more than plain', () => {
    // Of a gap of 10 cm, and of an area whose side is then the root of 0.7 as long.
    expect(advice('like gaps', ROOM, 'rule    like gaps limit 30%\n', ...jars())).toContain('4.5 cm');
    expect(advice('like sizes', ROOM, 'rule    like sizes limit 20%\n', ...pots(0))).toContain('83 %');
  });

  it('is not made unlike by a move to within 0.8 % of the diagonal of something', () => {
    // The first jar would end 2.5 cm farther right, at 17.5 cm.
    const moved = (apart: number) =>
      /`(jar-\d)`/.exec(
        advice('like gaps', ROOM, ...jars(object('cup', `circle 4 at (${19.5 + apart}, 25)`, 'value 4'))),
      )?.[1];
    expect([0.75, 0.85].map(moved)).toEqual(['jar-2', 'jar-0']);
  });

  it('in weight is made smaller to six tenths each way, and no more', () => {
    const bush = (times: number) =>
      advice(
        'dominant outweighed',
        ROOM,
        object('lamp, dominant', box(55, 40, 10, 10), 'colour N 1/'),
        object('bush, secondary', box(10, 10, 10 * times, 10), 'colour N 1/'),
      );
    // It may weigh 1.2 times as much: 1.2 / 3.2 is more than 0.6 squared, and 1.2 / 3.6 less.
    expect(bush(3.2)).toMatch(/^Make `bush` smaller, 60 %/);
    expect(bush(3.6)).toMatch(/^Bring `bush` nearer/);
  });
});

describe('a lead is turned', () => {
  it('to another side, where it keeps 20 degrees off the others', () => {
    // The hook arrives from the right on the level of the focal point. From 60 % of the edge it is 18 and 22 degrees.
    const side = (level: number) =>
      advice(
        'leads from one side',
        `canvas  80 x 60 cm\nfocus   (60, ${level})\n`,
        `lead    hook from left edge at 10% through (75, ${level}) to focus\n`,
        'lead    path from left edge at 80% to focus\n',
      );
    expect(side(42.5)).toContain('`from right edge at 50%`');
    expect(side(44.08)).toContain('`from right edge at 60%`');
  });

  it('out of a corner to twice the limit from it', () => {
    // From there it runs out 6.1 cm from the corner.
    expect(
      advice(
        'lead into corner',
        'canvas  80 x 60 cm\nfocus   (60, 20)\n',
        'lead    path from left edge at 40% to (70, 55)\n',
      ),
    ).toContain('`top edge at 34%`');
  });
});

describe('a lead is not turned', () => {
  const ROAD = 'canvas  80 x 60 cm\nfocus   (20, 45)\n';

  it('by more than 60 degrees', () => {
    // Both ways out that are clear of the corner lie off the way it goes by 56.3 and by 61.9 degrees.
    const road = (end: number) =>
      advice('lead into corner', ROAD, `lead    road from top edge at 25% to (${20 + end}, ${end})\n`);
    expect(road(55)).toContain('which turns it by 57°');
    expect(road(55.4)).not.toContain('which turns it');
  });

  it('in a picture of more than 60 leads', () => {
    const roads = (count: number) =>
      advice(
        'lead into corner',
        ROAD,
        'lead    road from top edge at 25% to (75, 55)\n',
        ...Array.from(
          { length: count - 1 },
          (_, i) => `lead    row-${i} from left edge at ${20 + i}% to focus\n`,
        ),
      );
    expect(roads(60)).toContain('which turns it');
    expect(roads(61)).not.toContain('which turns it');
  });
});

describe('a hue', () => {
  const colours = (role: string, colour: string) => [
    'canvas  80 x 60 cm\nwheel   munsell\ncolour  rust 5R 5/8 dominant\n',
    `colour  moss ${colour} ${role}\n`,
    object('wall', box(0, 0, 80, 60), 'plane background', 'colour rust'),
    object('vine', box(5, 5, 10, 20), 'colour moss'),
  ];

  it('belongs to the dominant one up to a quarter turn, and to its opposite from there', () => {
    const pole = (hue: string) =>
      /° from (.+?), \S+, on/.exec(
        found(
          'discord off quarter',
          ...colours('discord', `${hue} 6/6`),
          'rule    discord off quarter limit 85 degrees\n',
        )[0]?.message ?? '',
      )?.[1];
    // 22 and 28 of the hundred steps of the circle.
    expect(['7Y', '3GY'].map(pole)).toEqual(['the dominant hue', 'the opposite of the dominant hue']);
  });

  it('shows from chroma 3 on; less is nearly a grey', () => {
    const moss = (chroma: number) =>
      advice('complement off opposite', ...colours('complement', `5Y 6/${chroma}`));
    expect(moss(2.8)).toContain('nearly a grey');
    expect(moss(3.2)).toMatch(/^Turn it to/);
  });
});

describe('a value', () => {
  it('is changed by no more than a quarter of the scale', () => {
    const mat = (step: number) =>
      advice(
        'value budget',
        'canvas  80 x 60 cm\nscale   10\n  group dark 1-5, light 6-10\n',
        'budget  value dark 50%, light 50% within 3%\n',
        object('wall', box(0, 0, 80, 33), 'plane background', 'value 9'),
        object('floor', box(0, 33, 80, 27), 'plane background', 'value 1'),
        object('mat', box(10, 5, 18, 15), `value ${step}`),
      );
    expect(mat(8)).toMatch(/^Take `mat` 3 steps down/);
    expect(mat(9)).not.toContain('`mat`');
  });

  it('sinks into what is a mass, from 2 % of the picture on', () => {
    // What is seen of the mat beside the crow is so many per cent.
    const mat = (percent: number) =>
      advice(
        'spots',
        'canvas  80 x 60 cm\n  ground  N 9/\n',
        object('mat', box(10, 10, 12, 4 * percent + 0.75), 'value 3'),
        ...[box(12, 10.2, 3, 3), box(60, 10, 3, 3), box(60, 50, 3, 3)].map((shape, i) =>
          object(`crow-${i}`, shape, 'value 1'),
        ),
      );
    expect(mat(1.9)).toMatch(/^Bring them together/);
    expect(mat(2.1)).toMatch(/^Let `crow-0` sink into `mat`/);
  });

  it('wins when it is no more than a tenth stronger elsewhere', () => {
    const lamp = (colour: string) =>
      advice(
        'unmet means',
        `${ROOM}  win by value\n`,
        object('lamp, dominant', 'circle 6 at focus', `colour ${colour}`, 'edges lost'),
        // Thirty cells of the grid of emphasis away.
        object('moon', 'circle 6 at (35, 45)', 'colour N 8.2/', 'edges lost'),
      );
    // Off the ground by 0.6 steps of Munsell value, and by 3.2: 3.2 / 1.1 / 0.6, and 1.1 x 0.6 / 3.2.
    expect(lamp('N 5.6/')).toMatch(/385 % more .* 80 % less/);
    // It is set off more from the ground, not less.
    expect(lamp('N 7/')).toBe('Take `lamp` from step 4 to step 5, farther from what is round it.');
  });
});

describe('a thing is made smaller for a budget', () => {
  it('by no more than a fifth each way', () => {
    const vine = (wanted: number) =>
      advice(
        'colour budget',
        'canvas  80 x 60 cm\ncolour  clay #a1664a dominant\ncolour  leaf #66803a discord\n',
        `budget  colour dominant ${100 - wanted}%, discord ${wanted}% within 0.2%\n`,
        object('wall', box(0, 0, 80, 60), 'plane background', 'colour clay'),
        object('vine', box(20, 20, 20, 20), 'colour leaf'),
      );
    // It takes 8.33 % of the picture: 0.82 and 0.78 squared.
    expect(vine(5.6)).toContain('Make `vine` 18 % narrower and lower');
    expect(vine(5.07)).not.toContain('Make `vine`');
  });
});
