import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { labOfParts, partsOfLab } from '../../../plan/colour/cielab.js';
import { computedColour } from '../../../plan/colour/model.js';
import { toHex } from '../../../plan/colour/srgb.js';
import { opaqueSpectrum } from '../kubelka-munk.js';
import { BANDS, labOfSpectrum, WEIGHTS, WHITE_XYZ } from './bands.js';
import { MEASURED_PAINTS } from './measured.js';

const even = (part: number) => new Float64Array(BANDS).fill(part);

describe('the colour of a spectrum', () => {
  it('has the white point of daylight D65, but for the ends of the spectrum that are left out', () => {
    // CIE 15: X 95.047, Y 100, Z 108.883 for 380 to 780 nm by 5.
    const [x, y, z] = WHITE_XYZ;
    expect(y).toBe(100);
    expect(Math.abs(x - 95.047)).toBeLessThan(0.1);
    expect(Math.abs(z - 108.883)).toBeLessThan(0.1);
  });

  it('is white where all light is reflected, black where none is, and grey where each band gives the same', () => {
    for (const weights of WEIGHTS)
      expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
    labOfSpectrum(even(1)).forEach((figure, axis) => expect(figure).toBeCloseTo([100, 0, 0][axis] ?? 0, 10));
    labOfSpectrum(even(0)).forEach((figure) => expect(figure).toBeCloseTo(0, 10));
    // Y 18.4187 % is L* 50: ((50 + 16) / 116)^3.
    const [lightness, a, b] = labOfSpectrum(even(0.184187));
    expect(lightness).toBeCloseTo(50, 3);
    expect(Math.hypot(a, b)).toBeLessThan(1e-9);
  });

  it('goes from tristimulus values to CIELAB as colorjs.io does', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, part, (x, y, z) => {
        const white = new Color('xyz-d65', [0, 0, 0]).space.white ?? [0.95047, 1, 1.08883];
        const [xw = 1, yw = 1, zw = 1] = white;
        const lab = new Color('xyz-d65', [x * xw, y * yw, z * zw]).to('lab-d65').coords;
        labOfParts(x, y, z).forEach((figure, axis) => expect(figure).toBeCloseTo(lab[axis] ?? 0, 6));
      }),
    );
  });

  it('goes back from CIELAB', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, part, (x, y, z) => {
        partsOfLab(labOfParts(x, y, z)).forEach((figure, axis) =>
          expect(figure).toBeCloseTo([x, y, z][axis] ?? 0, 9),
        );
      }),
    );
  });

  // sRGB of the masstones as published with the coefficients, computed there from the measured reflectances
  // (Michal Iwanicki, PaintMixing data set, CC BY 4.0); a last digit may round the other way.
  it.each(MEASURED_PAINTS.map(({ index, hex, k, s }) => [index, hex, k, s] as const))(
    'shows %s as %s',
    (_, hex, k, s) => {
      const lab = labOfSpectrum(opaqueSpectrum({ k: Float64Array.from(k), s: Float64Array.from(s) }));
      const own = new Color(toHex(computedColour(lab))).coords;
      new Color(hex).coords.forEach((channel, axis) => {
        expect(Math.abs((channel ?? 0) - (own[axis] ?? 0))).toBeLessThan(1.5 / 255);
      });
    },
  );
});

describe('the measured paints', () => {
  it('have figures for every band, and white scatters as one', () => {
    expect(MEASURED_PAINTS).toHaveLength(13);
    for (const { k, s } of MEASURED_PAINTS) {
      expect([k.length, s.length]).toEqual([BANDS, BANDS]);
      expect(Math.min(...k, ...s)).toBeGreaterThan(0);
    }
    expect(new Set(MEASURED_PAINTS.find(({ index }) => index === 'PW6')?.s)).toEqual(new Set([1]));
  });
});
