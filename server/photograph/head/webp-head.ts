import { marked } from '../../../grammar/marked.js';
import { latin, viewOf } from './bytes.js';
import { endsTooEarly, type HeadAnswer, type PictureHead } from './picture-head.js';

/** RFC 9649, section 2.7.1.1: bits of the first byte of `VP8X`. */
const flag = { animation: 0x02, alpha: 0x10 } as const;

/** RFC 9649, section 2: RIFF with chunks, each with its length in whole pairs of bytes. */
export function webpHead(bytes: Uint8Array): HeadAnswer {
  const view = viewOf(bytes);
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length + 1) return endsTooEarly('WebP');
  const chunks = new Map<string, Uint8Array>();
  for (let at = 12; at + 8 <= Math.min(end, bytes.length);) {
    const length = view.getUint32(at + 4, true);
    if (at + 8 + length > bytes.length) return endsTooEarly('WebP');
    const name = latin(bytes, at, 4);
    if (!chunks.has(name)) chunks.set(name, bytes.subarray(at + 8, at + 8 + length));
    at += 8 + length + (length % 2);
  }
  const size = sizeIn(chunks);
  if (size === undefined) return endsTooEarly('WebP');
  const flags = chunks.get('VP8X')?.[0] ?? 0;
  if ((flags & flag.animation) !== 0)
    return {
      ok: false,
      reason: marked('This WebP is a film of several pictures. Save one of them as a JPEG.'),
    };
  const exif = chunks.get('EXIF');
  const profile = chunks.get('ICCP');
  return {
    ok: true,
    head: {
      type: 'WebP',
      ...size,
      bits: 8,
      isGrey: false,
      hasAlpha: (flags & flag.alpha) !== 0 || hasAlphaBit(chunks.get('VP8L')),
      isProgressive: false,
      ...(exif ? { exif: latin(exif, 0, 6) === 'Exif\0\0' ? exif.subarray(6) : exif } : {}),
      ...(profile ? { profile: { bytes: profile, isDeflated: false } } : {}),
    },
  };
}

/** Of the picture itself: what `VP8X` says of a canvas round it is not what is decoded. */
function sizeIn(chunks: ReadonlyMap<string, Uint8Array>): Pick<PictureHead, 'width' | 'height'> | undefined {
  // RFC 6386, section 9.1: three bytes, a mark of three, two sizes of 14 bits.
  const lossy = chunks.get('VP8 ');
  if (lossy) {
    const view = viewOf(lossy);
    return { width: view.getUint16(6, true) & 0x3fff, height: view.getUint16(8, true) & 0x3fff };
  }
  // RFC 9649, section 3.4: a mark, then twice 14 bits of a size less one.
  const lossless = chunks.get('VP8L');
  if (lossless === undefined) return undefined;
  const packed = viewOf(lossless).getUint32(1, true);
  return { width: (packed & 0x3fff) + 1, height: ((packed >>> 14) & 0x3fff) + 1 };
}

function hasAlphaBit(lossless: Uint8Array | undefined): boolean {
  return lossless !== undefined && (viewOf(lossless).getUint32(1, true) & (1 << 28)) !== 0;
}
