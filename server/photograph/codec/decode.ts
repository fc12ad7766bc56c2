import decodeJpeg, { init as initJpeg } from '@jsquash/jpeg/decode.js';
import jpegWasm from '@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm?bytes';
import decodePng, { init as initPng } from '@jsquash/png/decode.js';
import pngWasm from '@jsquash/png/codec/pkg/squoosh_png_bg.wasm?bytes';
import decodeWebp, { init as initWebp } from '@jsquash/webp/decode.js';
import webpWasm from '@jsquash/webp/codec/dec/webp_dec.wasm?bytes';
import type { NoPhotograph } from '../../measure/photograph/photographs.js';
import { endsTooEarly, type PictureHead } from '../head/head.js';
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
 * Decodes a picture whose head has been read and whose size is allowed. Never rejects: what a decoder can't read is a
 * sentence, and so is a picture of another size than its head says.
 */
export async function decode(bytes: Uint8Array, head: PictureHead): Promise<PixelsAnswer> {
  const answer = await decoders[head.type](bytes, head).catch(() => damaged(head));
  if (!answer.ok) return answer;
  const { width, height, data } = answer.pixels;
  if (width !== head.width || height !== head.height || data.length !== 4 * width * height) {
    return {
      ok: false,
      reason: `This ${head.type} says that it has ${head.width} × ${head.height} pixels and holds ${width} × ${height}. Save it anew.`,
    };
  }
  return answer;
}

const decoders = { JPEG: fromJpeg, PNG: fromPng, WebP: fromWebp } as const;

function damaged({ type }: Pick<PictureHead, 'type'>): NoPhotograph {
  return { ok: false, reason: `The data of this ${type} is damaged. Copy it anew from where it came from.` };
}

/** The decoder fills up with grey what is missing or can't be read, and says so in a message alone. */
async function fromJpeg(bytes: Uint8Array, head: PictureHead): Promise<PixelsAnswer> {
  let warning = '';
  await initJpeg(await fresh(jpegWasm, (message) => (warning ||= message)));
  const pixels = await decodeJpeg(bytes as unknown as ArrayBuffer, { preserveOrientation: false });
  if (/premature end/i.test(warning)) return endsTooEarly(head.type);
  // Bytes too many between two scans, which some cameras leave, harm nothing.
  if (/corrupt|bogus|invalid|inconsistent/i.test(warning) && !/extraneous/i.test(warning))
    return damaged(head);
  return { ok: true, pixels: decoded(pixels, head) };
}

async function fromPng(bytes: Uint8Array, head: PictureHead): Promise<PixelsAnswer> {
  await initPng(await compiled(pngWasm));
  const input = bytes as unknown as ArrayBuffer;
  const pixels = head.bits === 16 ? await decodePng(input, { bitDepth: 16 }) : await decodePng(input);
  return { ok: true, pixels: decoded(pixels, head) };
}

async function fromWebp(bytes: Uint8Array, head: PictureHead): Promise<PixelsAnswer> {
  await initWebp(await fresh(webpWasm));
  return { ok: true, pixels: decoded(await decodeWebp(bytes as unknown as ArrayBuffer), head) };
}

/** What decoders hand out has getters and more to it. */
function decoded({ width, height, data }: Omit<Pixels, 'isOpaque'>, { hasAlpha }: PictureHead): Pixels {
  return { width, height, data, isOpaque: !hasAlpha };
}
