import {
  type PDFOperator,
  type PDFPage,
  concatTransformationMatrix,
  drawObject,
  popGraphicsState,
  pushGraphicsState,
} from '@cantoo/pdf-lib';
import type { Box, Mark } from '../scene.js';
import { type Raster, bytesOf, paintShapes } from './raster.js';

/** So many pixels to the standard deviation, a blur shows no pixels. */
const PIXELS_PER_DEVIATION = 3;
const PIXELS_ALONG = { least: 600, most: 1600 } as const;
/** Beyond so many standard deviations nothing of a Gaussian is left to be seen. */
const REACH = 3;

/**
 * The shapes of a layer out of focus. PDF has no blur, so this one layer of it is an image, blurred as the SVG is: by a
 * Gaussian in linear light, to which what lies outside of the picture adds nothing.
 */
export function blurOperators(
  marks: readonly Mark[],
  deviation: number,
  picture: Box,
  sheet: PDFPage,
): readonly PDFOperator[] {
  const longer = Math.max(picture.width, picture.height);
  const along = Math.min(
    PIXELS_ALONG.most,
    Math.max(PIXELS_ALONG.least, (PIXELS_PER_DEVIATION * longer) / deviation),
  );
  const pixel = longer / along;
  const size = {
    width: Math.max(1, Math.round(picture.width / pixel)),
    height: Math.max(1, Math.round(picture.height / pixel)),
  };
  const sharp = paintShapes(marks, size, ({ x, y }) => ({
    x: ((x - picture.x) / picture.width) * size.width,
    y: ((y - picture.y) / picture.height) * size.height,
  }));
  const blurred = blurredRaster(sharp, deviation / pixel);
  const image = sheet.doc.context.flateStream(bytesOf(blurred), {
    Type: 'XObject',
    Subtype: 'Image',
    Width: size.width,
    Height: size.height,
    ColorSpace: 'DeviceRGB',
    BitsPerComponent: 8,
    Interpolate: true,
  });
  const name = sheet.node.newXObject('Blurred', sheet.doc.context.register(image));
  const bottom = picture.y + picture.height;
  return [
    pushGraphicsState(),
    // Images stand on their lower edge; on this page y runs down.
    concatTransformationMatrix(picture.width, 0, 0, -picture.height, picture.x, bottom),
    drawObject(name),
    popGraphicsState(),
  ];
}

/** @param deviation in pixels */
export function blurredRaster(raster: Raster, deviation: number): Raster {
  const { width, height, light } = raster;
  const rows = blurAlong(light, { count: width, step: 3 }, { count: height, step: 3 * width }, deviation);
  const both = blurAlong(rows, { count: height, step: 3 * width }, { count: width, step: 3 }, deviation);
  return { width, height, light: both };
}

interface Axis {
  readonly count: number;
  readonly step: number;
}

/** One way after the other is the same as both at once. */
function blurAlong(light: Float32Array, along: Axis, across: Axis, deviation: number): Float32Array {
  const reach = Math.min(along.count - 1, Math.ceil(REACH * deviation));
  const weights = Array.from({ length: reach + 1 }, (_, away) => Math.exp(-0.5 * (away / deviation) ** 2));
  const blurred = new Float32Array(light.length);
  for (let place = 0; place < along.count; place += 1) {
    const first = Math.max(0, place - reach);
    const last = Math.min(along.count - 1, place + reach);
    let whole = 0;
    for (let near = first; near <= last; near += 1) whole += weights[Math.abs(near - place)] ?? 0;
    for (let near = first; near <= last; near += 1) {
      const weight = (weights[Math.abs(near - place)] ?? 0) / whole;
      for (let line = 0; line < across.count; line += 1) {
        const from = near * along.step + line * across.step;
        const to = place * along.step + line * across.step;
        for (let channel = 0; channel < 3; channel += 1)
          blurred[to + channel] = (blurred[to + channel] ?? 0) + weight * (light[from + channel] ?? 0);
      }
    }
  }
  return blurred;
}
