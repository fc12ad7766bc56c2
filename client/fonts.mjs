// @ts-check
import { readFileSync } from 'node:fs';
import { inflateSync } from 'node:zlib';
import { packedBytes } from './packed-bytes.mjs';

/**
 * The font within a WOFF file, as it was before it was packed (WOFF 1.0, W3C Recommendation of 2012, sections 3 to 5).
 * What reads fonts would unpack a table anew for every letter that it is asked for.
 * @param {Buffer} woff
 * @returns {Buffer} TrueType or OpenType
 * @throws {Error} for what is no WOFF file, or a broken one
 */
export function unpackedFont(woff) {
  if (woff.toString('latin1', 0, 4) !== 'wOFF') throw new Error('This is no WOFF file.');
  const count = woff.readUInt16BE(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const entry = woff.subarray(44 + index * 20, 64 + index * 20);
    const offset = entry.readUInt32BE(4);
    const length = entry.readUInt32BE(12);
    const packed = woff.subarray(offset, offset + entry.readUInt32BE(8));
    const content = packed.length === length ? packed : inflateSync(packed);
    if (content.length !== length) throw new Error('A table of the font has not the length it should have.');
    return { tag: entry.subarray(0, 4), checksum: entry.subarray(16, 20), content };
  });
  const header = Buffer.alloc(12 + count * 16);
  woff.copy(header, 0, 4, 8);
  header.writeUInt16BE(count, 4);
  const power = Math.floor(Math.log2(count));
  header.writeUInt16BE(2 ** power * 16, 6);
  header.writeUInt16BE(power, 8);
  header.writeUInt16BE((count - 2 ** power) * 16, 10);
  let offset = header.length;
  const contents = tables.map(({ tag, checksum, content }, index) => {
    const entry = header.subarray(12 + index * 16, 28 + index * 16);
    tag.copy(entry, 0);
    checksum.copy(entry, 4);
    entry.writeUInt32BE(offset, 8);
    entry.writeUInt32BE(content.length, 12);
    const padded = Buffer.alloc(Math.ceil(content.length / 4) * 4);
    content.copy(padded);
    offset += padded.length;
    return padded;
  });
  return Buffer.concat([header, ...contents]);
}

/** Fonts are imported as their bytes, as they were before they were packed. @type {import('esbuild').Plugin} */
export const fontsAsBytes = {
  name: 'fonts as bytes',
  setup: ({ onLoad }) =>
    onLoad({ filter: /\.woff$/ }, ({ path }) => packedBytes(unpackedFont(readFileSync(path)))),
};
