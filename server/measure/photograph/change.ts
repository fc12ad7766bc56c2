import { labDifferences } from '../../plan/colour/difference.js';
import type { Memory } from '../memory.js';
import type { InPhotograph } from './record-objects.js';
import { pixelCount, type Pixels, sumOver } from './pixels.js';
import type { RecordChange } from './record.js';

/**
 * How far a photograph is from the one before it: mean CIEDE2000 pixel by pixel over the canvas, over each object that
 * is seen, and over the bare ground. Where the two have other sizes the nearest pixel of the one before is taken.
 */
export function changeSince(
  now: InPhotograph,
  before: { readonly sitting: number; readonly pixels: Pixels },
  memory: Memory,
): RecordChange {
  const { pixels, masks, key } = now;
  const { width, height } = pixels;
  const sums = memory.recall('change since', key, [pixels, before.pixels], () =>
    runningSums(labDifferences(inSize(before.pixels, width, height), pixels.lab), width, height),
  );
  const whole = sumOver(
    sums,
    Int32Array.from(Array.from({ length: height }, (_, row) => [row * width, (row + 1) * width]).flat()),
    width,
  );
  const ofMasks = masks.map(({ object, runs }) => ({
    object,
    sum: sumOver(sums, runs, width),
    count: pixelCount(runs),
  }));
  const left = width * height - ofMasks.reduce((sum, { count }) => sum + count, 0);
  const bare = whole - ofMasks.reduce((sum, mask) => sum + mask.sum, 0);
  return {
    since: before.sitting,
    mean: whole / (width * height),
    objects: ofMasks
      .filter(({ count }) => count > 0)
      .map(({ object, sum, count }) => ({ object, difference: sum / count }))
      .sort((one, other) => other.difference - one.difference || one.object - other.object),
    ...(left > 0 ? { bare: Math.max(0, bare) / left } : {}),
  };
}

function runningSums(of: Float32Array, width: number, height: number): Float32Array {
  const sums = new Float32Array((width + 1) * height);
  for (let row = 0; row < height; row++) {
    let sum = 0;
    for (let column = 0; column < width; column++) {
      sum += of[row * width + column] as number;
      sums[row * (width + 1) + column + 1] = sum;
    }
  }
  return sums;
}

function inSize(pixels: Pixels, width: number, height: number): Float32Array {
  if (pixels.width === width && pixels.height === height) return pixels.lab;
  const lab = new Float32Array(3 * width * height);
  for (let row = 0; row < height; row++) {
    const from = Math.floor(((row + 0.5) * pixels.height) / height) * pixels.width;
    for (let column = 0; column < width; column++) {
      const pixel = from + Math.floor(((column + 0.5) * pixels.width) / width);
      lab.set(pixels.lab.subarray(3 * pixel, 3 * pixel + 3), 3 * (row * width + column));
    }
  }
  return lab;
}
