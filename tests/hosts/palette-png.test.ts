import { decode, encode } from 'fast-png';
import { describe, expect, it } from 'vitest';
import { withPalette } from './palette-png.mjs';

type Colour = readonly [red: number, green: number, blue: number];

const [width, height] = [96, 64];

/** A picture of a colour for each place. */
function pictureOf(colourAt: (x: number, y: number) => Colour): Uint8Array {
  const pixels = Array.from({ length: width * height }, (_, at) =>
    colourAt(at % width, Math.floor(at / width)),
  );
  return encode({ width, height, channels: 3, depth: 8, data: Uint8Array.from(pixels.flat()) });
}

/** What each place of an indexed picture shows, and how many colours it has to show. */
function shownBy(png: Uint8Array) {
  const { data, palette = [] } = decode(png);
  return { colours: palette.length, shown: [...data].map((index) => palette[index] ?? []) };
}

describe('a picture with a palette', () => {
  it('shows the colours that it had, where they are few', () => {
    const bands: readonly Colour[] = [
      [255, 255, 255],
      [30, 60, 90],
      [200, 40, 40],
    ];
    const colourAt = (x: number): Colour => bands[x % 3] ?? [0, 0, 0];
    const { colours, shown } = shownBy(withPalette(pictureOf(colourAt)));
    expect(colours).toBe(3);
    expect(shown).toEqual(shown.map((_, at) => colourAt(at % width)));
  });

  it('shows colours near to those that it had, where they are more than fit, in fewer bytes', () => {
    const colourAt = (x: number, y: number): Colour => [2 * x, 4 * y, (x * y) % 256];
    const before = pictureOf(colourAt);
    const after = withPalette(before);
    const { colours, shown } = shownBy(after);
    expect(colours).toBe(256);
    const off = shown.map((colour, at) => {
      const was = colourAt(at % width, Math.floor(at / width));
      return Math.max(...was.map((level, channel) => Math.abs(level - (colour[channel] ?? NaN))));
    });
    expect(off.reduce((sum, one) => sum + one, 0) / off.length).toBeLessThan(16);
    expect(after.length).toBeLessThan(before.length);
  });
});
