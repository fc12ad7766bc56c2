import { jpegHead } from './jpeg-head.js';
import { kindOf } from './kind.js';
import { endsTooEarly, type HeadAnswer } from './picture-head.js';
import { pngHead } from './png-head.js';
import { webpHead } from './webp-head.js';

/**
 * Reads what a picture says of itself, without its pixels. Refused are what is no JPEG, PNG or WebP, what ends too early,
 * and kinds of these that can't be measured. Never throws, whatever the bytes.
 */
export function headOf(bytes: Uint8Array): HeadAnswer {
  const kind = kindOf(bytes);
  if (!kind.ok) return kind;
  try {
    const answer = readers[kind.type](bytes);
    if (answer.ok && (answer.head.width === 0 || answer.head.height === 0))
      return { ok: false, reason: `This ${kind.type} says that it is 0 pixels wide or high. Save it anew.` };
    return answer;
  } catch (error) {
    // A number was to be read beyond the last byte.
    if (error instanceof RangeError) return endsTooEarly(kind.type);
    throw error;
  }
}

const readers = { JPEG: jpegHead, PNG: pngHead, WebP: webpHead } as const;
