import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { labDifference } from '../../plan/colour/difference.js';
import { type Lab, labChroma, labHueDegrees } from '../../plan/colour/model.js';
import {
  type Absorbing,
  filmReflectance,
  filmSpectrum,
  mix,
  opaqueReflectance,
  opaqueSpectrum,
  ratioOfReflectance,
} from './kubelka-munk.js';
import { measuredPaint } from './paints.js';
import { BANDS, labOfSpectrum } from './spectra/bands.js';
import { MEASURED_PAINTS } from './spectra/measured.js';

function paint(index: string): Absorbing {
  const known = measuredPaint(index);
  if (!known) throw new Error(`${index} is not measured`);
  return known.absorbing;
}

/** The colour of parts of paints, such as `{ PY151: 2, PW6: 1 }`. */
function mixed(parts: Readonly<Record<string, number>>): Lab {
  const portions = Object.entries(parts).map(([index, count]) => ({ paint: paint(index), parts: count }));
  return labOfSpectrum(opaqueSpectrum(mix(portions)));
}

const anyPaint = fc.constantFrom(...MEASURED_PAINTS.map(({ index }) => index));
const someParts = fc.double({ min: 0.01, max: 50, noNaN: true });

describe('a film that hides what is below it', () => {
  // By hand from (1 - R)^2 / 2R: 0.5^2 / 1, 0.9^2 / 0.2, 0.2^2 / 1.6, 0.05^2 / 1.9.
  test.each([
    [0.5, 0.25],
    [0.1, 4.05],
    [0.8, 0.025],
    [0.95, 0.0025 / 1.9],
    [1, 0],
  ])('of reflectance %d has K/S %d, and the other way round', (reflectance, ratio) => {
    expect(ratioOfReflectance(reflectance)).toBeCloseTo(ratio, 12);
    expect(opaqueReflectance(ratio)).toBeCloseTo(reflectance, 12);
  });

  it('keeps its digits where it is nearly black', () => {
    // For a large K/S, R tends to S / 2K.
    expect(opaqueReflectance(1e9) * 2e9).toBeCloseTo(1, 8);
  });
});

describe('a film over a layer', () => {
  /**
   * The same by another way: Kubelka and Munk's own differential equation of a film that grows on what is below it,
   * dR/dX = S - 2 (K + S) R + S R^2, in small steps (Runge and Kutta's).
   */
  function grown(absorbed: number, scattered: number, ground: number): number {
    const slope = (r: number) => scattered - 2 * (absorbed + scattered) * r + scattered * r * r;
    const steps = 2000;
    let r = ground;
    for (let step = 0; step < steps; step++) {
      const one = slope(r);
      const two = slope(r + one / (2 * steps));
      const three = slope(r + two / (2 * steps));
      const four = slope(r + three / steps);
      r += (one + 2 * two + 2 * three + four) / (6 * steps);
    }
    return r;
  }

  it('reflects what the differential equation of Kubelka and Munk gives', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    const amount = fc.double({ min: 0, max: 8, noNaN: true });
    fc.assert(
      fc.property(amount, amount, part, (absorbed, scattered, ground) => {
        expect(filmReflectance(absorbed, scattered, ground)).toBeCloseTo(
          grown(absorbed, scattered, ground),
          6,
        );
      }),
      { numRuns: 60 },
    );
  });

  // Without absorption R = (Rg + (1 - Rg) SX) / (1 + (1 - Rg) SX), Kubelka 1948: over black 1/2, 3/4; over 0.5 2/3.
  test.each([
    [1, 0, 0.5],
    [3, 0, 0.75],
    [1, 0.5, 2 / 3],
  ])('that only scatters, SX %d over %d, reflects %d', (scattered, ground, reflected) => {
    expect(filmReflectance(0, scattered, ground)).toBeCloseTo(reflected, 12);
  });

  it('that only absorbs lets light through twice, as Bouguer has it', () => {
    expect(filmReflectance(0.5, 0, 0.8)).toBeCloseTo(0.8 * Math.exp(-1), 12);
    expect(filmReflectance(0, 0, 0.3)).toBe(0.3);
  });

  it('looks as if there were nothing below once it is thick, and is not there when it has no thickness', () => {
    const white = opaqueSpectrum(paint('PW6'));
    const black = opaqueSpectrum(paint('PBk7'));
    const red = paint('PR170');
    const thick = labOfSpectrum(filmSpectrum(red, 1, black));
    expect(labDifference(thick, mixed({ PR170: 1 }))).toBeLessThan(0.01);
    expect([...filmSpectrum(red, 0, white)]).toEqual([...white]);
  });

  it('is darker over a darker layer, and darkens a light one the more of it there is', () => {
    const glaze = mix([{ paint: paint('PR122'), parts: 1 }], 20);
    const white = opaqueSpectrum(paint('PW6'));
    const lightness = (millimetres: number, below = white) =>
      labOfSpectrum(filmSpectrum(glaze, millimetres, below))[0];
    expect(lightness(0.03, opaqueSpectrum(paint('PBk7')))).toBeLessThan(lightness(0.03));
    expect(lightness(0.02)).toBeGreaterThan(lightness(0.03));
  });
});

