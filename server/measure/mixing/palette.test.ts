import { describe, expect, it } from 'vitest';
import { planOf } from '../../../tests/support/plan.js';
import { labDifference } from '../../plan/colour/difference.js';
import { toMunsell } from '../../plan/colour/munsell.js';
import { measure } from '../measure.js';
import type { MixingMeasure, Mixture } from './mixing.js';

const WALL = 'object  wall\n  plane   background\n  shape   rectangle (0, 0) to (50, 40)\n';
const CUP = 'object  cup, dominant\n  shape   rectangle (10, 10) to (30, 20)\n';

function scene(colours: string, paints: string): string {
  const lines = paints
    .split(',')
    .map((paint) => `  ${/^ ?(mother|film|tube) /.test(paint) ? '' : 'paint   '}${paint.trim()}\n`);
  return `canvas  50 x 40 cm\n${colours}palette\n${lines.join('')}`;
}

function paletteOf(text: string) {
  const { palette } = measure(planOf(text));
  if (!palette) throw new Error('nothing is measured of the palette');
  return palette;
}

function mixingOf(text: string): MixingMeasure {
  const { mixing } = paletteOf(text);
  if (!mixing) throw new Error('no mixtures');
  return mixing;
}

/** The parts by the index of each paint. */
function parts(mixture: Mixture | undefined): readonly (readonly [number, number])[] | undefined {
  return mixture?.parts.map((each) => [each.paint, each.parts] as const);
}

const SPLIT = 'white PW6, lemon PY151, gold PY83, red PR170, rose PR122, navy PB15:2, azure PB15:4';

describe('what is known of paints', () => {
  it('is nothing without a palette', () => {
    expect(measure(planOf(`canvas  50 x 40 cm\n${WALL}  value   3\n`)).palette).toBeUndefined();
  });

  it('is a measured spectrum, tones that are remembered, tones that the plan gives, or nothing', () => {
    const { paints } = paletteOf(
      scene('', 'a PW6, b PB29, c full #7a1030 tint #e8a0b0 at 1 to 9, d, e full #7a1030, f PR999, g PW4'),
    );
    expect(paints.map(({ basis, strengthGuessed }) => [basis, strengthGuessed === true])).toEqual([
      ['measured', false],
      ['estimated', false],
      ['estimated', false],
      ['unknown', false],
      ['estimated', true],
      ['unknown', false],
      ['estimated', false],
    ]);
  });

  it('is what the painter measured of a tube of their own, where full tone and tint are given', () => {
    const [own, masstone] = paletteOf(
      scene('', 'own PR170 full #a02030 tint #e8a0b0 at 1 to 9, red PR170 full #a02030'),
    ).paints;
    expect([own?.basis, masstone?.basis]).toEqual(['estimated', 'measured']);
  });

  it('tells a family by name or looks, and the side by the plan, the pigment or the hue', () => {
    const { paints } = paletteOf(
      scene(
        '',
        'a PY151, b PY151 warm, c full #f0a810 tint #f8d8a0 at 1 to 9, d full #141a50 tint #7f88c8 at 1 to 9',
      ),
    );
    expect(paints.map(({ family, side, sideFrom }) => [family, side, sideFrom])).toEqual([
      ['yellow', 'cool', 'pigment'],
      ['yellow', 'warm', 'plan'],
      ['yellow', 'warm', 'hue'],
      ['blue', 'warm', 'hue'],
    ]);
  });
});

describe('primaries', () => {
  const lacks = (paints: string) =>
    paletteOf(scene('', paints)).primaries.map(({ primary, lacks: sides }) =>
      `${primary} ${sides.join('+')}`.trim(),
    );

  it('of a split palette have both sides', () => {
    expect(lacks(SPLIT.replace('red PR170', 'red PR188'))).toEqual(['yellow', 'red', 'blue']);
  });

  it('lack a side, or are missing', () => {
    expect(lacks('white PW6, lemon PY151, rose PR122')).toEqual([
      'yellow warm',
      'red warm',
      'blue warm+cool',
    ]);
  });

  it('are earths only where there is no brighter paint of theirs', () => {
    const yellows = (paints: string) => paletteOf(scene('', paints)).primaries[0]?.warm;
    expect(yellows('ochre PY42')).toEqual([0]);
    expect(yellows('ochre PY42, lemon PY151')).toEqual([]);
  });
});

