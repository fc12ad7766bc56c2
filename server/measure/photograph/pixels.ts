import { labOfParts, unfold } from '../../plan/colour/cielab.js';
import type { Lab } from '../../plan/colour/colour.js';
import { lightnessOfValue, valueOfLab } from '../../plan/colour/value.js';
import type { Memory } from '../memory.js';
import type { SquaredPicture } from './photographs.js';

/** CIELAB under D65, three numbers a pixel, row by row: a photograph, or what a plan has in its place. */
export type LabPicture = Pick<SquaredPicture, 'width' | 'height' | 'lab'>;

/** What follows from a picture alone, worked out once for each. */
export interface Pixels extends LabPicture {
  /** L* of all pixels, the darkest first. */
  readonly lightness: Float32Array;
  /** Mean Munsell value. */
  readonly value: number;
  /** Running sums along each row, `width + 1` numbers a row, of X, Y and Z under D65 as parts of white. */
  readonly light: readonly [x: Float32Array, y: Float32Array, z: Float32Array];
  /** Running sums along each row of pixels so light that they may be glare. */
  readonly glaring: Float32Array;
  /** The colours that are in it, told apart as `Shade` says. */
  readonly shades: readonly Shade[];
}

/**
 * Pixels of nearly one colour: they lie in one cell of a grid over CIELAB, and `lab` is their mean. So whatever is
 * decided for all of them by their mean is decided wrongly for a pixel only where it is a matter of less than the
 * diagonal of a cell, 4.3 units of CIELAB, which is less in CIEDE2000 for all but the greys.
 */
export interface Shade {
  readonly lab: Lab;
  readonly count: number;
}

/**
 * Pixels on a side of the squares over which colours are evened out, and the range of L* in one from which on it is an
 * edge.
 */
const SQUARE = 3;
const EDGE = 25;
/** Side of a cell of the grid over CIELAB. */
const CELL = 2.5;
/** From this L* on a place is as light as glare: nearly paper white. */
const GLARING = 92;

/** What follows from a picture alone; kept as long as it is asked for. */
export function pixelsOf(picture: SquaredPicture, memory: Memory): Pixels {
  return memory.recall('pixels', picture.id, [picture], () => workedOut(picture));
}

function workedOut({ width, height, lab }: LabPicture): Pixels {
  const rowLength = width + 1;
  const sums = (): Float32Array => new Float32Array(rowLength * height);
  const [sumX, sumY, sumZ, glaring] = [sums(), sums(), sums(), sums()];
  const lightness = new Float32Array(width * height);
  for (let row = 0; row < height; row++) {
    let [x, y, z, bright] = [0, 0, 0, 0];
    for (let column = 0; column < width; column++) {
      const pixel = row * width + column;
      const l = lab[3 * pixel] as number;
      const middle = (l + 16) / 116;
      x += unfold(middle + (lab[3 * pixel + 1] as number) / 500);
      y += unfold(middle);
      z += unfold(middle - (lab[3 * pixel + 2] as number) / 200);
      if (l >= GLARING) bright++;
      lightness[pixel] = l;
      const at = row * rowLength + column + 1;
      sumX[at] = x;
      sumY[at] = y;
      sumZ[at] = z;
      glaring[at] = bright;
    }
  }
  lightness.sort();
  const value = lightness.reduce((sum, l) => sum + quickValue(l), 0) / Math.max(1, lightness.length);
  return {
    width,
    height,
    lab,
    lightness,
    value,
    light: [sumX, sumY, sumZ],
    glaring,
    shades: shadesOf({ width, height, lab }),
  };
}

/**
 * Grain, weave and noise are evened out over squares of three pixels a side, as they are by the eye, except where a
 * square lies on an edge: there each pixel counts by itself.
 */
