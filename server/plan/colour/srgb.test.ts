import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computedColour, type Lab } from './model.js';
import { fromRgb, isDisplayable, labToRgb, rgbToLab, toHex, toRgb } from './srgb.js';

const channel = fc.double({ min: 0, max: 1, noNaN: true });
const labs = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -150, max: 150, noNaN: true }),
  fc.double({ min: -150, max: 150, noNaN: true }),
);

describe('sRGB and CIELAB', () => {
  test('both ways agree with an independent library', () => {
    fc.assert(
      fc.property(channel, channel, channel, (...rgb) => {
        // colorjs.io
        const { coords } = new Color('srgb', rgb).to('lab-d65');
        const lab = rgbToLab(rgb);
        lab.forEach((component, index) => expect(component).toBeCloseTo(coords[index] ?? NaN, 3));
        labToRgb(lab).forEach((back, index) => expect(back).toBeCloseTo(rgb[index] ?? NaN, 5));
      }),
    );
  });

  test('a colour of a screen is shown as it is', () => {
    expect(toHex(fromRgb([47 / 255, 111 / 255, 115 / 255]))).toBe('#2f6f73');
    expect(toHex(computedColour([100, 0, 0]))).toBe('#ffffff');
    expect(toHex(computedColour([0, 0, 0]))).toBe('#000000');
    expect(isDisplayable(rgbToLab([1, 0, 0]))).toBe(true);
    expect(isDisplayable([50, 100, 100])).toBe(false);
  });
});

describe('a colour that no screen shows', () => {
  test('is brought inside: every channel from 0 to 1', () => {
    fc.assert(
      fc.property(labs, (lab) => {
        for (const shown of toRgb(computedColour(lab))) {
          expect(shown).toBeGreaterThanOrEqual(0);
          expect(shown).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('keeps its lightness, and so its value, and turns greyer', () => {
    const chroma = ([, a, b]: Lab) => Math.hypot(a, b);
    fc.assert(
      fc.property(labs, (lab) => {
        const shown = rgbToLab(toRgb(computedColour(lab)));
        // Clipping at a quarter of one of 256 steps may still move L* this much, most so near black.
        expect(Math.abs(shown[0] - lab[0])).toBeLessThan(0.3);
        expect(chroma(shown)).toBeLessThan(chroma(lab) + 0.3);
      }),
    );
  });
});
