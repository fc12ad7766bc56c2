import { marked } from '../../../grammar/marked.js';
import { reasonOf } from '../../../grammar/reason.js';
import decodeJpeg, { init as initJpeg } from '@jsquash/jpeg/decode.js';
import jpegWasm from '@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm?bytes';
import decodePng, { init as initPng } from '@jsquash/png/decode.js';
import pngWasm from '@jsquash/png/codec/pkg/squoosh_png_bg.wasm?bytes';
import decodeWebp, { init as initWebp } from '@jsquash/webp/decode.js';
import webpWasm from '@jsquash/webp/codec/dec/webp_dec.wasm?bytes';
import type { NoPhotograph } from '../../measure/photograph/photographs.js';
import { endsTooEarly, type PictureHead } from '../head/picture-head.js';
import { compiled, fresh } from './instance.js';

/** A picture as it is stored: red, green, blue and how opaque it is, row by row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** 8 or 16 bits a channel. */
  readonly data: Uint8ClampedArray | Uint16Array;
  /** Nothing of it is transparent. */
  readonly isOpaque: boolean;
}

export type PixelsAnswer = { readonly ok: true; readonly pixels: Pixels } | NoPhotograph;

/**
 * Decodes a picture whose head has been read and whose size is allowed. What a decoder can't read is a sentence, and so
 * is a picture of another size than its head says.
 * @throws where a decoder can't be had at all
 */
export async function decode(bytes: Uint8Array, head: PictureHead): Promise<PixelsAnswer> {
  const decoder = await decoders[head.type](head);
  const decoded = await decoder(bytes as unknown as ArrayBuffer).catch(() => undefined);
  if (decoded === undefined) return damaged(head);
  if ('ok' in decoded) return decoded;
  const { width, height, data } = decoded;
  if (width !== head.width || height !== head.height || data.length !== 4 * width * height) {
    return {
      ok: false,
      reason: reasonOf(
        marked('This {0} says that it has {1} × {2} pixels and holds {3} × {4}. Save it anew.'),
        head.type,
        head.width,
        head.height,
        width,
        height,
      ),
    };
  }
  return { ok: true, pixels: { width, height, data, isOpaque: !head.hasAlpha } };
}

type Decoded = Omit<Pixels, 'isOpaque'>;
/** Rejects for what it can't read. */
type Decoder = (bytes: ArrayBuffer) => Promise<Decoded | NoPhotograph>;

const decoders: Readonly<Record<PictureHead['type'], (head: PictureHead) => Promise<Decoder>>> = {
  JPEG: jpegDecoder,
  PNG: pngDecoder,
  WebP: webpDecoder,
};

const DAMAGED = {
  JPEG: marked('The data of this JPEG is damaged. Copy it anew from where it came from.'),
  PNG: marked('The data of this PNG is damaged. Copy it anew from where it came from.'),
  WebP: marked('The data of this WebP is damaged. Copy it anew from where it came from.'),
} as const satisfies Readonly<Record<PictureHead['type'], string>>;

function damaged({ type }: Pick<PictureHead, 'type'>): NoPhotograph {
  return { ok: false, reason: DAMAGED[type] };
}

/** It fills up with grey what is missing or can't be read, and says so in a message alone. */
async function jpegDecoder(head: PictureHead): Promise<Decoder> {
  let warning = '';
  await initJpeg(await fresh(jpegWasm, (message) => (warning ||= message)));
  return async (bytes) => {
    const decoded = await decodeJpeg(bytes, { preserveOrientation: false });
    if (/premature end/i.test(warning)) return endsTooEarly(head.type);
    // Bytes too many between two scans, which some cameras leave, harm nothing.
    const isHarmed = /corrupt|bogus|invalid|inconsistent/i.test(warning) && !/extraneous/i.test(warning);
    return isHarmed ? damaged(head) : decoded;
  };
}

async function pngDecoder({ bits }: PictureHead): Promise<Decoder> {
  await initPng(await compiled(pngWasm));
  return (bytes) => (bits === 16 ? decodePng(bytes, { bitDepth: 16 }) : decodePng(bytes));
}

async function webpDecoder(): Promise<Decoder> {
  await initWebp(await fresh(webpWasm));
  return (bytes) => decodeWebp(bytes);
}
