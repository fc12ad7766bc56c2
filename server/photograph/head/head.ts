import { marked } from '../../../grammar/marked.js';
import { jpegHead } from './jpeg-head.js';
import { kindOf, type PictureType } from './kind.js';
import { endsTooEarly, type HeadAnswer } from './picture-head.js';
import { pngHead } from './png-head.js';
import { webpHead } from './webp-head.js';

const OF_NO_SIZE = {
  JPEG: marked('This JPEG says that it is 0 pixels wide or high. Save it anew.'),
  PNG: marked('This PNG says that it is 0 pixels wide or high. Save it anew.'),
  WebP: marked('This WebP says that it is 0 pixels wide or high. Save it anew.'),
} as const satisfies Readonly<Record<PictureType, string>>;

/**
 * Reads what a picture says of itself, without its pixels. Refused are what is no JPEG, PNG or WebP, what ends too
 * early, and kinds of these that can't be measured. Never throws, whatever the bytes.
 */
export function headOf(bytes: Uint8Array): HeadAnswer {
  const kind = kindOf(bytes);
  if (!kind.ok) return kind;
  try {
    const answer = readers[kind.type](bytes);
    if (answer.ok && (answer.head.width === 0 || answer.head.height === 0))
      return { ok: false, reason: OF_NO_SIZE[kind.type] };
    return answer;
  } catch (error) {
    // A number was to be read beyond the last byte.
    if (error instanceof RangeError) return endsTooEarly(kind.type);
    throw error;
  }
}

const readers = { JPEG: jpegHead, PNG: pngHead, WebP: webpHead } as const;
