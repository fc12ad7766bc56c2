import { describe, expect, test } from 'vitest';
import { parseMunsell } from './munsell-text.js';

describe('reading Munsell notation', () => {
  test.each([
    ['7.5R 4/10', { hueDegrees: 27, value: 4, chroma: 10 }],
    ['5BG 6/4', { hueDegrees: 198, value: 6, chroma: 4 }],
    ['5bg6/4', { hueDegrees: 198, value: 6, chroma: 4 }],
    [' 5 BG 6 / 4 ', { hueDegrees: 198, value: 6, chroma: 4 }],
    ['10RP 5.5/.5', { hueDegrees: 0, value: 5.5, chroma: 0.5 }],
    ['N 5/', { hueDegrees: undefined, value: 5, chroma: 0 }],
    ['N5', { hueDegrees: undefined, value: 5, chroma: 0 }],
    ['n 9.5/0', { hueDegrees: undefined, value: 9.5, chroma: 0 }],
  ])('%s', (text, expected) => {
    expect(parseMunsell(text)).toEqual({ ok: true, ...expected });
  });

  test.each([
    ['11R 4/10', 'The number of a Munsell hue goes from 0 to 10, and this is 11.', undefined],
    ['5R 12/4', 'Munsell value goes from 0 (black) to 10 (white), and this is 12.', undefined],
    ['5R 4/-2', 'Chroma starts at 0, which is grey; -2 is less than none.', undefined],
    ['N -1/', 'Munsell value goes from 0 (black) to 10 (white), and this is -1.', undefined],
    ['N 5/3', 'A neutral has no chroma.', 'N 5/'],
    ['R 4/10', 'R needs a number in front, 0 to 10; 5R is the middle of that hue.', '5R 4/10'],
    ['5R 4', 'A chroma is missing after the value: 5R 4/6, say. A neutral is N 4/.', undefined],
    ['5R', '“5R” names a hue only: a value and a chroma follow it, as in 5R 5/6.', undefined],
    [
      '5RY 4/6',
      '“RY” is no Munsell hue; the ten are R, YR, Y, GY, G, BG, B, PB, P, RP, and N for neutrals.',
      '5YR 4/6',
    ],
    [
      '5X 4/6',
      '“X” is no Munsell hue; the ten are R, YR, Y, GY, G, BG, B, PB, P, RP, and N for neutrals.',
      undefined,
    ],
    [
      '7,5R 4/10',
      '“7,5R 4/10” is not quite a Munsell colour: hue, value, a slash, chroma, as in 7.5R 4/10.',
      '7.5R 4/10',
    ],
  ])('%s is refused', (text, reason, suggestion) => {
    expect(parseMunsell(text)).toEqual(
      suggestion === undefined ? { ok: false, reason } : { ok: false, reason, suggestion },
    );
  });

  test.each(['#2f6f73', 'teal', 'rgb(1 2 3)', '', 'red2', 'lab(50 1 2)'])(
    '“%s” is not meant as Munsell',
    (text) => {
      expect(parseMunsell(text)).toBeUndefined();
    },
  );
});
