import { marked } from '../../../grammar/marked.js';
import type { NoPhotograph } from '../../measure/photograph/photographs.js';
import type { PictureType } from './kind.js';

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

const ENDS_TOO_EARLY = {
  JPEG: marked(
    'The file ends before the picture does: this JPEG was not copied or sent to its end. Copy it anew.',
  ),
  PNG: marked(
    'The file ends before the picture does: this PNG was not copied or sent to its end. Copy it anew.',
  ),
  WebP: marked(
    'The file ends before the picture does: this WebP was not copied or sent to its end. Copy it anew.',
  ),
} as const satisfies Readonly<Record<PictureType, string>>;

/** Said of a file whose last bytes are missing. */
export function endsTooEarly(type: PictureType): NoPhotograph {
  return {
    ok: false,
    reason: ENDS_TOO_EARLY[type],
  };
}
