import type { Point } from './geometry/point.js';
import type { PicturePlace } from './plan.js';

/** A place in an upright photograph or sketch of a size in pixels, in its pixels. */
export function pixelAt(
  { across, down }: PicturePlace,
  { width, height }: { readonly width: number; readonly height: number },
): Point {
  return {
    x: across.in === 'pixels' ? across.value : across.value * width,
    y: down.in === 'pixels' ? down.value : down.value * height,
  };
}
