import { describe, expect, it } from 'vitest';
import { checked, planOf } from '../../../tests/support/plan.js';
import { OutlineCache } from '../../plan/outline-cache.js';
import { parseMunsell } from '../../plan/colour/munsell-text.js';
import { areaShareBesideOpposite } from './roles.js';
import { GROUND } from '../borders/borders.js';
import type { HueMeasure } from './hues.js';
import { measure } from '../measure.js';
import { Memory } from '../memory.js';

/** 100 x 50 cm; bands from top to bottom, each with its height and colour. */
function bands(head: string, ...rows: readonly (readonly [height: number, colour: string])[]): string {
  let top = 0;
  const objects = rows.map(([height, colour], index) => {
    const shape = `rectangle (0, ${top}) to (100, ${top + height})`;
    top += height;
    return `object  band-${index + 1}\n  shape   ${shape}\n  colour  ${colour}`;
  });
  return ['canvas  100 x 50 cm', head, ...objects].filter((line) => line !== '').join('\n');
}

function hues(text: string): HueMeasure {
  return checked(text).measures.hues;
}

const MUNSELL = 'wheel   munsell';

describe('the hues of the roles', () => {
  it('are the mean of their colours by area and chroma', () => {
    // 5R at 18 degrees and 5YR at 54, 24 and 12 high, chroma 4 and 8: weights alike, so half way, 10R.
    const { roles } = hues(
      bands(
        `${MUNSELL}\ncolour  rust 5R 4/4 dominant\ncolour  clay 5YR 5/8 dominant`,
        [24, 'rust'],
        [12, 'clay'],
        [14, 'N 5/'],
      ),
    );
    expect(roles).toEqual([
      {
        role: 'dominant',
        hueDegrees: expect.closeTo(36, 6),
        name: '10R',
        value: expect.closeTo((24 * 4 + 12 * 5) / 36, 6),
        chroma: expect.closeTo((24 * 4 + 12 * 8) / 36, 6),
        strength: expect.closeTo((24 * 16 + 12 * 40) / 36, 6),
      },
    ]);
  });

  it('are left out where they cancel out, and where a role is all greys', () => {
    const { roles, areaAdvice, colours } = hues(
      bands(
        `${MUNSELL}\ncolour  rust 5R 4/4 dominant\ncolour  sea 5BG 4/4 dominant\ncolour  ash N 6/ complement`,
        [20, 'rust'],
        [20, 'sea'],
        [10, 'ash'],
      ),
    );
    expect(roles).toEqual([]);
    expect(areaAdvice).toBeUndefined();
    expect(colours.map(({ colour, name, fromDominant }) => [colour, name, fromDominant])).toEqual([
      [0, '5R', undefined],
      [1, '5BG', undefined],
    ]);
  });

  it('count the ground where it is seen and has a role', () => {
    const text = (height: number): string =>
      `canvas  100 x 50 cm\n  ground  5BG 5/4 dominant\n${MUNSELL}\nobject  wall\n  shape   rectangle (0, 0) to (100, ${height})\n  colour  5R 5/4`;
    expect(hues(text(40)).roles.map(({ role, name }) => [role, name])).toEqual([['dominant', '5BG']]);
    expect(hues(text(50)).roles).toEqual([]);
  });

  it('are told for named colours that are seen, with their angle from the dominant hue', () => {
    const head =
      'colour  sea #3f6f9a dominant\ncolour  rust #a8602c complement\ncolour  moss #6d7a3a discord\ncolour  rose #a04060';
    const { colours, roles } = hues(bands(head, [35, 'sea'], [10, 'rust'], [5, 'moss']));
    expect(colours.map(({ colour }) => colour)).toEqual([0, 1, 2]);
    expect(colours[0]?.fromDominant).toBeCloseTo(0, 6);
    const [, rust] = colours;
    const dominant = roles.find(({ role }) => role === 'dominant');
    expect(rust?.fromDominant).toBeCloseTo((dominant?.hueDegrees ?? NaN) - (rust?.hueDegrees ?? NaN), 6);
  });

  it('lie where Munsell’s ten hues face each other: 5R against 5BG and so on, Atlas of the Munsell Color System, 1915', () => {
    for (const [one, other] of [
      ['5R', '5BG'],
      ['5YR', '5B'],
      ['5Y', '5PB'],
      ['5GY', '5P'],
      ['5G', '5RP'],
    ]) {
      const { colours } = hues(
        bands(
          `${MUNSELL}\ncolour  one ${one} 5/4 dominant\ncolour  other ${other} 5/4 complement`,
          [40, 'one'],
          [10, 'other'],
        ),
      );
      expect(colours[1]?.fromDominant, one).toBeCloseTo(180, 6);
    }
  });
});

