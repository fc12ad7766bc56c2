import { fold } from '../plan/colour/cielab.js';
import { encodedChannel } from '../plan/colour/srgb-curve.js';
import { srgb } from './colour/space.js';
import { type Matrix, d65, inverse, times } from './colour/matrix.js';
import type { LinearPicture } from './linear-picture.js';

/**
 * CIELAB under D65, three numbers a pixel, beyond what sRGB holds too.
 * @param toXyz from the linear channels of the picture
 */
export function toLab({ rgb }: LinearPicture, toXyz: Matrix): Float32Array {
  const lab = new Float32Array(rgb.length);
  const [[xr, xg, xb], [yr, yg, yb], [zr, zg, zb]] = toXyz;
  const [whiteX, whiteY, whiteZ] = d65;
  for (let at = 0; at < rgb.length; at += 3) {
    const red = rgb[at] as number;
    const green = rgb[at + 1] as number;
    const blue = rgb[at + 2] as number;
    const x = fold((xr * red + xg * green + xb * blue) / whiteX);
    const y = fold((yr * red + yg * green + yb * blue) / whiteY);
    const z = fold((zr * red + zg * green + zb * blue) / whiteZ);
    lab[at] = 116 * y - 16;
    lab[at + 1] = 500 * (x - y);
    lab[at + 2] = 200 * (y - z);
  }
  return lab;
}

const STEPS = 65_535;
/** Levels of sRGB for linear light, which in the darkest part of its curve has 20 steps for a level. */
const encoded = Uint8ClampedArray.from(
  { length: STEPS + 1 },
  (_, step) => 255 * encodedChannel(step / STEPS),
);

const fromXyz = inverse(srgb.toXyz);

/** Pixels of sRGB, opaque; colours that it can't show lose what is beyond it in each channel. */
export function toSrgb({ rgb, width, height }: LinearPicture, toXyz: Matrix): Uint8ClampedArray<ArrayBuffer> {
  if (fromXyz === undefined) throw new Error('sRGB has an inverse.');
  const [[rr, rg, rb], [gr, gg, gb], [br, bg, bb]] = times(fromXyz, toXyz);
  const data = new Uint8ClampedArray(4 * width * height);
  for (let pixel = 0; pixel < width * height; pixel++) {
    const red = rgb[3 * pixel] as number;
    const green = rgb[3 * pixel + 1] as number;
    const blue = rgb[3 * pixel + 2] as number;
    data[4 * pixel] = encode(rr * red + rg * green + rb * blue);
    data[4 * pixel + 1] = encode(gr * red + gg * green + gb * blue);
    data[4 * pixel + 2] = encode(br * red + bg * green + bb * blue);
    data[4 * pixel + 3] = 255;
  }
  return data;
}

function encode(linear: number): number {
  const step = (linear * STEPS + 0.5) | 0;
  return encoded[step < 0 ? 0 : step > STEPS ? STEPS : step] as number;
}
