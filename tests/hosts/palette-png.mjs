// @ts-check
import { deflateSync } from 'node:zlib';
import { decode } from 'fast-png';

/** How many colours an indexed PNG may have. */
const COLOURS = 256;
/** Levels of red, green and blue that are told apart when colours are counted: 32 of each. */
const SHIFT = 3;

/**
 * Colours that are alike: their sum, and how many pixels have them.
 * @typedef {{ sum: [number, number, number]; count: number }} Cell
 */

/**
 * The same picture with at most 256 colours, in about a third of the bytes: for pictures of an editor, which are flat
 * areas and letters. Colours are found by halving the box of all colours where most pixels lie, along its longest side.
 * @param {Uint8Array} png with 8 bits for each of red, green, blue and, if there is one, an alpha that is not used
 * @returns {Uint8Array} an indexed PNG
 */
export function withPalette(png) {
  const { width, height, data, channels } = decode(png);
  /** @type {Map<number, Cell>} */
  const cells = new Map();
  const keys = new Uint16Array(width * height);
  for (let pixel = 0; pixel < keys.length; pixel++) {
    const at = pixel * channels;
    const [red = 0, green = 0, blue = 0] = data.subarray(at, at + 3);
    const key = ((red >> SHIFT) << 10) | ((green >> SHIFT) << 5) | (blue >> SHIFT);
    keys[pixel] = key;
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, { sum: [red, green, blue], count: 1 });
    else {
      cell.sum[0] += red;
      cell.sum[1] += green;
      cell.sum[2] += blue;
      cell.count++;
    }
  }
  const boxes = divided([...cells]);
  const indexOf = new Uint8Array(1 << 15);
  boxes.forEach((box, index) => box.forEach(([key]) => (indexOf[key] = index)));
  const rows = new Uint8Array((width + 1) * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) rows[y * (width + 1) + 1 + x] = indexOf[keys[y * width + x] ?? 0] ?? 0;
  }
  return Buffer.concat([
    Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a),
    chunk('IHDR', Buffer.concat([word(width), word(height), Uint8Array.of(8, 3, 0, 0, 0)])),
    chunk('PLTE', Uint8Array.from(boxes.flatMap(meanOf))),
    chunk('IDAT', deflateSync(rows, { level: 9, memLevel: 9 })),
    chunk('IEND', new Uint8Array(0)),
  ]);
}

/** @typedef {[key: number, cell: Cell][]} Box */

/** @param {Box} all @returns {Box[]} at most 256 */
function divided(all) {
  /** @type {Box[]} */
  const boxes = [all];
  while (boxes.length < COLOURS) {
    const spread = boxes.map(longestSide);
    const weights = boxes.map((box, index) => (spread[index]?.length ?? 0) * Math.sqrt(pixelsOf(box)));
    const widest = weights.indexOf(Math.max(...weights));
    const box = boxes[widest];
    const side = spread[widest];
    if (!box || !side || side.length === 0) break;
    box.sort(
      ([, one], [, other]) => one.sum[side.channel] / one.count - other.sum[side.channel] / other.count,
    );
    const middle = side.from + side.length / 2;
    const half = box.findIndex(([, { sum, count }]) => sum[side.channel] / count > middle);
    boxes.splice(widest, 1, box.slice(0, half), box.slice(half));
  }
  return boxes;
}

/** @param {Box} box @returns {{ channel: 0 | 1 | 2; from: number; length: number }} in levels */
function longestSide(box) {
  const sides = /** @type {const} */ ([0, 1, 2]).map((channel) => {
    const levels = box.map(([, { sum, count }]) => sum[channel] / count);
    const from = levels.reduce((least, level) => Math.min(least, level), Infinity);
    return { channel, from, length: levels.reduce((most, level) => Math.max(most, level), 0) - from };
  });
  return sides.reduce((longest, side) => (side.length > longest.length ? side : longest));
}

/** @param {Box} box */
function pixelsOf(box) {
  return box.reduce((sum, [, { count }]) => sum + count, 0);
}

/** @param {Box} box @returns {number[]} red, green and blue */
function meanOf(box) {
  const count = pixelsOf(box);
  return [0, 1, 2].map((channel) =>
    Math.round(box.reduce((sum, [, cell]) => sum + (cell.sum[channel] ?? 0), 0) / count),
  );
}

/** @param {number} value @returns {Buffer} */
function word(value) {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(value);
  return bytes;
}

/** @param {string} type @param {Uint8Array} data @returns {Buffer} */
function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  return Buffer.concat([word(data.length), body, word(checksum(body))]);
}

/** CRC-32, as PNG (ISO/IEC 15948, annex D) has it. @param {Uint8Array} bytes @returns {number} */
function checksum(bytes) {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit++) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0);
  }
  return (rest ^ 0xffffffff) >>> 0;
}
