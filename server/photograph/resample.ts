import { type Corners, type Homography, fromUnitSquare, project } from '../plan/geometry/homography.js';
import type { Pixels } from './codec/decode.js';
import type { LinearPicture } from './linear-picture.js';
import type { Size } from './orientation.js';

/** Linear channels for each level of red, green and blue. */
export type Tables = readonly [Float32Array, Float32Array, Float32Array];

export interface Resampled {
  readonly picture: LinearPicture;
  /** Shares of what was looked at. */
  readonly burntShare: number;
  readonly blackShare: number;
}

/**
 * Samples of one pixel that comes out, across or down: 9 are as even as a painter can see, and of a photograph of 24
 * million pixels a third of what all would be. What is measured is smaller than what is shown, and has some 50 to each
 * pixel.
 */
const MOST_SAMPLES = 3;

/**
 * Brings what lies between four corners of a photograph onto a rectangle, in linear light. Where pixels of the
 * photograph are smaller than those that come out, samples of them are averaged, each row of them a little farther
 * along than the one above, so that neither the weave of a canvas nor a straight edge meets all of them at once; where
 * they are larger, four are mixed by their distance. Beside the photograph its edge goes on. What is not opaque stands
 * before white.
 * @param corners in pixels as they are stored, convex
 */
export function resample(pixels: Pixels, tables: Tables, corners: Corners, out: Size): Resampled {
  const map = fromUnitSquare(corners);
  if (map === undefined) throw new Error('The corners were to be looked at first.');
  const { across, down } = samplesFor(map, out);
  const reading = { pixels, tables, map, out };
  return across === 1 && down === 1 ? magnified(reading) : averaged(reading, across, down);
}

interface Reading {
  readonly pixels: Pixels;
  readonly tables: Tables;
  readonly map: Homography;
  readonly out: Size;
}

/**
 * How many samples it takes to meet each pixel of the photograph: by how far the map goes for one pixel, at its
 * farthest.
 */
