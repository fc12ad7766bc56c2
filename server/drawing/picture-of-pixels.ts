import { encode } from 'fast-png';
import { toBase64 } from './base64.js';
import type { Hex, PictureData } from './scene.js';

/** Pixels as places in a list of colours, row by row. */
export interface IndexedPicture {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
  /** At most 256; `undefined` is clear and can only be the first. */
  readonly colours: readonly (Hex | undefined)[];
}

/** As a PNG of few colours. The same pixels give the same bytes. */
export function indexedPicture({ width, height, pixels, colours }: IndexedPicture): PictureData {
  const isClear = colours.some((colour) => colour === undefined);
  const palette = colours.map((colour): [number, number, number] | [number, number, number, number] => {
    const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
      Number.parseInt((colour ?? '#000000').slice(at, at + 2), 16),
    );
    return isClear ? [red, green, blue, colour === undefined ? 0 : 255] : [red, green, blue];
  });
  const png = encode({ width, height, data: pixels, depth: 8, channels: 1, palette });
  return `data:image/png;base64,${toBase64(png)}`;
}

/** Bytes of sRGB, three a pixel, as a PNG. */
export function colourPicture(width: number, height: number, pixels: Uint8Array): PictureData {
  return `data:image/png;base64,${toBase64(encode({ width, height, data: pixels, depth: 8, channels: 3 }))}`;
}
