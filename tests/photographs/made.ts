import encodeMozJpeg, { init as initJpeg } from '@jsquash/jpeg/encode.js';
import jpegWasm from '@jsquash/jpeg/codec/enc/mozjpeg_enc.wasm?bytes';
import encodeWithWebp, { init as initWebp } from '@jsquash/webp/encode.js';
import webpWasm from '@jsquash/webp/codec/enc/webp_enc_simd.wasm?bytes';
import { crc32, deflateSync } from 'node:zlib';
import { fresh } from '../../server/photograph/codec/instance.js';

/** Pictures in memory, red, green, blue and how opaque each is, and files made of them. */
export interface Rgba {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray<ArrayBuffer>;
}

export function painted(
  width: number,
  height: number,
  colourAt: (x: number, y: number) => readonly [number, number, number, number?],
): Rgba {
  const data = new Uint8ClampedArray(4 * width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [red, green, blue, alpha = 255] = colourAt(x, y);
      const at = 4 * (y * width + x);
      data[at] = red;
      data[at + 1] = green;
      data[at + 2] = blue;
      data[at + 3] = alpha;
    }
  }
  return { width, height, data };
}

/** Four fields of plain colour: red and green above, blue and grey below. */
export function quarters(width: number, height: number): Rgba {
  return painted(width, height, (x, y) => {
    if (y < height / 2) return x < width / 2 ? [200, 40, 30] : [40, 150, 60];
    return x < width / 2 ? [40, 60, 170] : [128, 128, 128];
  });
}

export async function mozJpeg(
  picture: Rgba,
  options: Readonly<Record<string, unknown>> = {},
): Promise<Uint8Array> {
  await initJpeg(await fresh(jpegWasm));
  const settings = {
    quality: 95,
    progressive: false,
    auto_subsample: false,
    chroma_subsample: 1,
    ...options,
  };
  return new Uint8Array(await encodeMozJpeg({ ...picture, colorSpace: 'srgb' }, settings));
}

export async function webp(
  picture: Rgba,
  options: Readonly<Record<string, unknown>> = {},
): Promise<Uint8Array> {
  await initWebp(await fresh(webpWasm));
  return new Uint8Array(await encodeWithWebp({ ...picture, colorSpace: 'srgb' }, options));
}

export interface MadeExif {
  readonly orientation?: number;
  readonly taken?: string;
  readonly space?: number;
  readonly rule?: string;
  readonly isLittle?: boolean;
}

/** The TIFF structure that Exif is: CIPA DC-008, TIFF 6.0. */
export function exif({ orientation, taken, space, rule, isLittle = true }: MadeExif): Uint8Array {
  const bytes = new Uint8Array(200);
  const view = new DataView(bytes.buffer);
  const text = (at: number, words: string) => bytes.set(Buffer.from(words, 'latin1'), at);
  text(0, isLittle ? 'II' : 'MM');
  view.setUint16(2, 42, isLittle);
  view.setUint32(4, 8, isLittle);
  type Entry = readonly [tag: number, type: number, count: number, value: number];
  const directory = (at: number, entries: readonly Entry[]) => {
    view.setUint16(at, entries.length, isLittle);
    entries.forEach(([tag, type, count, value], index) => {
      const from = at + 2 + 12 * index;
      view.setUint16(from, tag, isLittle);
      view.setUint16(from + 2, type, isLittle);
      view.setUint32(from + 4, count, isLittle);
      if (type === 3) view.setUint16(from + 8, value, isLittle);
      else view.setUint32(from + 8, value, isLittle);
    });
  };
  directory(8, [
    ...(orientation === undefined ? [] : [[0x0112, 3, 1, orientation] as const]),
    [0x8769, 4, 1, 50],
  ]);
  directory(50, [
    ...(taken === undefined ? [] : [[0x9003, 2, 20, 120] as const]),
    ...(space === undefined ? [] : [[0xa001, 3, 1, space] as const]),
    [0xa005, 4, 1, 150],
  ]);
  if (taken !== undefined) text(120, `${taken}\0`);
  directory(150, rule === undefined ? [] : [[1, 2, 4, 0]]);
  if (rule !== undefined) text(160, `${rule}\0`);
  return bytes;
}

