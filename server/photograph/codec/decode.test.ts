import { PhotonImage } from '@silvia-odwyer/photon-node';
import { encode as encodePng, decode as decodePng } from 'fast-png';
import { decode as decodeJpeg } from 'jpeg-js';
import { describe, expect, it } from 'vitest';
import { reasonInWords } from '../../../grammar/index.js';
import { mozJpeg, painted, rawPng, webp } from '../../../tests/photographs/made.js';
import { headOf } from '../head/head.js';
import { decode } from './decode.js';

/** Soft tones with some noise, as photographs have. */
const picture = painted(61, 47, (x, y) => {
  const noise = ((x * 7919 + y * 104_729) % 17) - 8;
  return [120 + 80 * Math.sin(x / 9) + noise, 100 + 60 * Math.cos(y / 7) + noise, (x * 4 + noise) & 255];
});

async function pixelsOf(bytes: Uint8Array) {
  const head = headOf(bytes);
  if (!head.ok) throw new Error(reasonInWords(head.reason));
  const answer = await decode(bytes, head.head);
  if (!answer.ok) throw new Error(reasonInWords(answer.reason));
  return answer.pixels;
}

function farthest(one: ArrayLike<number>, other: ArrayLike<number>): number {
  expect(one.length).toBe(other.length);
  return Array.from(one).reduce((most, level, at) => Math.max(most, Math.abs(level - (other[at] ?? 0))), 0);
}

function meanDifference(one: ArrayLike<number>, other: ArrayLike<number>): number {
  return Array.from(one).reduce((sum, level, at) => sum + Math.abs(level - (other[at] ?? 0)), 0) / one.length;
}

describe('pixels', () => {
  it.each([
    ['baseline', {}],
    ['progressive', { progressive: true }],
    ['of three quarters of their colour', { chroma_subsample: 1, quality: 60 }],
    ['in grey', { color_space: 1 }],
  ])('of a JPEG, %s, are those of a second decoder, but for how each rounds', async (_, options) => {
    const bytes = await mozJpeg(picture, options);
    const { data, isOpaque } = await pixelsOf(bytes);
    expect(isOpaque).toBe(true);
    const told = decodeJpeg(bytes, { formatAsRGBA: true }).data;
    expect(farthest(data, told)).toBeLessThanOrEqual(5);
    expect(meanDifference(data, told)).toBeLessThan(0.6);
  });

  it.each([
    ['with colour and alpha', 4, 8],
    ['with colour', 3, 8],
    ['in grey', 1, 8],
    ['in grey with alpha', 2, 8],
    ['with colour, of 16 bits', 3, 16],
    ['with colour and alpha, of 16 bits', 4, 16],
    ['in grey, of 16 bits', 1, 16],
  ] as const)('of a PNG %s are those of a second decoder', async (_, channels, depth) => {
    const numbers = Array.from({ length: 61 * 47 * channels }, (_level, at) => (at * 7919) % 2 ** depth);
    const levels = depth === 16 ? Uint16Array.from(numbers) : Uint8Array.from(numbers);
    const bytes = encodePng({ width: 61, height: 47, data: levels, channels, depth });
    const told = decodePng(bytes);
    const { data } = await pixelsOf(bytes);
    expect(told.depth).toBe(depth);
    const opaque = 2 ** depth - 1;
    const at = (pixel: number, channel: number): number => told.data[pixel * channels + channel] ?? 0;
    const wanted = Array.from({ length: 61 * 47 }, (_pixel, pixel) => {
      const grey = channels < 3;
      const alpha = channels % 2 === 0 ? at(pixel, channels - 1) : opaque;
      return [at(pixel, 0), at(pixel, grey ? 0 : 1), at(pixel, grey ? 0 : 2), alpha];
    }).flat();
    expect(farthest(data, wanted)).toBe(0);
  });

  it('of a PNG with a palette are its colours', async () => {
    const palette = Uint8Array.from([255, 0, 0, 0, 128, 0]);
    const rows = Uint8Array.from([0, 0, 1, 0, 1, 0]);
    const bytes = rawPng(
      { width: 2, height: 2, bits: 8, type: 3 },
      rows,
      ['PLTE', palette],
      ['tRNS', Uint8Array.from([9])],
    );
    const { data, isOpaque } = await pixelsOf(bytes);
    expect(isOpaque).toBe(false);
    expect([...data]).toEqual([255, 0, 0, 9, 0, 128, 0, 255, 0, 128, 0, 255, 255, 0, 0, 9]);
  });

  it.each([
    ['without loss', { lossless: 1 }, 0],
    ['with loss', { quality: 80 }, 2],
    ['with loss, transparent', { quality: 90, alpha_quality: 100 }, 2],
  ])('of a WebP %s are those of a second decoder', async (name, options, most) => {
    const given = name.includes('transparent')
      ? painted(61, 47, (x, y) => [x * 4, y * 5, 90, 255 - ((x * 3 + y) & 127)])
      : picture;
    const bytes = await webp(given, options);
    // Written in Rust, where the first is in C; they spread the colour of a lossy one over its pixels in different
    // ways.
    const second = PhotonImage.new_from_byteslice(bytes);
    const told = second.get_raw_pixels();
    second.free();
    const { data } = await pixelsOf(bytes);
    expect(meanDifference(data, told)).toBeLessThanOrEqual(most);
    if (most === 0) expect(farthest(data, given.data)).toBe(0);
  });
});
