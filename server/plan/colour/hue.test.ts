import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { parseColour } from './colour.js';
import {
  complementOf,
  hueDistance,
  hueName,
  hueOn,
  labHueOnPaintersWheel,
  meanHue,
  paintersHueDegrees,
  type Wheel,
} from './hue.js';

function hue(text: string, wheel: Wheel): number | undefined {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(reading.reason);
  return hueOn(reading.colour, wheel);
}

const angle = fc.double({ min: 0, max: 360, noNaN: true, maxExcluded: true });

describe('the painters’ wheel', () => {
  // Common practice, no source: red faces green, yellow violet, blue orange.
  test.each([
    [0, 'red', 'green'],
    [120, 'yellow', 'violet'],
    [240, 'blue', 'orange'],
    [30, 'red-orange', 'blue-green'],
    [90, 'yellow-orange', 'blue-violet'],
    [150, 'yellow-green', 'red-violet'],
  ])('%d degrees is %s, and faces %s', (degrees, name, opposite) => {
    expect(hueName(degrees, 'painters')).toBe(name);
    expect(hueName(complementOf(degrees), 'painters')).toBe(opposite);
    expect(complementOf(complementOf(degrees))).toBe(degrees);
  });

  // Names as a painter would give them, from memory.
  test.each([
    ['7.5R 4/12', 'red'],
    ['5YR 6/12', 'orange'],
    ['#d9a441', 'yellow-orange'],
    ['5Y 8/12', 'yellow'],
    ['5GY 6/8', 'yellow-green'],
    ['5G 5/8', 'green'],
    ['#2f6f73', 'blue-green'],
    ['5PB 4/10', 'blue'],
    ['10PB 3/12', 'blue-violet'],
    ['5P 4/10', 'violet'],
    ['5RP 4/10', 'red-violet'],
  ])('%s is a %s', (text, name) => {
    expect(hueName(hue(text, 'painters') ?? NaN, 'painters')).toBe(name);
  });

  test('a rust lies opposite a teal', () => {
    const [rust = NaN, teal = NaN] = [hue('7.5R 4/10', 'painters'), hue('#2f6f73', 'painters')];
    expect(hueDistance(complementOf(teal), rust)).toBeLessThan(30);
  });

  test('every CIELAB hue has one place on the wheel, in order, and comes back', () => {
    fc.assert(
      fc.property(angle, angle, (one, other) => {
        expect(hueDistance(labHueOnPaintersWheel(paintersHueDegrees(one)), one)).toBeLessThan(1e-9);
        // Counted from red (30 degrees in CIELAB), further round in one is further round in the other.
        const fromRed = (labHue: number) => (labHue + 330) % 360;
        fc.pre(fromRed(one) + 1e-6 < fromRed(other));
        expect(paintersHueDegrees(one)).toBeLessThan(paintersHueDegrees(other));
      }),
    );
  });
});

describe('Munsell’s circle', () => {
  // The ten hues are evenly spaced and faced in Munsell's Atlas of 1915: red and blue-green, and so on.
  test.each([
    ['5R', '5BG'],
    ['5YR', '5B'],
    ['5Y', '5PB'],
    ['5GY', '5P'],
    ['5G', '5RP'],
  ])('%s faces %s', (name, opposite) => {
    const degrees = hue(`${name} 5/6`, 'munsell') ?? NaN;
    expect(hueName(degrees, 'munsell')).toBe(name);
    expect(hueName(complementOf(degrees), 'munsell')).toBe(opposite);
  });
});

test.each(['N 5/', '#808080', 'black', 'white', 'rgb(128 128 129)'])('%s has no hue', (text) => {
  expect([hue(text, 'painters'), hue(text, 'munsell')]).toEqual([undefined, undefined]);
});

test('hues are compared the shorter way round', () => {
  expect(hueDistance(350, 20)).toBe(30);
  expect(hueDistance(20, 350)).toBe(30);
  expect(hueDistance(0, 180)).toBe(180);
  expect(hueDistance(45, 45)).toBe(0);
});

describe('the mean of hues', () => {
  it.each([
    // Half way between, whichever way round the seam lies.
    [
      [
        [10, 1],
        [50, 1],
      ],
      30,
    ],
    [
      [
        [350, 1],
        [30, 1],
      ],
      10,
    ],
    // tan a = (1 sin 90) / (2 cos 0): the heavier pulls.
    [
      [
        [0, 2],
        [90, 1],
      ],
      (Math.atan2(1, 2) * 180) / Math.PI,
    ],
    [[[123, 0.2]], 123],
  ])('of %j is %d', (hues, mean) => {
    expect(meanOf(hues)).toBeCloseTo(mean, 9);
  });

  it.each([
    [[]],
    [[[40, 0]]],
    [
      [
        [0, 1],
        [180, 1],
      ],
    ],
    [
      [
        [0, 1],
        [120, 1],
        [240, 1],
      ],
    ],
  ])('of %j there is none: nothing is left when they are put together', (hues) => {
    expect(meanOf(hues)).toBeUndefined();
  });

  function meanOf(hues: readonly (readonly number[])[]): number | undefined {
    return meanHue(hues.map(([hueDegrees = 0, weight = 0]) => ({ hueDegrees, weight })));
  }
});
