import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readRenotation } from '../../../tests/references/read.js';
import { parseColour } from './colour.js';
import {
  fractionalStep,
  lightnessOf,
  luminousReflectance,
  munsellValue,
  nearestStep,
  reflectanceOfLightness,
  stepValue,
  valueOf,
} from './value.js';

describe('Munsell value and reflectance', () => {
  test('the quintic agrees with the reflectances of the renotation', () => {
    // ASTM D1535 defines Y as 0.975 of the renotation's, which is tabled to 4 figures.
    const tabled = new Map(readRenotation().map((row) => [row.value, row.reflectancePercent]));
    expect([...tabled.keys()].sort((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    for (const [value, reflectance] of tabled) {
      expect(Math.abs(luminousReflectance(value) / reflectance - 1)).toBeLessThan(5e-4);
    }
  });

  test('black reflects nothing, white everything, and past the ends is the end', () => {
    expect(luminousReflectance(0)).toBe(0);
    expect(luminousReflectance(10)).toBeCloseTo(100, 9);
    expect(luminousReflectance(11)).toBe(luminousReflectance(10));
    expect([munsellValue(-1), munsellValue(0), munsellValue(100), munsellValue(120)]).toEqual([0, 0, 10, 10]);
    expect(munsellValue(NaN)).toBe(0);
  });

  test('value comes back from its reflectance to 1e-9', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 10, noNaN: true }), (value) => {
        expect(Math.abs(munsellValue(luminousReflectance(value)) - value)).toBeLessThan(1e-9);
      }),
    );
  });

  test('more light is a higher value', () => {
    const reflectance = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(reflectance, reflectance, (one, other) => {
        fc.pre(one + 1e-6 < other);
        expect(munsellValue(one)).toBeLessThan(munsellValue(other));
      }),
    );
  });

  test('CIE lightness: 18.42 % reflects as middle grey, L* 50', () => {
    // CIE 15: L* = 116 cbrt(Y/Yn) - 16, so Y = 100 (66/116)^3.
    expect(lightnessOf(18.4187)).toBeCloseTo(50, 3);
    expect(reflectanceOfLightness(lightnessOf(0.5))).toBeCloseTo(0.5, 12);
    expect(reflectanceOfLightness(lightnessOf(70))).toBeCloseTo(70, 12);
  });

  test('the value of a colour is that of its lightness alone', () => {
    const value = (text: string) => {
      const reading = parseColour(text);
      return reading.ok ? valueOf(reading.colour) : NaN;
    };
    expect(value('black')).toBe(0);
    expect(value('white')).toBeCloseTo(10, 6);
    expect(value('N 5/')).toBeCloseTo(5, 9);
    expect(value('7.5R 4/10')).toBeCloseTo(4, 9);
    expect(value('#777777')).toBeCloseTo(value('lab(50.03 0 0)'), 2);
  });
});

describe('the steps of a scale', () => {
  test('five steps stand at 1, 3, 5, 7, 9', () => {
    expect([1, 2, 3, 4, 5].map((step) => stepValue(step, 5))).toEqual([1, 3, 5, 7, 9]);
    expect(stepValue(2.5, 5)).toBe(4);
  });

  test('a value falls on the nearest step; on a border, the lighter', () => {
    expect(nearestStep(4.4, 5)).toBe(3);
    expect(nearestStep(4, 5)).toBe(3);
    expect(nearestStep(3.9, 5)).toBe(2);
    expect([nearestStep(0, 5), nearestStep(10, 5)]).toEqual([1, 5]);
    expect(fractionalStep(4, 5)).toBe(2.5);
  });

  test('every step of every scale finds itself', () => {
    for (let steps = 2; steps <= 11; steps++) {
      for (let step = 1; step <= steps; step++) expect(nearestStep(stepValue(step, steps), steps)).toBe(step);
    }
  });
});
