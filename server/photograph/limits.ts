import { marked } from '../../grammar/marked.js';
import { type Reason, reasonOf } from '../../grammar/reason.js';
import type { PictureHead } from './head/picture-head.js';

/**
 * The largest file that is read. What cameras and phones write as JPEG has less than half of it.
 */
export const photographLimitBytes = 100 * 1024 * 1024;

/**
 * The most pixels that are decoded: four bytes each, and as much again while they change hands, so 800 MB. What must be
 * held whole before a row of it is known takes twice that for a pixel, and so may have half as many.
 */
const MOST_PIXELS = 100_000_000;
const LONGEST_SIDE = 30_000;

/** Why a picture is too large to be decoded; nothing when it is not. */
export function refusalOfSize(
  bytes: number,
  {
    width,
    height,
    bits,
    isProgressive,
    type,
  }: Pick<PictureHead, 'width' | 'height' | 'bits' | 'isProgressive' | 'type'>,
): Reason | undefined {
  if (bytes > photographLimitBytes)
    return reasonOf(
      marked('This photograph is larger than {0} MB. Save it smaller: 3000 pixels across are plenty.'),
      photographLimitBytes / 1024 / 1024,
    );
  const takesMore = bits === 16 || isProgressive || type === 'WebP';
  const most = takesMore ? MOST_PIXELS / 2 : MOST_PIXELS;
  if (width * height <= most && Math.max(width, height) <= LONGEST_SIDE) return undefined;
  const millions = Math.round((width * height) / 1e6);
  return reasonOf(
    marked(
      'This {0} has {1} × {2} pixels, {3} million; {4} million can be measured, and {5} a side. Save it smaller: 3000 pixels across are plenty.',
    ),
    type,
    width,
    height,
    millions,
    most / 1e6,
    LONGEST_SIDE,
  );
}
