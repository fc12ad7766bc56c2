import type { RecordFigures } from '../../measure/photograph/record.js';
import type { SquaredPicture } from '../../measure/photograph/photographs.js';
import { computedColour, type Lab } from '../../plan/colour/model.js';
import { labToRgb } from '../../plan/colour/srgb.js';
import { hexOf } from '../picture/ink.js';
import { colourPicture, indexedPicture } from '../picture-of-pixels.js';
import type { Hex, PictureData } from '../scene.js';

/** A band of a scale of differences: from a figure on, up to where the next begins. */
export interface Band {
  readonly from: number;
  readonly hex: Hex;
}

/**
 * Photograph less plan in steps of the value scale. What is darker is shown darker and cooler, what is lighter lighter
 * and warmer, so that lightness alone tells the order, to every eye and in every theme; blue to yellow is told apart
 * with red-green blindness too. Half a step either way is as planned.
 */
export const valueBands: readonly Band[] = bands([
  [-Infinity, [17, 14, -38]],
  [-2, [29, 10, -40]],
  [-1.5, [41, 3, -34]],
  [-1, [54, -2, -20]],
  [-0.5, [67, 0, 2]],
  [0.5, [76, 5, 30]],
  [1, [83, 8, 52]],
  [1.5, [89, 4, 70]],
  [2, [96, -6, 66]],
]);

/** CIEDE2000 from plan to photograph, the darker the farther off. */
export const colourBands: readonly Band[] = bands([
  [0, [92, 0, 3]],
  [2.5, [78, 12, -6]],
  [5, [62, 26, -18]],
  [10, [44, 38, -30]],
  [20, [24, 36, -38]],
]);

function bands(rows: readonly (readonly [from: number, lab: Lab])[]): readonly Band[] {
  return rows.map(([from, lab]) => ({ from, hex: hexOf(computedColour(lab)) }));
}

/** Differences as a picture, and how much of the canvas is told in it. */
export interface DifferencePicture {
  readonly href: PictureData;
  /** Parts of the canvas in each band, in their order. */
  readonly shares: readonly number[];
  /** Part of the canvas of which nothing is planned. */
  readonly unplanned: number;
}

/**
 * Pixels to each side over which a difference is evened out, so that the grain of canvas and brush does not show as
 * spots.
 */
const REACH = 3;

/** What is off in a photograph, as pictures; that of colours only where the plan has some. */
export interface DifferencePictures {
  readonly values: DifferencePicture;
  readonly colours?: DifferencePicture;
}

interface Made {
  /** What the plan had at each pixel. */
  readonly planned: Float32Array;
  /** What else the differences follow from. */
  readonly by: string;
  readonly pictures: DifferencePictures;
}

const made = new WeakMap<SquaredPicture, Made>();

/**
 * Kept with the photograph for as long as the plan has the same at each pixel: most edits change nothing of that, and
 * are not to wait until a hundred thousand colours are compared again.
 */
export function differencePictures(
  picture: SquaredPicture,
  figures: RecordFigures,
  steps: number,
): DifferencePictures {
  const planned = figures.planned.lab;
  const by = `${steps} ${figures.objects.map(({ against }) => (against?.colour ? 'c' : against ? 'v' : '-')).join('')}`;
  const known = made.get(picture);
  if (known?.by === by && isSame(known.planned, planned)) return known.pictures;
  const pictures = {
    values: differencePicture(figures.valueDifference, picture, valueBands),
    ...(hasColours(figures)
      ? { colours: differencePicture(figures.colourDifference, picture, colourBands) }
      : {}),
  };
  made.set(picture, { planned, by, pictures });
  return pictures;
}

/** Bit by bit, as what is not a number equals nothing. */
function isSame(one: Float32Array, other: Float32Array): boolean {
  if (one === other) return true;
  if (one.length !== other.length) return false;
  const [left, right] = [one, other].map(
    ({ buffer, byteOffset, length }) => new Uint32Array(buffer, byteOffset, length),
  ) as [Uint32Array, Uint32Array];
  return left.every((bits, index) => bits === right[index]);
}