function samplesFor(
  map: Homography,
  { width, height }: Size,
): { readonly across: number; readonly down: number } {
  const { a, b, c, d, e, f, g, h, i } = map;
  let [across, down] = [0, 0];
  for (const [x, y] of [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as const) {
    const depth = g * x + h * y + i;
    const [u, v] = [(a * x + b * y + c) / depth, (d * x + e * y + f) / depth];
    across = Math.max(across, Math.hypot(a - u * g, d - v * g) / depth / width);
    down = Math.max(down, Math.hypot(b - u * h, e - v * h) / depth / height);
  }
  // Rounding alone is no reason for a second sample.
  const count = (step: number) => Math.min(MOST_SAMPLES, Math.max(1, Math.ceil(step - 1e-6)));
  return { across: count(across), down: count(down) };
}

function averaged(reading: Reading, across: number, down: number): Resampled {
  const { pixels, out } = reading;
  const addRow = pixels.data instanceof Uint8ClampedArray && pixels.isOpaque ? opaqueRow(pixels) : anyRow;
  const rgb = new Float32Array(3 * out.width * out.height);
  const row = new Float64Array(3 * out.width);
  const ends: Ends = { burnt: 0, black: 0 };
  for (let to = 0; to < out.height; to++) {
    row.fill(0);
    for (let sub = 0; sub < down; sub++)
      addRow(reading, {
        y: (to * down + sub + 0.5) / (out.height * down),
        shift: (sub + 0.5) / down,
        across,
        row,
        ends,
      });
    for (let index = 0; index < row.length; index++)
      rgb[row.length * to + index] = (row[index] as number) / (across * down);
  }
  const all = out.width * across * out.height * down;
  return { picture: { ...out, rgb }, burntShare: ends.burnt / all, blackShare: ends.black / all };
}

/** One row of samples, added to the sums of the pixels that come out. */
interface SampleRow {
  /** From the upper edge of what comes out, 0 to 1. */
  readonly y: number;
  /** From one sample to the next, how far along each stands. */
  readonly shift: number;
  readonly across: number;
  readonly row: Float64Array;
  readonly ends: Ends;
}

/** Samples at the ends of what a channel can say. */
interface Ends {
  burnt: number;
  black: number;
}

type AddRow = (reading: Reading, into: SampleRow) => void;

/** Of 8 or 16 bits, opaque or not. */
const anyRow: AddRow = ({ pixels, tables, map, out }, { y, shift, across, row, ends }) => {
  const { data, width, height } = pixels;
  const [red, green, blue] = tables;
  const top = red.length - 1;
  const off = levelsOff(top);
  let sample = 0;
  for (let column = 0; column < out.width; column++) {
    for (let part = 0; part < across; part++, sample++) {
      const { x: u, y: v } = project(map, { x: (sample + shift) / (out.width * across), y });
      const at = 4 * (within(Math.floor(v), height) * width + within(Math.floor(u), width));
      const [r, g, b] = [data[at] ?? 0, data[at + 1] ?? 0, data[at + 2] ?? 0];
      const share = (data[at + 3] ?? 0) / top;
      row[3 * column] = (row[3 * column] ?? 0) + 1 - share + share * (red[r] ?? 0);
      row[3 * column + 1] = (row[3 * column + 1] ?? 0) + 1 - share + share * (green[g] ?? 0);
      row[3 * column + 2] = (row[3 * column + 2] ?? 0) + 1 - share + share * (blue[b] ?? 0);
      if (share < 1) continue;
      const most = Math.max(r, g, b);
      if (most >= top - off) ends.burnt++;
      else if (most <= off) ends.black++;
    }
  }
};

/**
 * Of 8 bits and opaque, as photographs are: the same as {@link anyRow}, several times faster. All in whole numbers of
 * 32 bits: four channels at once, and places in 65 536ths of a pixel, for which no side may have more than 32 767.
 */
function opaqueRow({ data, width, height }: Pixels): AddRow {
  const words = new Int32Array(data.buffer, data.byteOffset, width * height);
  return (reading, into) => addOpaqueRow(words, width, height, reading, into);
}

function addOpaqueRow(
  words: Int32Array,
  width: number,
  height: number,
  { tables, map, out }: Reading,
  { y, shift, across, row, ends }: SampleRow,
): void {
  const red = tables[0];
  const green = tables[1];
  const blue = tables[2];
  const { a, b, c, d, e, f, g, h, i } = map;
  const startU = b * y + c;
  const startV = e * y + f;
  const startDepth = h * y + i;
  const columns = out.width;
  // A division takes as long as a sample does.
  const perColumn = 1 / columns;
  const perSample = 1 / across;
  // What lies between two places inside is inside.
  const isInside =
    [startU / startDepth, (a + startU) / (g + startDepth)].every((place) => place >= 0 && place < width) &&
    [startV / startDepth, (d + startV) / (g + startDepth)].every((place) => place >= 0 && place < height);
  let fixedU = (startU / startDepth) * 65536;
  let fixedV = (startV / startDepth) * 65536;
  let burnt = 0;
  let black = 0;
  for (let column = 0; column < columns; column++) {
    // Within one pixel that comes out the way is straight and even, to a small part of a pixel.
    const x = (column + 1) * perColumn;
    const scale = 65536 / (g * x + startDepth);
    const nextU = (a * x + startU) * scale;
    const nextV = (d * x + startV) * scale;
    const stepU = ((nextU - fixedU) * perSample) | 0;
    const stepV = ((nextV - fixedV) * perSample) | 0;
    let placeU = (fixedU + stepU * shift) | 0;
    let placeV = (fixedV + stepV * shift) | 0;
    fixedU = nextU;
    fixedV = nextV;
    let sumRed = 0;
    let sumGreen = 0;
    let sumBlue = 0;
    for (let part = 0; part < across; part++) {
      let sampleU = placeU >> 16;
      let sampleV = placeV >> 16;
      placeU = (placeU + stepU) | 0;
      placeV = (placeV + stepV) | 0;
      if (!isInside) {
        sampleU = within(sampleU, width);
        sampleV = within(sampleV, height);
      }
      const word = words[(Math.imul(sampleV, width) + sampleU) | 0] as number;
      sumRed += red[word & 255] as number;
      sumGreen += green[(word >> 8) & 255] as number;
      sumBlue += blue[(word >> 16) & 255] as number;
      // The last bit of each channel left out: 254 and 255 are the upper end, 0 and 1 the lower.
      const levels = word & 0xfefefe;
      const short = levels ^ 0xfefefe;
      if (((short - 0x010101) & ~short & 0x808080) !== 0) burnt = (burnt + 1) | 0;
      else if (levels === 0) black = (black + 1) | 0;
    }
    const into = 3 * column;
    row[into] = (row[into] as number) + sumRed;
    row[into + 1] = (row[into + 1] as number) + sumGreen;
    row[into + 2] = (row[into + 2] as number) + sumBlue;
  }
  ends.burnt += burnt;
  ends.black += black;
}

/** The nearest place that there is along a side. */
function within(place: number, side: number): number {
  return place < 0 ? 0 : place >= side ? side - 1 : place;
}

function magnified({ pixels, tables, map, out }: Reading): Resampled {
  const { data, width, height } = pixels;
  const top = tables[0].length - 1;
  const { a, b, c, d, e, f, g, h, i } = map;
  const rgb = new Float32Array(3 * out.width * out.height);
  const linear = (at: number, channel: 0 | 1 | 2): number => {
    const share = (data[at + 3] ?? 0) / top;
    return 1 - share + share * (tables[channel][data[at + channel] ?? 0] ?? 0);
  };
  let [burntCount, blackCount] = [0, 0];
  for (let row = 0; row < out.height; row++) {
    for (let column = 0; column < out.width; column++) {
      const [x, y] = [(column + 0.5) / out.width, (row + 0.5) / out.height];
      const depth = g * x + h * y + i;
      // The middle of the first pixel lies half a pixel in.
      const u = Math.min(width - 1, Math.max(0, (a * x + b * y + c) / depth - 0.5));
      const v = Math.min(height - 1, Math.max(0, (d * x + e * y + f) / depth - 0.5));
      const [left, up] = [Math.floor(u), Math.floor(v)];
      const [right, low] = [Math.min(width - 1, left + 1), Math.min(height - 1, up + 1)];
      const [partU, partV] = [u - left, v - up];
      const [upLeft, upRight] = [4 * (up * width + left), 4 * (up * width + right)];
      const [lowLeft, lowRight] = [4 * (low * width + left), 4 * (low * width + right)];
      for (const channel of [0, 1, 2] as const) {
        const upper = mixed(linear(upLeft, channel), linear(upRight, channel), partU);
        const lower = mixed(linear(lowLeft, channel), linear(lowRight, channel), partU);
        rgb[3 * (row * out.width + column) + channel] = mixed(upper, lower, partV);
      }
      const nearest = 4 * (Math.round(v) * width + Math.round(u));
      const levels = [data[nearest] ?? 0, data[nearest + 1] ?? 0, data[nearest + 2] ?? 0];
      if (data[nearest + 3] !== top) continue;
      if (Math.max(...levels) >= top - levelsOff(top)) burntCount++;
      else if (Math.max(...levels) <= levelsOff(top)) blackCount++;
    }
  }
  const all = out.width * out.height;
  return { picture: { ...out, rgb }, burntShare: burntCount / all, blackShare: blackCount / all };
}

/** How far from its end a channel still counts as at its end: one level of 256, by which packing changes it. */
function levelsOff(top: number): number {
  return Math.round(top / 255);
}

function mixed(one: number, other: number, part: number): number {
  return one + (other - one) * part;
}