function shadesOf({ width, height, lab }: LabPicture): readonly Shade[] {
  const cells = new Map<number, { l: number; a: number; b: number; count: number }>();
  const add = (l: number, a: number, b: number, count: number): void => {
    // Whole cells either side of grey, so that a grey with some noise is one shade.
    const key =
      (Math.round(l / CELL) * 1024 + Math.round(a / CELL) + 512) * 1024 + Math.round(b / CELL) + 512;
    const cell = cells.get(key);
    if (cell) {
      cell.l += count * l;
      cell.a += count * a;
      cell.b += count * b;
      cell.count += count;
    } else cells.set(key, { l: count * l, a: count * a, b: count * b, count });
  };
  for (let top = 0; top < height; top += SQUARE) {
    for (let left = 0; left < width; left += SQUARE) {
      let [l, a, b, count] = [0, 0, 0, 0];
      let [darkest, lightest] = [Infinity, -Infinity];
      const each = (visit: (at: number) => void): void => {
        for (let row = top; row < Math.min(height, top + SQUARE); row++) {
          for (let column = left; column < Math.min(width, left + SQUARE); column++) {
            visit(3 * (row * width + column));
          }
        }
      };
      each((at) => {
        const lightness = lab[at] as number;
        l += lightness;
        a += lab[at + 1] as number;
        b += lab[at + 2] as number;
        count++;
        darkest = Math.min(darkest, lightness);
        lightest = Math.max(lightest, lightness);
      });
      if (lightest - darkest <= EDGE) add(l / count, a / count, b / count, count);
      else each((at) => add(lab[at] as number, lab[at + 1] as number, lab[at + 2] as number, 1));
    }
  }
  return [...cells.values()].map(({ l, a, b, count }) => ({
    lab: [l / count, a / count, b / count],
    count,
  }));
}

/** Mean colour of all that runs of pixels hold, averaged in linear light; nothing without a pixel. */
export function meanColour({ width, light }: Pixels, runs: Int32Array): Lab | undefined {
  const count = pixelCount(runs);
  if (count === 0) return undefined;
  const [x, y, z] = light.map((sums) => sumOver(sums, runs, width) / count) as [number, number, number];
  return labOfParts(x, y, z);
}

/** The sum over runs of what running sums along the rows are of. */
export function sumOver(sums: Float32Array, runs: Int32Array, width: number): number {
  let sum = 0;
  for (let i = 0; i + 1 < runs.length; i += 2) {
    const from = runs[i] as number;
    const row = Math.floor(from / width);
    // A row of sums is longer by one, the nought that it begins with.
    sum += (sums[(runs[i + 1] as number) + row] as number) - (sums[from + row] as number);
  }
  return sum;
}

export function pixelCount(runs: Int32Array): number {
  let count = 0;
  for (let i = 0; i + 1 < runs.length; i += 2) count += (runs[i + 1] as number) - (runs[i] as number);
  return count;
}

/**
 * Parts of the picture by steps of a scale, index 0 the darkest; a pixel on the border of two steps counts to the
 * lighter.
 */
export function stepShares({ lightness }: Pick<Pixels, 'lightness'>, steps: number): readonly number[] {
  const below = stepBorders(steps).map((border) => countBelow(lightness, border));
  return [...below, lightness.length].map(
    (count, index) => (count - (below[index - 1] ?? 0)) / lightness.length,
  );
}

/** L* at the borders between the steps of a scale, the darkest first. */
export function stepBorders(steps: number): readonly number[] {
  return Array.from({ length: steps - 1 }, (_, index) => lightnessOfValue((10 * (index + 1)) / steps));
}

/** How many of ascending numbers lie below a limit. */
function countBelow(ascending: Float32Array, limit: number): number {
  let [low, high] = [0, ascending.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ascending[middle] as number) < limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The Munsell value that a part of the picture lies below. */
export function valueAt({ lightness }: Pick<Pixels, 'lightness'>, part: number): number {
  const index = Math.min(lightness.length - 1, Math.max(0, Math.round(part * (lightness.length - 1))));
  return valueOfLab([lightness[index] ?? 0, 0, 0]);
}

/** Munsell value of an L*, from a table: off by less than 0.001. */
export function quickValue(lightness: number): number {
  const at = Math.min(TABLE.length - 1.001, Math.max(0, lightness * PER_UNIT));
  const index = Math.floor(at);
  const low = TABLE[index] as number;
  return low + (at - index) * ((TABLE[index + 1] as number) - low);
}

const PER_UNIT = 10;
const TABLE = Float64Array.from({ length: 100 * PER_UNIT + 1 }, (_, index) =>
  valueOfLab([index / PER_UNIT, 0, 0]),
);
