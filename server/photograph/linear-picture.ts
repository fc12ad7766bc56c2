import type { Size } from './orientation.js';

/** A picture in the linear channels of its photograph: three numbers a pixel, row by row. */
export interface LinearPicture extends Size {
  readonly rgb: Float32Array;
}

/**
 * The same picture no larger: each pixel that comes out is the mean of what it covers, parts of pixels by their areas.
 */
export function reduced(picture: LinearPicture, out: Size): LinearPicture {
  if (out.width === picture.width && out.height === picture.height) return picture;
  const columns = coverOf(picture.width, out.width);
  const narrow = new Float32Array(3 * out.width * picture.height);
  for (let row = 0; row < picture.height; row++) {
    columns.forEach(({ first, parts }, column) => {
      const to = 3 * (row * out.width + column);
      for (let index = 0; index < parts.length; index++)
        addPixel(narrow, to, picture.rgb, 3 * (row * picture.width + first + index), parts[index] as number);
    });
  }
  const rgb = new Float32Array(3 * out.width * out.height);
  coverOf(picture.height, out.height).forEach(({ first, parts }, row) => {
    for (let index = 0; index < parts.length; index++) {
      for (let column = 0; column < out.width; column++) {
        const from = 3 * ((first + index) * out.width + column);
        addPixel(rgb, 3 * (row * out.width + column), narrow, from, parts[index] as number);
      }
    }
  });
  return { ...out, rgb };
}

function addPixel(sums: Float32Array, to: number, pixels: Float32Array, from: number, part: number): void {
  sums[to] = (sums[to] as number) + part * (pixels[from] as number);
  sums[to + 1] = (sums[to + 1] as number) + part * (pixels[from + 1] as number);
  sums[to + 2] = (sums[to + 2] as number) + part * (pixels[from + 2] as number);
}

/** For each pixel that comes out, the pixels that it covers from the first on, each by its part of it. */
function coverOf(
  from: number,
  to: number,
): readonly { readonly first: number; readonly parts: readonly number[] }[] {
  const step = from / to;
  return Array.from({ length: to }, (_, index) => {
    const [start, end] = [index * step, (index + 1) * step];
    const first = Math.floor(start);
    const count = Math.max(1, Math.min(from, Math.ceil(end - 1e-9)) - first);
    const parts = Array.from(
      { length: count },
      (_part, at) => (Math.min(end, first + at + 1) - Math.max(start, first + at)) / step,
    );
    return { first, parts };
  });
}

/** A picture seen as it was turned: `place` says for each pixel that comes out which it is. */
export function turned(
  picture: LinearPicture,
  out: Size,
  place: (column: number, row: number) => { readonly x: number; readonly y: number },
): LinearPicture {
  const rgb = new Float32Array(3 * out.width * out.height);
  for (let row = 0; row < out.height; row++) {
    for (let column = 0; column < out.width; column++) {
      const { x, y } = place(column, row);
      const at = 3 * (y * picture.width + x);
      rgb.set(picture.rgb.subarray(at, at + 3), 3 * (row * out.width + column));
    }
  }
  return { ...out, rgb };
}
