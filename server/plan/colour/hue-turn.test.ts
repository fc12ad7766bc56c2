import Color from 'colorjs.io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseColour, type Colour } from './colour.js';
import { formatLike } from './format.js';
import { hueDistance, hueOn, labHueOnPaintersWheel, turn } from './hue.js';
import { turnedTo, turnedUntil, withChroma } from './hue-turn.js';
import { labHueDegrees } from './model.js';
import { fromMunsell, munsellToLab, toMunsell } from './munsell.js';
import { atValue } from './painted.js';
import { valueOf } from './value.js';

function colour(text: string): Colour {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(reading.reason);
  return reading.colour;
}

describe('a colour turned on a wheel', () => {
  it('is only another hue in Munsell’s terms', () => {
    // 5BG is 198 degrees on Munsell's circle, 5R 18.
    expect(turnedTo(colour('5R 4/4'), 198, 'munsell')?.text).toBe('5BG 4.0/4.0');
    expect(turnedTo(colour('5BG 4/4'), 18, 'munsell')?.text).toBe('5R 4.0/4.0');
  });

  it('has the CIELAB hue of its new place on the painters’ wheel, as colorjs.io reads what is written', () => {
    for (const [text, place] of [
      ['#8f5a30', 90],
      ['oklch(0.6 0.1 200)', 30],
      ['rgb(70 110 150)', 60],
    ] as const) {
      const turned = turnedTo(colour(text), place, 'painters');
      const [, a = 0, b = 0] = new Color(turned?.text ?? '').to('lab-d65').coords.map(Number);
      const hue = (Math.atan2(b, a) * 180) / Math.PI;
      expect(hueDistance(hue, labHueOnPaintersWheel(place)), text).toBeLessThan(1.5);
    }
  });

  it('keeps value and notation, and chroma as far as a screen shows it', () => {
    const rgb = fc.tuple(...([0, 1, 2] as const).map(() => fc.integer({ min: 20, max: 235 })));
    fc.assert(
      fc.property(rgb, fc.integer({ min: 0, max: 359 }), ([r, g, b], place) => {
        const before = colour(`rgb(${r} ${g} ${b})`);
        const { chroma } = toMunsell(before);
        fc.pre(chroma > 2);
        const turned = turnedTo(before, place, 'painters');
        expect(turned?.text).toMatch(/^rgb\(/);
        const after = turned?.colour ?? before;
        expect(Math.abs(valueOf(after) - valueOf(before))).toBeLessThan(0.06);
        expect(toMunsell(after).chroma).toBeLessThan(chroma + 0.3);
        expect(hueDistance(hueOn(after, 'painters') ?? NaN, place)).toBeLessThan(6);
      }),
      { numRuns: 40, seed: 7 },
    );
  });

  it('says how much chroma is left where a screen has less', () => {
    // A red of value 4 has twice the chroma of any blue-green of that value.
    const green = turnedTo(colour('5R 4/12'), 198, 'munsell')?.colour ?? colour('N 5/');
    expect(toMunsell(green).chroma).toBeLessThan(6);
    expect(valueOf(green)).toBeCloseTo(4, 1);
  });

  it('is where halving with the chroma that is really reached finds it, strong and dark colours included', () => {
    const reached = (place: number, value: number, chroma: number): number =>
      atValue(fromMunsell(turn(place), value, chroma), value).chromaReached;
    const halved = (before: Colour, hueDegrees: number): Colour => {
      const [value, { chroma }] = [valueOf(before), toMunsell(before)];
      const wanted = labHueOnPaintersWheel(hueDegrees);
      let [low, high] = [wanted - 90, wanted + 90];
      while (high - low > 0.01) {
        const middle = (low + high) / 2;
        const hue = labHueDegrees(munsellToLab(turn(middle), value, reached(middle, value, chroma)));
        if (turn(wanted - hue) < 180) low = middle;
        else high = middle;
      }
      const place = (low + high) / 2;
      return fromMunsell(turn(place), value, reached(place, value, chroma));
    };
    const lab = fc.tuple(
      fc.integer({ min: 3, max: 97 }),
      fc.integer({ min: -90, max: 90 }),
      fc.integer({ min: -90, max: 90 }),
    );
    fc.assert(
      fc.property(lab, fc.double({ min: 0, max: 359, noNaN: true }), ([l, a, b], place) => {
        const before = colour(`lab(${l} ${a} ${b})`);
        fc.pre(hueOn(before, 'painters') !== undefined);
        expect(turnedTo(before, place, 'painters')?.text).toBe(
          formatLike(halved(before, place), before.notation),
        );
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  it('is nothing for a grey', () => {
    expect(turnedTo(colour('#808080'), 60, 'painters')).toBeUndefined();
    expect(withChroma(colour('N 5/'), 2)).toBeUndefined();
  });

  it('stops where what is written keeps the rule, not where it is meant to', () => {
    const within = (hue: number): boolean => hueDistance(hue, 60) <= 30;
    const turned = turnedUntil(colour('#7a7560'), 'painters', { start: 90, end: 60 }, within);
    const hue = hueOn(turned?.colour ?? colour('N 5/'), 'painters') ?? NaN;
    expect(within(hue)).toBe(true);
    expect(hue).toBeGreaterThan(80);
    expect(turnedUntil(colour('#7a7560'), 'painters', { start: 90, end: 60 }, () => false)).toBeUndefined();
  });
});

describe('a colour with less chroma', () => {
  it('keeps hue and value, and its notation', () => {
    expect(withChroma(colour('7.5R 4/10'), 6)?.text).toBe('7.5R 4.0/6.0');
    const grey = withChroma(colour('#C0571E'), 4);
    expect(grey?.text).toMatch(/^#[0-9A-F]{6}$/);
    expect(toMunsell(grey?.colour ?? colour('N 5/')).chroma).toBeCloseTo(4, 0);
  });
});