describe('Munsell’s areas of opposite hues', () => {
  // Munsell, Atlas of the Munsell Color System, 1915, chart G: P 4/6 to GY 4/5 as 5 to 6, GY 8/6 to P 2/3 as 6 to 48.
  it.each([
    ['5P 4/6', '5GY 4/5', 5, 6],
    ['5GY 8/6', '5P 2/3', 6, 48],
  ])('%s and %s stand as %d to %d', (one, other, area, otherArea) => {
    const strength = (text: string): number => {
      const reading = parseMunsell(text);
      return reading?.ok ? reading.value * reading.chroma : NaN;
    };
    expect(areaShareBesideOpposite(strength(one), strength(other))).toBeCloseTo(
      area / (area + otherArea),
      12,
    );
  });

  it('are measured beside what the plan does', () => {
    const { areaAdvice } = hues(
      bands(
        `${MUNSELL}\ncolour  plum 5P 4/6 dominant\ncolour  leaf 5GY 4/5 complement`,
        [30, 'plum'],
        [20, 'leaf'],
      ),
    );
    expect(areaAdvice?.dominantWanted).toBeCloseTo(5 / 11, 6);
    expect(areaAdvice?.dominantMeasured).toBeCloseTo(0.6, 9);
  });
});

describe('warm and cool', () => {
  it('share the picture with the neutrals; what has no colour is in none of them', () => {
    const text = `${bands('', [20, '5YR 5/6'], [15, '5B 5/6'], [5, 'N 5/'])}\nobject  grey\n  shape   rectangle (0, 40) to (100, 50)\n  value   3`;
    const { temperature, objects } = hues(text);
    expect(temperature.warm).toBeCloseTo(0.4, 9);
    expect(temperature.cool).toBeCloseTo(0.3, 9);
    expect(temperature.neutral).toBeCloseTo(0.1, 9);
    expect(objects.map((hue) => hue?.temperature)).toEqual(['warm', 'cool', 'neutral', undefined]);
    expect(objects[0]?.warmth).toBeGreaterThan(0.7);
    expect(objects[1]?.warmth).toBeLessThan(-0.7);
    expect(objects[2]).toEqual({ chroma: 0, temperature: 'neutral' });
  });

  it('count a ground that the plan states, and none that is only assumed', () => {
    expect(hues('canvas  40 x 30 cm\n  ground  5YR 5/6').temperature.warm).toBeCloseTo(1, 9);
    expect(hues('canvas  40 x 30 cm').temperature).toEqual({ warm: 0, cool: 0, neutral: 0 });
  });
});

describe('the strongest chroma', () => {
  const scene = (more: string): string =>
    `canvas  100 x 50 cm\nfocus   (20, 25)\ncolour  red 5R 4/8\nobject  wall\n  shape   rectangle (0, 0) to (100, 50)\n  colour  N 6/\nobject  door\n  shape   rectangle (60, 0) to (80, 50)\n  colour  red\n${more}`;

  it('is told with its distance from the focal point', () => {
    const { plan, measures } = checked(scene(''));
    expect(measures.hues.strongestChroma).toEqual({
      object: 1,
      chroma: 8,
      fromFocus: expect.closeTo(40 / plan.canvas.diagonal, 9),
    });
  });

  it('of one colour used twice is the nearer one, wherever it stands in the text', () => {
    const near = 'object  scarf\n  shape   circle 10 at (20, 25)\n  colour  red';
    expect(hues(scene(near)).strongestChroma).toEqual({ object: 2, chroma: 8, fromFocus: 0 });
    const { plan, measures } = checked(scene('').replace('object  door', `${near}\nobject  door`));
    expect(plan.objects[measures.hues.strongestChroma?.object ?? NaN]?.name).toBe('scarf');
  });

  it('passes over specks, and may be the bare ground', () => {
    // A circle of 3.5 cm is 9.6 square cm, 0.19 % of 5000; one of 3.7 is 0.22 %.
    const berry = (across: number): string =>
      `object  berry\n  shape   circle ${across} at (20, 25)\n  colour  5R 4/12`;
    expect(hues(scene(berry(3.5))).strongestChroma?.object).toBe(1);
    expect(hues(scene(berry(3.7))).strongestChroma?.object).toBe(2);
    const ground = hues('canvas  40 x 30 cm\n  ground  5YR 5/6\nfocus   (0, 0)').strongestChroma;
    expect(ground).toEqual({ object: GROUND, chroma: expect.closeTo(6, 1), fromFocus: 0 });
  });

  it('is none in a picture of greys', () => {
    expect(hues(bands('focus   (20, 25)', [50, 'N 5/'])).strongestChroma).toBeUndefined();
  });

  it('is that as painted at its value, not as written', () => {
    // No screen shows a red of chroma 8 at Munsell value 9.
    const { strongestChroma } = hues(scene('').replace('colour  red\n', 'colour  red\n  value   5\n'));
    expect(strongestChroma?.chroma).toBeLessThan(5);
  });
});

