import { describe, expect, it } from 'vitest';
import { decodeUtf8 } from './utf8.js';

const bytes = (...parts: readonly (string | number)[]) =>
  Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part) : Buffer.from([part]))));

describe('decodeUtf8', () => {
  it('gives the text, and takes a byte order mark off', () => {
    expect(decodeUtf8(bytes('plan "Σ"\r\n'))).toEqual({ ok: true, text: 'plan "Σ"\r\n', marked: false });
    expect(decodeUtf8(bytes(0xef, 0xbb, 0xbf, 'plan'))).toEqual({ ok: true, text: 'plan', marked: true });
    expect(decodeUtf8(bytes())).toEqual({ ok: true, text: '', marked: false });
  });

  it.each([
    ['a byte of Latin-1', bytes('plan "x"\n', 'mood gr', 0xfc, 'n\n'), 2, 8],
    ['a byte after other letters', bytes('mood Σ', 0xff), 1, 8],
    ['a letter that is cut off at the end', bytes('mood ', 0xe2, 0x82), 1, 6],
    ['a letter that is cut off by a line feed', bytes('a\nb\n', 0xe2, 0x82, '\nc'), 3, 1],
    ['half of a surrogate pair', bytes('a', 0xed, 0xa0, 0x80), 1, 2],
    ['an overlong slash', bytes(0xc0, 0xaf), 1, 1],
  ])('tells where %s stands', (_, given, line, byte) => {
    expect(decodeUtf8(given)).toMatchObject({ ok: false, line, byte });
  });

  it('knows UTF-16 by its mark', () => {
    expect(decodeUtf8(bytes(0xff, 0xfe, 'p', 0))).toMatchObject({
      ok: false,
      reason: 'is no text in UTF-8: it seems to be UTF-16; save it as UTF-8',
    });
  });
});
