import { setFlagsFromString } from 'node:v8';
import vm from 'node:vm';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseColour } from './colour.js';
import type { Colour } from './model.js';
import { fromMunsell, toMunsell } from './munsell.js';
import { atValue } from './painted.js';
import { fromRgb, isDisplayable, labToRgb, rgbToLab, toHex, toRgb } from './srgb.js';
import { valueOf, valueOfLab } from './value.js';

setFlagsFromString('--expose-gc');

function colour(text: string): Colour {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(reading.reason);
  return reading.colour;
}

const channel = fc.double({ min: 0, max: 1, noNaN: true });
const colours = fc.oneof(
  fc.tuple(channel, channel, channel).map(fromRgb),
  fc
    .tuple(
      fc.double({ min: 0, max: 360, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 24, noNaN: true }),
    )
    .map((position) => fromMunsell(...position)),
);
const values = fc.double({ min: 0, max: 10, noNaN: true });

describe('a colour painted at a value', () => {
  test('keeps hue and chroma: 7.5R 4/8 at value 5 is 7.5R 5/8', () => {
    const { shown, chromaWanted, chromaReached, reached } = atValue(colour('7.5R 4/8'), 5);
    expect(toMunsell(shown).text).toBe('7.5R 5.0/8.0');
    expect({ chromaWanted, chromaReached, reached }).toEqual({
      chromaWanted: 8,
      chromaReached: 8,
      reached: true,
    });
  });

  test('a yellow can’t be dark and strong at once: what can be had is said', () => {
    const { shown, chromaWanted, chromaReached, reached } = atValue(colour('5Y 8/12'), 3);
    expect(reached).toBe(false);
    expect(chromaWanted).toBe(12);
    expect(chromaReached).toBeGreaterThan(4);
    expect(chromaReached).toBeLessThan(6);
    expect(toMunsell(shown)).toMatchObject({ hue: '5Y' });
    expect(toMunsell(shown).chroma).toBeCloseTo(chromaReached, 2);
  });

  test('at its own value a colour of a screen is itself', () => {
    const teal = colour('#2f6f73');
    expect(atValue(teal, valueOf(teal)).shown).toEqual(teal);
    expect(toHex(atValue(colour('#ff0000'), valueOf(colour('red'))).shown)).toBe('#ff0000');
  });

  test('grey stays grey from black to white', () => {
    expect([0, 5, 10].map((value) => toMunsell(atValue(colour('N 3/'), value).shown).text)).toEqual([
      'N 0.0/',
      'N 5.0/',
      'N 10.0/',
    ]);
  });

  test('nothing but black at value 0, nothing but white at 10', () => {
    expect(toHex(atValue(colour('red'), 0).shown)).toBe('#000000');
    expect(toHex(atValue(colour('red'), 10).shown)).toBe('#ffffff');
    expect(atValue(colour('red'), 10).reached).toBe(false);
  });

  test('at its own value a colour is as it was written, whoever asked for the same colour before', () => {
    const value = valueOf(colour('#ff0000'));
    expect(atValue(colour('#ff0000'), value).shown.notation).toEqual({ kind: 'hex', text: '#ff0000' });
    expect(atValue(colour('red'), value).shown.notation).toMatchObject({ text: 'red' });
  });

  test('the answer is remembered', () => {
    expect(atValue(colour('5B 4/4'), 6)).toBe(atValue(colour('5B 4/4'), 6));
  });
});

describe('whatever the colour and value', () => {
  test('what is shown lies inside sRGB, has the value asked for, and no more chroma than wanted', () => {
    fc.assert(
      fc.property(colours, values, (start, value) => {
        const { shown, chromaWanted, chromaReached, reached } = atValue(start, value);
        expect(isDisplayable(shown.lab)).toBe(true);
        expect(valueOf(shown)).toBeCloseTo(value, 6);
        expect(chromaReached).toBeGreaterThanOrEqual(0);
        expect(chromaReached).toBeLessThanOrEqual(chromaWanted);
        expect(reached).toBe(chromaWanted - chromaReached <= 0.05);
      }),
      { numRuns: 500 },
    );
  });

  test('more value shows as more light, to the last step of a screen', () => {
    fc.assert(
      fc.property(colours, values, values, (start, one, other) => {
        fc.pre(one + 0.1 < other);
        const value = (at: number) => valueOfLab(rgbToLab(toRgb(atValue(start, at).shown)));
        expect(value(one)).toBeLessThan(value(other));
      }),
    );
  });

  test('a chroma that is not reached stands at the edge of sRGB', () => {
    fc.assert(
      fc.property(colours, fc.double({ min: 1, max: 9, noNaN: true }), (start, value) => {
        const { shown, reached } = atValue(start, value);
        fc.pre(!reached);
        const margin = Math.min(...labToRgb(shown.lab).map((x) => Math.min(x, 1 - x)));
        expect(margin).toBeLessThan(0.02);
      }),
    );
  });
});

test('a colour that was painted at ever other values lets go of those that are long past', async () => {
  const collect = vm.runInNewContext('gc') as () => void;
  const grey = colour('N 5');
  const past = new WeakRef(atValue(grey, 1));
  for (let step = 1; step <= 20_000; step++) atValue(grey, 1 + step / 10_000);
  await new Promise((resolve) => setTimeout(resolve, 0));
  collect();
  expect(past.deref()).toBeUndefined();
});
