import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { PhotonImage } from '@silvia-odwyer/photon-node';
import { describe, expect, it } from 'vitest';
import { reasonInWords } from '../../grammar/index.js';
import { squarePhotograph } from '../../server/photograph/square.js';
import { linear } from '../support/taken-photographs.js';

/**
 * Photographs that cameras have taken: those that the package `exif` 0.6.0 (MIT) tries itself with, one of 13 million
 * pixels of a telephone among them. What is measured is held to another library's own pixels (photon-node, Apache-2.0,
 * whose decoders are written in Rust).
 */
const folder = path.join(path.dirname(createRequire(import.meta.url).resolve('exif/package.json')), 'test');

/** The light of each level of sRGB. */
const lightOf = Array.from({ length: 256 }, (_, level) => linear(level / 255));
/** CIE 15:2004, section 8.2.1.1. */
const lightnessOf = (luminance: number): number =>
  luminance > (6 / 29) ** 3 ? 116 * Math.cbrt(luminance) - 16 : (29 / 3) ** 3 * luminance;

/** Lightness of a picture in even fields, the mean of the light in each, as another library decodes it. */
function fieldsTold(bytes: Uint8Array, across: number, down: number): readonly number[] {
  const image = PhotonImage.new_from_byteslice(bytes);
  const pixels = image.get_raw_pixels();
  const [width, height] = [image.get_width(), image.get_height()];
  image.free();
  const sums = new Float64Array(across * down);
  const counts = new Float64Array(across * down);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = 4 * (y * width + x);
      const field = Math.floor((y * down) / height) * across + Math.floor((x * across) / width);
      const [red = 0, green = 0, blue = 0] = [pixels[at], pixels[at + 1], pixels[at + 2]];
      sums[field]! += 0.2126 * lightOf[red]! + 0.7152 * lightOf[green]! + 0.0722 * lightOf[blue]!;
      counts[field]! += 1;
    }
  }
  return Array.from(sums, (sum, field) => lightnessOf(sum / counts[field]!));
}

/** The same of what is measured: its lightness turned back to light, averaged in the fields. */
function fieldsMeasured(
  { lab, width, height }: { readonly lab: Float32Array; readonly width: number; readonly height: number },
  across: number,
  down: number,
): readonly number[] {
  const sums = new Float64Array(across * down);
  const counts = new Float64Array(across * down);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const field = Math.floor((y * down) / height) * across + Math.floor((x * across) / width);
      const f = (lab[3 * (y * width + x)]! + 16) / 116;
      sums[field]! += f > 6 / 29 ? f ** 3 : (f - 4 / 29) * 3 * (6 / 29) ** 2;
      counts[field]! += 1;
    }
  }
  return Array.from(sums, (sum, field) => lightnessOf(sum / counts[field]!));
}

/** How much of a picture lies at each value, 0 to 10. */
function histogram(lightness: readonly number[]): readonly number[] {
  const bins = Array.from({ length: 11 }, () => 0);
  for (const light of lightness) bins[Math.round(light / 10)]! += 1 / lightness.length;
  return bins;
}

describe('photographs that cameras have taken', () => {
  it.each([
    ['short-ascii-II.jpg', 4208, 3120],
    ['short-ascii-MM.jpg', 480, 360],
    ['evil1.jpg', 640, 480],
  ])('%s has the lights and darks that another library sees in it', async (name, width, height) => {
    const bytes = readFileSync(path.join(folder, name));
    const answer = await squarePhotograph(bytes, {
      path: name,
      corners: [],
      proportion: width / height,
    });
    if (!answer.ok) throw new Error(reasonInWords(answer.reason));
    const { picture } = answer;
    expect([picture.source.width, picture.source.height]).toEqual([width, height]);
    const [across, down] = [20, 15];
    const measured = fieldsMeasured(picture, across, down);
    const told = fieldsTold(bytes, across, down);
    const off = measured.map((light, field) => Math.abs(light - told[field]!));
    // Pixels at the border of two fields fall to one of them alone, and the two pictures have theirs at other places.
    expect(Math.max(...off)).toBeLessThan(4);
    expect(off.reduce((sum, one) => sum + one, 0) / off.length).toBeLessThan(0.5);
    const [here, there] = [histogram(measured), histogram(told)];
    expect(Math.max(...here.map((share, bin) => Math.abs(share - there[bin]!)))).toBeLessThan(0.02);
    expect(Math.max(...there)).toBeLessThan(0.7);
  });
});