describe('mixtures', () => {
  const text = scene(
    `  ground  #8a6a4f\n${WALL}  colour  ochre\n${CUP}  colour  5BG 5/6\n`,
    `ochre PY42, ${SPLIT}`,
  );

  it('are of paints of the plan, those of most parts first, and have the colour that they are said to have', () => {
    const { swatches } = mixingOf(text);
    for (const { mixture, wanted, difference = NaN } of swatches) {
      const counts = mixture?.parts.map((each) => each.parts) ?? [];
      expect(counts).toEqual([...counts].sort((one, other) => other - one));
      expect(difference).toBeCloseTo(labDifference(wanted.lab, mixture?.colour.lab ?? [0, 0, 0]), 9);
    }
  });

  it('of a paint’s own colour are that paint alone', () => {
    expect(parts(mixingOf(text).swatches[0]?.mixture)).toEqual([[0, 1]]);
  });

  it('are told of the largest share first, with the objects that have each', () => {
    const { swatches, ofObjects } = mixingOf(text);
    expect(swatches.map(({ share }) => share)).toEqual(
      swatches.map(({ share }) => share).toSorted((one, other) => other - one),
    );
    expect(ofObjects.map((at) => swatches[at ?? -1]?.objects)).toEqual([[0], [1]]);
    expect(swatches.map(({ isGround }) => isGround)).toEqual([false, false, true]);
  });

  it('are an estimate where a paint is', () => {
    const { swatches } = mixingOf(scene(`${WALL}  colour  5PB 4/8\n`, 'white PW6, ultra PB29'));
    expect(swatches[0]?.mixture?.isEstimate).toBe(true);
    expect(mixingOf(text).swatches.every(({ mixture }) => mixture?.isEstimate === false)).toBe(true);
  });

  it('all hold the mother colour', () => {
    const { swatches, strings } = mixingOf(text.replace('palette\n', 'palette\n  mother  rose\n'));
    const all = [...swatches, ...strings.flatMap(({ steps }) => steps)];
    expect(all.every(({ mixture }) => mixture?.parts.some(({ paint }) => paint === 5))).toBe(true);
  });

  it('are none where nothing is known of any paint', () => {
    const { swatches, reach, amounts } = mixingOf(scene(`${WALL}  colour  5PB 4/8\n`, 'odd'));
    expect(swatches[0]).not.toHaveProperty('mixture');
    expect(Math.max(...reach)).toBe(0);
    expect(amounts).toEqual([{ millilitres: 0 }]);
  });

  it('are the same under other names and in another order of paints and objects', () => {
    const [one, other] = [
      mixingOf(
        scene(
          `${WALL}  colour  5R 5/6\n${CUP}  colour  5BG 5/6\n`,
          'white PW6, lemon PY151, rose PR122, azure PB15:4',
        ),
      ),
      mixingOf(
        scene(`${CUP}  colour  5BG 5/6\n${WALL}  colour  5R 5/6\n`, 'a PB15:4, b PW6, c PR122, d PY151'),
      ),
    ];
    expect(one.swatches.map(({ mixture }) => mixture?.colour)).toEqual(
      other.swatches.map(({ mixture }) => mixture?.colour),
    );
    expect(one.reach).toEqual(other.reach);
  });
});

describe('strings of values', () => {
  it('tell every step between the darkest and the lightest of a hue', () => {
    const text = scene(
      `scale   9\ncolour  leaf 5GY 5/6\n${WALL}  colour  leaf\n  value   7\n${CUP}  colour  leaf\n  value   3\n`,
      SPLIT,
    );
    const { strings, swatches } = mixingOf(text);
    expect(strings).toHaveLength(1);
    expect(strings[0]?.name).toBe('leaf');
    expect(strings[0]?.steps.map(({ step }) => step)).toEqual([3, 4, 5, 6, 7]);
    // The ends are the colours of the picture, mixed as there.
    expect(strings[0]?.steps.at(-1)?.mixture).toEqual(swatches[0]?.mixture);
    expect(strings[0]?.steps[0]?.mixture).toEqual(swatches[1]?.mixture);
  });

  it('are none of a hue that is painted at one step', () => {
    const text = scene(`${WALL}  colour  5GY 5/6\n  value   4\n${CUP}  colour  5R 5/6\n  value   2\n`, SPLIT);
    expect(mixingOf(text).strings).toEqual([]);
  });
});

describe('how much paint', () => {
  it('is visible area x film, by parts, and in tubes', () => {
    // A wall of 50 x 40 cm less a cup of 20 x 10 cm: 180,000 mm2 x 0.15 mm are 27 ml; the cup 20,000 mm2 x 0.15 mm, 3
    // ml.
    const { swatches, amounts } = mixingOf(
      scene(`${WALL}  colour  a\n${CUP}  colour  b\n`, 'a PY42, b PR101, tube 30 ml'),
    );
    expect(swatches.map(({ millilitres }) => millilitres)).toEqual([
      expect.closeTo(27, 6),
      expect.closeTo(3, 6),
    ]);
    expect(amounts).toEqual([
      { millilitres: expect.closeTo(27, 6), tubes: expect.closeTo(0.9, 6) },
      { millilitres: expect.closeTo(3, 6), tubes: expect.closeTo(0.1, 6) },
    ]);
  });

  it('goes by the film of the palette, and by a fifth of it for a toned ground over the whole canvas', () => {
    // 200,000 mm2 x 0.3 mm x 0.2 are 12 ml; nothing else is painted.
    const { swatches } = mixingOf(scene('  ground  a\n', 'a PY42, film 0.3 mm'));
    expect(swatches[0]?.millilitres).toBeCloseTo(12, 6);
  });

  it('goes by the film of the sitting that tones the ground', () => {
    const { swatches } = mixingOf(
      `${scene('  ground  a\n', 'a PY42')}sitting "Tone"\n  layer   imprimatura\n  film    0.05 mm\n`,
    );
    expect(swatches[0]?.millilitres).toBeCloseTo(10, 6);
  });
});

