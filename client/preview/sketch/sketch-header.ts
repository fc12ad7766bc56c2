import { t } from '../../../grammar/localised.js';
/** A picture as its first bytes tell it. */
export interface PictureHeader {
  readonly format: 'PNG' | 'JPEG' | 'WebP';
  /** Pixels, as they are stored: a photograph may be turned when it is shown. */
  readonly width: number;
  readonly height: number;
}

export type HeaderAnswer =
  | ({ readonly ok: true } & PictureHeader)
  /** Shown to the painter: a sentence in plain words. */
  | { readonly ok: false; readonly reason: string };

/** The longest side, and how many pixels in all, that are read into memory: four bytes each. */
const LONGEST_SIDE = 16_384;
const MOST_PIXELS = 64_000_000;

/** What a file is by what it holds, whatever it is called, and whether it can be shown. */
export function pictureHeader(bytes: Uint8Array): HeaderAnswer {
  const header = png(bytes) ?? jpeg(bytes) ?? webp(bytes);
  if (header === undefined) return { ok: false, reason: reasonFor(bytes) };
  const { width, height, format } = header;
  if (width === 0 || height === 0) return { ok: false, reason: t('This {0} has no size.', format) };
  if (width > LONGEST_SIDE || height > LONGEST_SIDE || width * height > MOST_PIXELS) {
    return {
      ok: false,
      reason: t(
        'This picture has {0} × {1} pixels. {2} a side and {3} million in all can be shown; save it smaller.',
        inFigures(width),
        inFigures(height),
        inFigures(LONGEST_SIDE),
        MOST_PIXELS / 1e6,
      ),
    };
  }
  return { ok: true, ...header };
}

function reasonFor(bytes: Uint8Array): string {
  return `${whatItIs(bytes)} ${t('A sketch is a PNG, a JPEG or a WebP.')}`;
}

function whatItIs(bytes: Uint8Array): string {
  if (bytes.length === 0) return t('This file is empty.');
  const start = text(bytes, 0, Math.min(bytes.length, 512)).trimStart();
  if (start.startsWith('GIF8')) return t('This is a GIF.');
  if (text(bytes, 4, 4) === 'ftyp') return t('This is a HEIC, AVIF or film.');
  if (/^(\ufeff|ï»¿)?<(\?xml|svg|!--|!DOCTYPE)/i.test(start))
    return t('This is an SVG or another text of tags.');
  if (start.startsWith('%PDF')) return t('This is a PDF.');
  return t('This is not a picture that can be shown.');
}

/** PNG specification (third edition), 5.2 and 11.2.1: eight bytes of signature, then the chunk IHDR. */
function png(bytes: Uint8Array): PictureHeader | undefined {
  const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  if (bytes.length < 24 || signature.some((byte, index) => bytes[index] !== byte)) return undefined;
  if (text(bytes, 12, 4) !== 'IHDR') return undefined;
  const view = viewOf(bytes);
  return { format: 'PNG', width: view.getUint32(16), height: view.getUint32(20) };
}

/** ITU-T T.81, annex B: segments, each with its length, until the one that begins the frame. */
function jpeg(bytes: Uint8Array): PictureHeader | undefined {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return undefined;
  const view = viewOf(bytes);
  let at = 2;
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) return undefined;
    const marker = view.getUint8(at + 1);
    // Bytes that fill up, and markers that stand alone.
    if (marker === 0xff || marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) {
      at += marker === 0xff ? 1 : 2;
      continue;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (isFrame) return { format: 'JPEG', width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    // The picture itself, or its end, and no frame before it.
    if (marker === 0xda || marker === 0xd9) return undefined;
    at += 2 + Math.max(2, view.getUint16(at + 2));
  }
  return undefined;
}

/** RFC 9649: RIFF with `WEBP`, then a lossy, lossless or extended chunk. */
function webp(bytes: Uint8Array): PictureHeader | undefined {
  if (bytes.length < 30 || text(bytes, 0, 4) !== 'RIFF' || text(bytes, 8, 4) !== 'WEBP') return undefined;
  const view = viewOf(bytes);
  switch (text(bytes, 12, 4)) {
    case 'VP8 ':
      return {
        format: 'WebP',
        width: view.getUint16(26, true) & 0x3fff,
        height: view.getUint16(28, true) & 0x3fff,
      };
    case 'VP8L': {
      const packed = view.getUint32(21, true);
      return { format: 'WebP', width: (packed & 0x3fff) + 1, height: ((packed >>> 14) & 0x3fff) + 1 };
    }
    case 'VP8X':
      return {
        format: 'WebP',
        width: (view.getUint32(24, true) & 0xffffff) + 1,
        height: (view.getUint32(26, true) >>> 8) + 1,
      };
    default:
      return undefined;
  }
}

function viewOf(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

/** Each byte as a character. */
function text(bytes: Uint8Array, from: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(from, from + length));
}

function inFigures(count: number): string {
  return count.toLocaleString('en-GB').replaceAll(',', ' ');
}
