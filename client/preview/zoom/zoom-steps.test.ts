import { describe, expect, it } from 'vitest';
import { inPerCent, scrollShares, stepFrom, turned, within, zoomLimits } from './zoom-steps.js';

describe('the steps of the zoom', () => {
  it('go up and down over the whole sheet at 100 %', () => {
    expect(stepFrom(1, 'in')).toBe(1.25);
    expect(stepFrom(1, 'out')).toBe(0.8);
    expect(stepFrom(0.9, 'in')).toBe(1);
    expect(stepFrom(1.1, 'out')).toBe(1);
  });

  it('come back to where they began', () => {
    for (let factor: number = zoomLimits.least; factor < zoomLimits.most; factor = stepFrom(factor, 'in')) {
      expect(stepFrom(stepFrom(factor, 'in'), 'out')).toBe(factor);
    }
  });

  it('stay at their ends', () => {
    expect(stepFrom(zoomLimits.most, 'in')).toBe(zoomLimits.most);
    expect(stepFrom(zoomLimits.least, 'out')).toBe(zoomLimits.least);
  });
});

describe('a wheel', () => {
  it('makes the drawing larger when it is turned away, and back again', () => {
    const larger = turned(1, -60, 0);
    expect(larger).toBeGreaterThan(1.1);
    expect(turned(larger, 60, 0)).toBe(1);
  });

  it('that counts in lines or pages turns as well', () => {
    expect(turned(1, -3, 1)).toBeCloseTo(turned(1, -48, 0), 9);
    expect(turned(1, -1, 2)).toBeCloseTo(Math.SQRT2, 9);
  });

  it('does not leap by one coarse notch, nor past the ends', () => {
    expect(turned(1, -5_000, 0)).toBeCloseTo(Math.SQRT2, 9);
    expect(turned(zoomLimits.most, -100, 0)).toBe(zoomLimits.most);
  });
});

it('is told in whole per cent', () => {
  expect(inPerCent(within(1.004))).toBe('100 %');
  expect(inPerCent(2.344)).toBe('234 %');
});

it('scrolls the box as far as it goes, and the page for the rest', () => {
  expect(scrollShares(40, 10, 100)).toEqual({ box: 40, page: 0 });
  expect(scrollShares(40, 90, 100)).toEqual({ box: 10, page: 30 });
  expect(scrollShares(-40, 10, 100)).toEqual({ box: -10, page: -30 });
  expect(scrollShares(40, 0, 0)).toEqual({ box: 0, page: 40 });
});