describe('what does not matter to the hues', () => {
  const text = (mirrored: boolean): string => {
    const x = (place: number): number => (mirrored ? 100 - place : place);
    return `canvas  100 x 50 cm\n  ground  #c9b79a dominant\nfocus   (${x(30)}, 20)\ncolour  sea #3f6f9a complement\ncolour  rust #a8602c dominant
object  shore\n  shape   outline (${x(0)}, 10) (${x(70)}, 14) (${x(60)}, 50) (${x(0)}, 50)\n  colour  rust
object  water\n  shape   circle 18 at (${x(62)}, 30)\n  colour  sea\n  value   2`;
  };

  it('is left and right', () => {
    expectAlike(hues(text(true)), hues(text(false)));
  });

  it('is what things are called', () => {
    const renamed = text(false)
      .replaceAll('water', 'tarn')
      .replaceAll('rust', 'clay')
      .replaceAll('sea', 'azure');
    expectAlike(hues(renamed), hues(text(false)));
  });

  it('is the size of the canvas', () => {
    const larger = text(false).replaceAll(/\d+(?=,| x|\)| at| cm)/g, (figure) => String(Number(figure) * 3));
    expectAlike(hues(larger), hues(text(false)));
  });

  function expectAlike(one: HueMeasure, other: HueMeasure): void {
    expect(rounded(one)).toEqual(rounded(other));
  }

  function rounded(measure: HueMeasure): unknown {
    return JSON.parse(
      JSON.stringify(measure, (_, value: unknown) =>
        typeof value === 'number' ? Number(value.toFixed(5)) : value,
      ),
    );
  }
});

describe('an edit', () => {
  it('of one shape measures the distance of that one alone', () => {
    const scene = (width: number): string =>
      `canvas  100 x 50 cm\nfocus   (20, 25)\nobject  door\n  shape   rectangle (60, 0) to (${width}, 20)\n  colour  5R 4/8\nobject  pot\n  shape   rectangle (10, 30) to (20, 50)\n  colour  5B 4/6`;
    const memory = new Memory();
    const outlines = new OutlineCache();
    measure(planOf(scene(80), { outlines }), memory);
    expect(memory.worked('object from focus')).toBe(2);
    measure(planOf(scene(84), { outlines }), memory);
    expect(memory.worked('object from focus')).toBe(3);
  });
});

describe('a dominant that is all but black', () => {
  const scene = (chroma: number): string =>
    `canvas  100 x 50 cm\ncolour  soot 5PB 2/${chroma} dominant\ncolour  ember 5Y 8/8 complement\n` +
    'object  wall\n  shape   rectangle (0, 0) to (100, 50)\n  colour  soot\nobject  door\n  shape   circle 20 at (50, 25)\n  colour  ember';

  it('has no hue for others to be opposite to', () => {
    expect(hues(scene(0.9)).roles.map(({ role }) => role)).toEqual(['complement']);
    expect(hues(scene(1.5)).roles.map(({ role }) => role)).toEqual(['dominant', 'complement']);
    expect(checked(scene(0.9)).findings.map(({ rule }) => rule)).not.toContain('complement off opposite');
  });
});