describe('what is beyond a palette', () => {
  const EARTHS = 'white PW6, ochre PY42, oxide PR101, black PBk7';

  it('is told with the paint that would bring it nearest', () => {
    const { beyond, addition, swatches } = mixingOf(
      scene(`${WALL}  colour  5PB 4/10\n${CUP}  colour  ochre\n`, EARTHS),
    );
    expect(beyond).toEqual([0]);
    expect(addition?.pigment.family).toBe('blue');
    expect(addition?.differences[0]?.difference).toBeLessThan((swatches[0]?.difference ?? 0) / 2);
  });

  it('is what adding that paint leaves, and no other leaves less', () => {
    const colours = `${WALL}  colour  5PB 4/10\n${CUP}  colour  5G 5/10\n`;
    const { addition } = mixingOf(scene(colours, EARTHS));
    const sum = addition?.differences.reduce((total, { difference }) => total + difference, 0) ?? 0;
    for (const index of ['PB15:2', 'PB15:4', 'PG7', 'PV23', 'PR122']) {
      const { swatches } = mixingOf(scene(colours, `${EARTHS}, more ${index}`));
      const left = swatches.reduce((total, { difference = 0 }) => total + difference, 0);
      // The search for a paint is rougher than that for mixtures.
      expect(sum).toBeLessThan(left + 2);
    }
  });

  it('is nothing that has a value and no colour, nor a dark that no paint was measured dark enough for', () => {
    const { beyond, swatches, addition } = mixingOf(
      scene(`${WALL}  value   5\n${CUP}  colour  N 1/\n`, 'oxide PR101, black PBk7'),
    );
    expect(swatches.every(({ difference = 0 }) => difference > 5)).toBe(true);
    expect([beyond, addition]).toEqual([[], undefined]);
  });
});

describe('a glaze', () => {
  const over = (glaze: string, paints: string, colour = '#e6dfc4') =>
    mixingOf(scene(`${WALL}  colour  ${colour}\n  glaze   ${glaze}\n`, paints)).glazes[0];

  it('of a paint is that paint thinned, and is seen over the body colour', () => {
    const glaze = over('rose', 'white PW6, ochre PY42, rose PR122, black PBk7');
    expect(parts(glaze?.mixture)).toEqual([[2, 1]]);
    expect(glaze?.mixture?.medium).toBeGreaterThan(1);
    expect(glaze?.isEstimate).toBe(false);
    // Darker than the body and redder.
    expect(glaze?.seen.lab[0]).toBeLessThan(85);
    expect(glaze && toMunsell(glaze.seen).hue).toMatch(/R/);
  });

  it('over a darker body is darker', () => {
    const paints = 'white PW6, ochre PY42, rose PR122, black PBk7';
    const [light, dark] = [over('rose', paints), over('rose', paints, 'N 4/')];
    expect(dark?.seen.lab[0]).toBeLessThan(light?.seen.lab[0] ?? 0);
  });

  it('of a colour is mixed of transparent paints, in whole parts with medium', () => {
    const glaze = over('#d9a0b0', 'white PW6, ochre PY42, rose PR122, azure PB15:4, black PBk7');
    expect(glaze?.mixture?.parts.every(({ paint }) => paint !== 0 && paint !== 4)).toBe(true);
    expect(glaze && labDifference(glaze.wanted.lab, glaze.mixture?.colour.lab ?? [0, 0, 0])).toBeLessThan(8);
  });

  it('that the palette can’t give is an estimate, darker than the body and the glaze', () => {
    const glaze = over('#d9a0b0', 'white PW6, odd');
    expect(glaze).not.toHaveProperty('mixture');
    expect(glaze?.isEstimate).toBe(true);
    expect(glaze?.seen.lab[0]).toBeLessThan(72);
  });

  it('goes by its place among the objects', () => {
    const text = scene(
      `${WALL}  colour  #e6dfc4\n${CUP}  colour  N 6/\n  glaze   #d9a0b0\n`,
      'white PW6, rose PR122',
    );
    const { glazes } = mixingOf(text);
    expect(glazes.map((glaze) => glaze?.object)).toEqual([undefined, 1]);
  });
});

describe('many colours beyond a palette', () => {
  it('have a paint that brings them nearer, and each its own difference', () => {
    const objects = Array.from(
      { length: 30 },
      (_, at) =>
        `object  tile-${at}\n  shape   rectangle (${at}, 0) to (${at + 1}, 40)\n  colour  5PB 4/${8 + at / 10}\n`,
    );
    const { beyond, addition } = mixingOf(scene(objects.join(''), 'white PW6, ochre PY42, black PBk7'));
    expect(beyond).toHaveLength(30);
    expect(addition?.differences).toHaveLength(30);
    for (const { difference } of addition?.differences ?? []) {
      expect(difference).toBeGreaterThan(0);
      expect(difference).toBeLessThan(10);
    }
  });
});
