import { describe, expect, it } from 'vitest';
import { pictureHeader } from './sketch-header.js';

const bytesOf = (...parts: readonly (string | readonly number[])[]) =>
  Uint8Array.from(
    parts.flatMap((part) => (typeof part === 'string' ? [...part].map((each) => each.charCodeAt(0)) : part)),
  );
const four = (value: number) => [value >>> 24, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];

/** PNG specification (third edition), 5.2 and 11.2.1. */
const png = (width: number, height: number) =>
  bytesOf([0x89], 'PNG\r\n', [0x1a, 0x0a], four(13), 'IHDR', four(width), four(height), [8, 2, 0, 0, 0]);
/** ITU-T T.81, B.2: an application segment of 4 bytes, fill bytes, then a frame of the progressive kind. */
const jpeg = (width: number, height: number) =>
  bytesOf(
    [0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xff, 0xc2, 0, 17, 8],
    four(height).slice(2),
    four(width).slice(2),
    [3, 0, 0, 0, 0, 0],
  );
/** RFC 9649, 2.5 to 2.7. */
const riff = (chunk: string, ...rest: readonly (readonly number[])[]) =>
  bytesOf('RIFF', [0, 0, 0, 0], 'WEBP', chunk, [0, 0, 0, 0], ...rest, [0, 0, 0, 0, 0, 0, 0, 0]);

describe('the size of a picture by its first bytes', () => {
  it.each([
    ['PNG', png(1_200, 800)],
    ['JPEG', jpeg(1_200, 800)],
    ['WebP', riff('VP8 ', [0, 0, 0, 0x9d, 0x01, 0x2a], [0xb0, 0x04], [0x20, 0x03])],
    // 1 199 in 14 bits, then 799 in 14.
    ['WebP', riff('VP8L', [0x2f], [0xaf, 0xc4, 0xc7, 0x00])],
    ['WebP', riff('VP8X', [0, 0, 0, 0], [0xaf, 0x04, 0x00], [0x1f, 0x03, 0x00])],
  ])('is read from a %s', (format, bytes) => {
    expect(pictureHeader(bytes)).toEqual({ ok: true, format, width: 1_200, height: 800 });
  });

  it('is read where the bytes are part of a larger store', () => {
    const store = new Uint8Array(64);
    store.set(png(12, 8), 20);
    expect(pictureHeader(store.subarray(20))).toMatchObject({ ok: true, width: 12, height: 8 });
  });

  it.each([
    ['a side that is too long', png(30_000, 2)],
    ['more pixels than can be held', png(12_000, 12_000)],
  ])('is refused in words with %s', (_what, bytes) => {
    const answer = pictureHeader(bytes);
    expect(answer).toMatchObject({ ok: false });
    expect(answer).toHaveProperty(
      'reason',
      expect.stringMatching(/^This picture has \d\d 000 × [\d ]+ pixels\./),
    );
  });

  it.each([
    ['This is a GIF.', bytesOf('GIF89a', [1, 0, 1, 0])],
    ['This is an SVG', bytesOf('  <svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['This is an SVG', bytesOf([0xef, 0xbb, 0xbf], '<?xml version="1.0"?><svg/>')],
    ['This is a HEIC', bytesOf([0, 0, 0, 24], 'ftypheic')],
    ['This is a PDF.', bytesOf('%PDF-1.7')],
    ['This file is empty.', bytesOf()],
    ['This is not a picture', bytesOf('plan "Bowl"')],
    // A picture that ends before its size, and one that says so without being one.
    ['This is not a picture', png(12, 8).subarray(0, 20)],
    ['This is not a picture', jpeg(12, 8).subarray(0, 14)],
    ['This is not a picture', bytesOf([0xff, 0xd8, 0xff, 0xda, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0])],
    ['This PNG has no size.', png(0, 8)],
  ])('is refused: %s', (reason, bytes) => {
    expect(pictureHeader(bytes)).toEqual({ ok: false, reason: expect.stringContaining(reason) });
  });
});
