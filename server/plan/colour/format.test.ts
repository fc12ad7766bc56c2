import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseColour } from './colour.js';
import { labDifference } from './difference.js';
import { formatLike, presentations } from './format.js';
import type { Colour } from './model.js';
import { fromRgb } from './srgb.js';

function colour(text: string): Colour {
  const reading = parseColour(text);
  if (!reading.ok) throw new Error(`${text}: ${reading.reason}`);
  return reading.colour;
}

const teal = fromRgb([47 / 255, 111 / 255, 115 / 255]);

describe('a colour as text', () => {
  test('the painter’s own notation comes first, and none twice', () => {
    expect(presentations(colour('#2f6f73'))).toEqual(['#2f6f73', '8.9BG 4.2/4.3', 'rgb(47 111 115)']);
    expect(presentations(colour('7.5R 4/10'))[0]).toBe('7.5R 4.0/10.0');
    expect(presentations(teal)).toEqual(['#2f6f73', '8.9BG 4.2/4.3', 'rgb(47 111 115)']);
  });

  // The new colour in the notation of the text that stands in the plan.
  test.each([
    ['#ABC', '#2F6F73'],
    ['#abc', '#2f6f73'],
    ['red', '#2f6f73'],
    ['5R 4/10', '8.9BG 4.2/4.3'],
    ['rgb(1 2 3)', 'rgb(47 111 115)'],
    ['RGBA(1, 2, 3, 1)', 'rgb(47, 111, 115)'],
    ['hsl(0, 10%, 10%)', 'hsl(183.5, 42%, 31.8%)'],
    ['hwb(0 10% 10%)', 'hwb(183.5 18.4% 54.9%)'],
    ['color(srgb 1 0 0)', 'color(srgb 0.1843 0.4353 0.451)'],
  ])('written like %s it is %s', (original, expected) => {
    expect(presentations(teal, colour(original).notation)[0]).toBe(expected);
  });
});

// The steps of a colour picker; under the 25th a tenth of a Munsell value or chroma is no longer a small part of what
// there is.
const channel = fc.integer({ min: 25, max: 255 }).map((step) => step / 255);
const originals = [
  ...[
    '#123',
    '5R 4/10',
    'tan',
    'rgb(1 2 3)',
    'rgb(1, 2, 3)',
    'hsl(1 2% 3%)',
    'hsl(1, 2%, 3%)',
    'hwb(1 2% 3%)',
  ],
  ...['lab(1 2 3)', 'lch(1 2 3)', 'oklab(.1 .1 .1)', 'oklch(.1 .1 3)'],
  ...[
    'srgb',
    'srgb-linear',
    'display-p3',
    'a98-rgb',
    'prophoto-rgb',
    'rec2020',
    'xyz',
    'xyz-d50',
    'xyz-d65',
  ].map((space) => `color(${space} 0.1 0.1 0.1)`),
];

test.each(originals)(
  'what is written like %s reads back as the same colour, to what can be seen',
  (original) => {
    fc.assert(
      fc.property(channel, channel, channel, (...channels) => {
        const start = fromRgb(channels);
        const text = formatLike(start, colour(original).notation);
        expect(labDifference(start.lab, colour(text).lab)).toBeLessThan(1);
      }),
    );
  },
);
