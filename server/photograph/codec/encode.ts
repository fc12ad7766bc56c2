import encodeJpeg, { init } from '@jsquash/jpeg/encode.js';
import wasm from '@jsquash/jpeg/codec/enc/mozjpeg_enc.wasm?bytes';
import { fresh } from './instance.js';

/** High enough that a painter sees no blocks. */
const QUALITY = 88;

/** A JPEG in sRGB with its colour as fine as its light (4:4:4), and without a profile. */
export async function encode(pixels: {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray<ArrayBuffer>;
}): Promise<Uint8Array<ArrayBuffer>> {
  await init(await fresh(wasm));
  return new Uint8Array(
    await encodeJpeg(
      { ...pixels, colorSpace: 'srgb' },
      {
        quality: QUALITY,
        auto_subsample: false,
        chroma_subsample: 1,
        progressive: false,
      },
    ),
  );
}
