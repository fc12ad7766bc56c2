import type { Point } from '../plan/geometry/point.js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of a stored picture as it is seen. */
export function uprightSize({ width, height }: Size, orientation: number): Size {
  return orientation > 4 ? { width: height, height: width } : { width, height };
}

/**
 * Where a place of the upright picture lies in the stored one.
 * @param stored its size
 * @param orientation 1 to 8; CIPA DC-008 (Exif), section 4.6.5.1, says for each where the first row and column belong
 */
export function storedPlace({ x, y }: Point, stored: Size, orientation: number): Point {
  const { width, height } = stored;
  switch (orientation) {
    case 2:
      return { x: width - x, y };
    case 3:
      return { x: width - x, y: height - y };
    case 4:
      return { x, y: height - y };
    case 5:
      return { x: y, y: x };
    case 6:
      return { x: y, y: height - x };
    case 7:
      return { x: width - y, y: height - x };
    case 8:
      return { x: width - y, y: x };
    default:
      return { x, y };
  }
}