/** A JPEG with segments put in after its beginning: the marker and what it holds. */
export function withSegments(
  jpeg: Uint8Array,
  ...segments: readonly (readonly [marker: number, content: Uint8Array])[]
): Uint8Array {
  const parts = segments.flatMap(([marker, content]) => [
    Uint8Array.from([0xff, marker, (content.length + 2) >> 8, (content.length + 2) & 255]),
    content,
  ]);
  return joined(jpeg.subarray(0, 2), ...parts, jpeg.subarray(2));
}

export function withExif(jpeg: Uint8Array, made: MadeExif): Uint8Array {
  return withSegments(jpeg, [0xe1, joined(Buffer.from('Exif\0\0', 'latin1'), exif(made))]);
}

/** In pieces, as large profiles are. */
export function withProfile(jpeg: Uint8Array, profile: Uint8Array, pieceBytes = 60_000): Uint8Array {
  const count = Math.ceil(profile.length / pieceBytes);
  const pieces = Array.from({ length: count }, (_, index) =>
    joined(
      Buffer.from('ICC_PROFILE\0', 'latin1'),
      Uint8Array.from([index + 1, count]),
      profile.subarray(index * pieceBytes, (index + 1) * pieceBytes),
    ),
  );
  return withSegments(jpeg, ...pieces.map((piece) => [0xe2, piece] as const));
}

/** A PNG with chunks put in after its header. */
export function withChunks(
  png: Uint8Array,
  ...chunks: readonly (readonly [name: string, content: Uint8Array])[]
): Uint8Array {
  return joined(
    png.subarray(0, 33),
    ...chunks.map(([name, content]) => chunk(name, content)),
    png.subarray(33),
  );
}

export function profileChunk(profile: Uint8Array): readonly [string, Uint8Array] {
  return ['iCCP', joined(Buffer.from('made\0\0', 'latin1'), deflateSync(profile))];
}

export function chunk(name: string, content: Uint8Array): Uint8Array {
  const body = joined(Buffer.from(name, 'latin1'), content);
  const frame = new DataView(new ArrayBuffer(8));
  frame.setUint32(0, content.length);
  frame.setUint32(4, crc32(body));
  return joined(new Uint8Array(frame.buffer, 0, 4), body, new Uint8Array(frame.buffer, 4, 4));
}

/** A PNG of rows as they are packed: what the header says and what is there need not agree. */
export function rawPng(
  header: { readonly width: number; readonly height: number; readonly bits: number; readonly type: number },
  rows: Uint8Array,
  ...chunks: readonly (readonly [name: string, content: Uint8Array])[]
): Uint8Array {
  const ihdr = new Uint8Array(13);
  const view = new DataView(ihdr.buffer);
  view.setUint32(0, header.width);
  view.setUint32(4, header.height);
  ihdr.set([header.bits, header.type], 8);
  return joined(
    Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', ihdr),
    ...chunks.map(([name, content]) => chunk(name, content)),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', new Uint8Array()),
  );
}

/** A WebP in the extended form, with chunks before and after its picture: RFC 9649, section 2.7. */
export function extendedWebp(
  simple: Uint8Array,
  size: { readonly width: number; readonly height: number },
  chunks: { readonly profile?: Uint8Array; readonly exif?: Uint8Array; readonly flags?: number },
): Uint8Array {
  const { profile, exif: camera, flags = 0 } = chunks;
  const header = new Uint8Array(10);
  header[0] = flags | (profile ? 0x20 : 0) | (camera ? 0x08 : 0);
  const [width, height] = [size.width - 1, size.height - 1];
  header.set(
    [width & 255, (width >> 8) & 255, width >> 16, height & 255, (height >> 8) & 255, height >> 16],
    4,
  );
  const riff = (name: string, content: Uint8Array) => {
    const length = new Uint8Array(4);
    new DataView(length.buffer).setUint32(0, content.length, true);
    return joined(Buffer.from(name, 'latin1'), length, content, new Uint8Array(content.length % 2));
  };
  const body = joined(
    Buffer.from('WEBP', 'latin1'),
    riff('VP8X', header),
    profile ? riff('ICCP', profile) : new Uint8Array(),
    simple.subarray(12),
    camera ? riff('EXIF', camera) : new Uint8Array(),
  );
  return riff('RIFF', body);
}

export function joined(...parts: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts));
}
