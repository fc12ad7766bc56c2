import { describe, expect, it } from 'vitest';
import { parseColour, type Colour } from './colour.js';
import { labHueOnPaintersWheel } from './hue.js';
import { computedColour } from './model.js';
import { temperatureOf, warmthOf } from './hue-warmth.js';

function colour(text: string): Colour {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(reading.reason);
  return reading.colour;
}

/** A colour at a place of the painters’ wheel. */
function at(hueDegrees: number): Colour {
  const angle = (labHueOnPaintersWheel(hueDegrees) * Math.PI) / 180;
  return computedColour([50, 40 * Math.cos(angle), 40 * Math.sin(angle)]);
}

describe('warm and cool', () => {
  // The halves of the circle as in Itten, The Art of Color (1961), cold-warm contrast: from memory.
  it.each([
    ['red-violet', 330, 'warm'],
    ['red', 0, 'warm'],
    ['red-orange', 30, 'warm'],
    ['orange', 60, 'warm'],
    ['yellow-orange', 90, 'warm'],
    ['yellow', 120, 'warm'],
    ['yellow-green', 150, 'cool'],
    ['green', 180, 'cool'],
    ['blue-green', 210, 'cool'],
    ['blue', 240, 'cool'],
    ['blue-violet', 270, 'cool'],
    ['violet', 300, 'cool'],
  ])('%s is at %d degrees: %s', (_, degrees, temperature) => {
    expect(temperatureOf(warmthOf(at(degrees)), 6)).toBe(temperature);
  });

  it('are most so at red-orange to orange and opposite it, and least half way between', () => {
    expect(warmthOf(at(45))).toBeCloseTo(1, 9);
    expect(warmthOf(at(225))).toBeCloseTo(-1, 9);
    expect(warmthOf(at(135))).toBeCloseTo(0, 9);
    expect(warmthOf(at(105))).toBeCloseTo(0.5, 9);
  });

  it('go as painters call common pigments, from memory', () => {
    const called = (text: string): string => temperatureOf(warmthOf(colour(text)), 6);
    expect(['7.5R 4/12', '10YR 6/8', '5Y 8/10'].map(called)).toEqual(['warm', 'warm', 'warm']);
    expect(['5PB 3/10', '5BG 4/8', '7.5G 4/8'].map(called)).toEqual(['cool', 'cool', 'cool']);
  });

  it('are not said of a grey, nor of a colour that is painted with hardly any chroma', () => {
    expect(temperatureOf(warmthOf(colour('N 5/')), 0)).toBe('neutral');
    expect(warmthOf(colour('N 5/'))).toBeUndefined();
    expect(temperatureOf(warmthOf(colour('5YR 5/1')), 1)).toBe('warm');
    expect(temperatureOf(warmthOf(colour('5YR 5/0.9')), 0.9)).toBe('neutral');
  });
});
