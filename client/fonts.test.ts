import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { unpackedFont } from './fonts.mjs';

const fonts = path.join(
  path.dirname(createRequire(import.meta.url).resolve('roboto-fontface/package.json')),
  'fonts/roboto',
);

function read(bytes: Buffer): fontkit.Font {
  const font = fontkit.create(bytes);
  if ('fonts' in font) throw new Error('a collection');
  return font;
}

describe('unpackedFont', () => {
  it.each(['Regular', 'Bold', 'RegularItalic'])('gives Roboto %s as its WOFF file has it', (style) => {
    const woff = readFileSync(path.join(fonts, `Roboto-${style}.woff`));
    const bytes = unpackedFont(woff);
    // The length that the font had before (WOFF 1.0, section 3, totalSfntSize).
    expect(bytes.length).toBe(woff.readUInt32BE(16));
    const [packed, unpacked] = [read(woff), read(bytes)];
    expect(unpacked.type).toBe('TTF');
    expect(unpacked.postscriptName).toBe(packed.postscriptName);
    for (const letter of 'Qgß Ωж½') {
      const [was, is] = [packed, unpacked].map((font) => font.layout(letter).glyphs[0]);
      expect(is?.advanceWidth).toBe(was?.advanceWidth);
      expect(is?.path.toSVG()).toBe(was?.path.toSVG());
    }
  });

  it('refuses what is no WOFF file', () => {
    expect(() => unpackedFont(Buffer.from('OTTO and more'))).toThrow('This is no WOFF file.');
  });
});
