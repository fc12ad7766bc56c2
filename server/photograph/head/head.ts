import type { NoPhotograph } from '../../measure/photograph/photographs.js';
import { jpegHead } from './jpeg-head.js';
import { kindOf, type PictureType } from './kind.js';
import { pngHead } from './png-head.js';
import { webpHead } from './webp-head.js';

/** What a picture says of itself before its pixels are read. */
export interface PictureHead {
  readonly type: PictureType;
  /** Pixels, as they are stored: the camera may have been turned. */
  readonly width: number;
  readonly height: number;
  /** Of each channel. */
  readonly bits: 8 | 16;
  readonly isGrey: boolean;
  readonly hasAlpha: boolean;
  /** All of it must be held before a row of it is known, which takes more memory. */
  readonly isProgressive: boolean;
  /** TIFF structure that holds what the camera tells. */
  readonly exif?: Uint8Array;
  readonly profile?: HeldProfile;
  /** What a PNG says of its colours without a profile. */
  readonly spoken?: SpokenColours;
}

/** A colour profile as the file holds it. */
export interface HeldProfile {
  readonly bytes: Uint8Array;
  readonly isDeflated: boolean;
}

/** Chunks of PNG (third edition, W3C 2025, section 11.3.2), as far as they are there. */
export interface SpokenColours {
  readonly cicp?: { readonly primaries: number; readonly transfer: number; readonly isRgb: boolean };
  readonly isSrgb: boolean;
  /** Of the encoding: 1/2.2 is usual. */
  readonly gamma?: number;
  /** White, red, green, blue. */
  readonly chromaticities?: readonly (readonly [x: number, y: number])[];
}

export type HeadAnswer = { readonly ok: true; readonly head: PictureHead } | NoPhotograph;

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

export function endsTooEarly(type: PictureType): NoPhotograph {
  return {
    ok: false,
    reason: `The file ends before the picture does: this ${type} was not copied or sent to its end. Copy it anew.`,
  };
}