describe('mixtures', () => {
  it('a paint with itself is that paint, however many parts', () => {
    fc.assert(
      fc.property(anyPaint, someParts, someParts, (index, one, other) => {
        const both = mix([
          { paint: paint(index), parts: one },
          { paint: paint(index), parts: other },
        ]);
        expect(labDifference(labOfSpectrum(opaqueSpectrum(both)), mixed({ [index]: 1 }))).toBeLessThan(1e-6);
      }),
    );
  });

  it('the order of mixing makes no difference, nor does mixing a mixture', () => {
    fc.assert(
      fc.property(anyPaint, anyPaint, anyPaint, someParts, someParts, (one, two, three, first, second) => {
        const [a, b, c] = [
          { paint: paint(one), parts: first },
          { paint: paint(two), parts: second },
          { paint: paint(three), parts: 1 },
        ] as const;
        const asOne = mix([a, b, c]);
        const backwards = mix([c, b, a]);
        const inTwo = mix([c, { paint: mix([a, b]), parts: first + second }]);
        for (const other of [backwards, inTwo]) {
          for (let band = 0; band < BANDS; band++) {
            expect(other.k[band]).toBeCloseTo(asOne.k[band] ?? NaN, 9);
            expect(other.s[band]).toBeCloseTo(asOne.s[band] ?? NaN, 9);
          }
        }
      }),
    );
  });

  it('no parts of a paint are as if it were not there; of nothing at all there is clear medium', () => {
    expect(mixed({ PY151: 3, PR170: 0 })).toEqual(mixed({ PY151: 1 }));
    expect(mix([]).k).toEqual(new Float64Array(BANDS));
    expect(mix([], 3)).toEqual(mix([]));
  });

  it('a medium thins a paint, which does not change what a thick film of it looks like', () => {
    const thinned = mix([{ paint: paint('PR170'), parts: 1 }], 3);
    expect(thinned.k[10]).toBeCloseTo((paint('PR170').k[10] ?? 0) / 4, 12);
    expect(labDifference(labOfSpectrum(opaqueSpectrum(thinned)), mixed({ PR170: 1 }))).toBeLessThan(1e-6);
  });

  it('white makes any paint lighter, part by part', () => {
    fc.assert(
      fc.property(
        anyPaint.filter((index) => index !== 'PW6'),
        fc.integer({ min: 0, max: 60 }),
        (index, white) => {
          const [before] = mixed({ [index]: 1, PW6: white });
          expect(mixed({ [index]: 1, PW6: white + 1 })[0]).toBeGreaterThan(before);
        },
      ),
    );
  });
});

describe('what painters know of mixtures', () => {
  // Common practice, no source.
  it('a cool yellow and a greenish blue give green, a warm yellow and a red orange', () => {
    const green = mixed({ PY151: 8, 'PB15:4': 1, PW6: 4 });
    expect(labHueDegrees(green)).toBeGreaterThan(120);
    expect(labHueDegrees(green)).toBeLessThan(200);
    const orange = mixed({ PY151: 8, PR170: 1 });
    expect(labHueDegrees(orange)).toBeGreaterThan(35);
    expect(labHueDegrees(orange)).toBeLessThan(70);
    expect(labChroma(orange)).toBeGreaterThan(45);
  });

  it('complements give a dark that is nearly grey: orange and blue, red and green', () => {
    for (const dark of [mixed({ PO34: 2, 'PB15:2': 1 }), mixed({ PR170: 1, PG7: 2 })]) {
      expect(dark[0]).toBeLessThan(30);
      expect(labChroma(dark)).toBeLessThan(8);
    }
  });

  it('blue and magenta give violet', () => {
    const violet = mixed({ PR122: 2, 'PB15:2': 1, PW6: 4 });
    expect(labHueDegrees(violet)).toBeGreaterThan(290);
    expect(labHueDegrees(violet)).toBeLessThan(330);
  });
});

describe('tints that were weighed and measured', () => {
  // CIELAB (D65, 2 degrees) computed from the measured reflectances of the PaintMixing data set, Michal Iwanicki,
  // CC BY 4.0; parts by weight as given there.
  it.each([
    ['PY151', 0.19, 0.35, [90.675, -10.029, 60.698]],
    ['PY83', 0.27, 0.33, [80.066, 17.616, 78.511]],
    ['PY42', 0.29, 0.59, [79.295, 6.384, 34.023]],
    ['PO34', 0.2, 0.23, [60.513, 47.058, 39.862]],
    ['PR170', 0.24, 0.27, [50.996, 51.88, 14.104]],
    ['PR101', 0.2, 0.35, [51.208, 24.105, 10.542]],
    ['PR122', 0.15, 0.23, [47.452, 50.257, -15.176]],
    ['PV23', 0.17, 0.23, [32.979, 24.795, -35.785]],
    ['PB15:2', 0.32, 0.42, [43.077, 1.074, -44.821]],
    ['PB15:4', 0.21, 0.28, [44.656, -5.708, -42.589]],
    ['PG7', 0.15, 0.23, [56.701, -45.481, -2.62]],
    ['PBk7', 0.14, 0.25, [35.226, -0.442, -4.634]],
  ] as const)('%s, %d parts to %d of white', (index, own, white, measured) => {
    expect(labDifference(mixed({ [index]: own, PW6: white }), [...measured])).toBeLessThan(1);
  });
});