export function differencePicture(
  differences: Float32Array,
  { width, height }: Pick<SquaredPicture, 'width' | 'height'>,
  scale: readonly Band[],
): DifferencePicture {
  const even = evenedOut(differences, width, height);
  const counts = new Array<number>(scale.length + 1).fill(0);
  const pixels = new Uint8Array(even.length);
  for (let pixel = 0; pixel < even.length; pixel += 1) {
    const place = placeOn(scale, even[pixel] ?? NaN);
    pixels[pixel] = place;
    counts[place] = (counts[place] ?? 0) + 1;
  }
  const [unplanned = 0, ...shares] = counts.map((count) => count / Math.max(1, even.length));
  return {
    href: indexedPicture({ width, height, pixels, colours: [undefined, ...scale.map(({ hex }) => hex)] }),
    shares,
    unplanned,
  };
}

/** The band of a figure, counted from 1; 0 for what is no number. */
function placeOn(scale: readonly Band[], value: number): number {
  if (Number.isNaN(value)) return 0;
  for (let band = scale.length - 1; band > 0; band -= 1)
    if (value >= (scale[band]?.from ?? 0)) return band + 1;
  return 1;
}

/** Each pixel the mean of those round it; what is not known stays so, and adds nothing to its neighbours. */
export function evenedOut(values: Float32Array, width: number, height: number): Float32Array {
  const rows = meansAlong(values, width, height, 1, width);
  return meansAlong(rows, height, width, width, 1);
}

function meansAlong(
  values: Float32Array,
  along: number,
  across: number,
  step: number,
  stride: number,
): Float32Array {
  const means = new Float32Array(values.length);
  for (let line = 0; line < across; line += 1) {
    const start = line * stride;
    let sum = 0;
    let count = 0;
    const add = (place: number, sign: 1 | -1) => {
      const value = place < 0 || place >= along ? NaN : (values[start + place * step] ?? NaN);
      if (Number.isNaN(value)) return;
      sum += sign * value;
      count += sign;
    };
    for (let place = 0; place < Math.min(REACH, along); place += 1) add(place, 1);
    for (let place = 0; place < along; place += 1) {
      add(place + REACH, 1);
      add(place - REACH - 1, -1);
      const at = start + place * step;
      means[at] = Number.isNaN(values[at]) || count === 0 ? NaN : sum / count;
    }
  }
  return means;
}

/** Pixels of the longer side of a small picture: sharp where it is shown an inch and a half wide. */
const SMALL_SIDE = 160;

const small = new WeakMap<SquaredPicture, PictureData>();

/**
 * A photograph small, as the mean of its pixels in linear light would be nearly: in CIELAB, which is near enough for a
 * stamp.
 */
export function smallPicture(picture: SquaredPicture): PictureData {
  const known = small.get(picture);
  if (known !== undefined) return known;
  const { width, height, lab } = picture;
  const part = Math.min(1, SMALL_SIDE / Math.max(width, height));
  const [across, down] = [width, height].map((side) => Math.max(1, Math.round(side * part))) as [
    number,
    number,
  ];
  const pixels = new Uint8Array(3 * across * down);
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      const mean = meanOf(lab, width, {
        left: Math.floor((column * width) / across),
        right: Math.ceil(((column + 1) * width) / across),
        top: Math.floor((row * height) / down),
        bottom: Math.ceil(((row + 1) * height) / down),
      });
      labToRgb(mean).forEach((channel, index) => {
        pixels[3 * (row * across + column) + index] = Math.round(255 * Math.min(1, Math.max(0, channel)));
      });
    }
  }
  const href = colourPicture(across, down, pixels);
  small.set(picture, href);
  return href;
}

function meanOf(
  lab: Float32Array,
  width: number,
  area: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number },
): Lab {
  let [l, a, b, count] = [0, 0, 0, 0];
  for (let y = area.top; y < area.bottom; y += 1) {
    for (let x = area.left; x < area.right; x += 1) {
      const at = 3 * (y * width + x);
      l += lab[at] ?? 0;
      a += lab[at + 1] ?? 0;
      b += lab[at + 2] ?? 0;
      count += 1;
    }
  }
  return count === 0 ? [0, 0, 0] : [l / count, a / count, b / count];
}

/** Whether a picture of colour differences tells more than that of values. */
function hasColours({ objects }: RecordFigures): boolean {
  return objects.some(({ against }) => against?.difference !== undefined);
}
