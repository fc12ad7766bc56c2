import { encode as encodePng, decode as decodePng } from 'fast-png';
import { pngOf } from '../../server/drawing/png.js';
import { measure } from '../../server/measure/measure.js';
import { randomFrom } from '../../server/measure/photograph/test-support.js';
import { encode as encodeJpeg } from '../../server/photograph/codec/encode.js';
import { toHex } from '../../server/plan/colour/srgb.js';
import {
  type Corners,
  fromUnitSquare,
  type Homography,
  project,
} from '../../server/plan/geometry/homography.js';
import type { Point } from '../../server/plan/geometry/point.js';
import type { Plan } from '../../server/plan/plan.js';
import { withChunks } from '../photographs/made.js';

/** A picture in linear light, sRGB primaries, three numbers a pixel, 1 for white. */
export interface Light {
  readonly width: number;
  readonly height: number;
  readonly rgb: Float32Array;
}

/**
 * The canvas painted as a plan has it, drawn by another hand than the one that measures: as an SVG, painted by resvg.
 */
export async function paintedCanvas(
  plan: Plan,
  width: number,
  colourOf: (name: string) => string | undefined = () => undefined,
): Promise<Light> {
  const { canvas, coveringOrder, objects } = plan;
  const { layers } = measure(plan).areas;
  const shapes = coveringOrder.map((index, layer) => {
    const object = objects[index];
    const rings = (layers[layer]?.visible ?? []).map((ring) => `M${Array.from(ring).join(' ')}Z`).join('');
    const fill = colourOf(object?.name ?? '') ?? (object?.painted && toHex(object.painted)) ?? '#000000';
    // A hair of its own colour closes the seams between neighbours, which an edge smoothed twice leaves.
    return `<path d="${rings}" fill="${fill}" stroke="${fill}" stroke-width="${canvas.width / 2000}" fill-rule="evenodd"/>`;
  });
  const ground = toHex(canvas.ground.colour);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${canvas.width} ${canvas.height}" width="${canvas.width}" height="${canvas.height}"><rect width="100%" height="100%" fill="${ground}"/>${shapes.join('')}</svg>`;
  const painted = await pngOf(svg, width);
  if (!painted.ok) throw new Error(painted.reason);
  const { data, channels, width: columns, height: rows } = decodePng(painted.png);
  const rgb = new Float32Array(3 * columns * rows);
  for (let i = 0; i < rgb.length; i++) {
    rgb[i] = linear((data[channels * Math.floor(i / 3) + (i % 3)] as number) / 255);
  }
  return { width: columns, height: rows, rgb };
}

export interface Shot {
  readonly width: number;
  readonly height: number;
  /** Where the corners of the canvas come to lie, in pixels. */
  readonly corners: Corners;
  /** What the light does to red, green and blue. */
  readonly light?: readonly [number, number, number];
  /** A card of a neutral grey, which reflects 0.4 of the light: its middle, and so many pixels to each side. */
  readonly card?: { readonly at: Point; readonly reach: number };
  /** Standard deviation of the noise, in 255ths of the encoded channel. */
  readonly noise?: number;
}

/** What a camera sees of a canvas before a dull wall. */
export function taken(
  canvas: Light,
  { width, height, corners, light = [1, 1, 1], card, noise = 0 }: Shot,
): Light {
  const map = fromUnitSquare(corners);
  if (!map) throw new Error('These are no corners.');
  const back = inverse(map);
  const rgb = new Float32Array(3 * width * height);
  const random = noiseOf(noise);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const at = { x: column + 0.5, y: row + 0.5 };
      const seen =
        card && Math.abs(at.x - card.at.x) < card.reach && Math.abs(at.y - card.at.y) < card.reach
          ? GREY
          : (onCanvas(canvas, project(back, at)) ?? WALL);
      for (const channel of [0, 1, 2] as const) {
        const encoded = curve(seen[channel] * light[channel]) + random() / 255;
        rgb[3 * (row * width + column) + channel] = linear(Math.min(1, Math.max(0, encoded)));
      }
    }
  }
  return { width, height, rgb };
}

const GREY = [0.4, 0.4, 0.4] as const;
const WALL = [0.13, 0.12, 0.11] as const;

function onCanvas(
  { width, height, rgb }: Light,
  { x, y }: Point,
): readonly [number, number, number] | undefined {
  if (!(x >= 0 && x < 1 && y >= 0 && y < 1)) return undefined;
  const [across, down] = [x * width - 0.5, y * height - 0.5];
  const [left, top] = [Math.floor(across), Math.floor(down)];
  const [right, below] = [across - left, down - top];
  const from = (column: number, row: number): number =>
    3 * (Math.min(height - 1, Math.max(0, row)) * width + Math.min(width - 1, Math.max(0, column)));
  const places = [
    from(left, top),
    from(left + 1, top),
    from(left, top + 1),
    from(left + 1, top + 1),
  ] as const;
  const weights = [
    (1 - right) * (1 - below),
    right * (1 - below),
    (1 - right) * below,
    right * below,
  ] as const;
  const sample = (channel: number): number =>
    weights[0] * (rgb[places[0] + channel] as number) +
    weights[1] * (rgb[places[1] + channel] as number) +
    weights[2] * (rgb[places[2] + channel] as number) +
    weights[3] * (rgb[places[3] + channel] as number);
  return [sample(0), sample(1), sample(2)];
}

/** The same noise each time, nearly normal: the sum of three even ones. */
function noiseOf(deviation: number): () => number {
  const random = randomFrom(7);
  const even = (): number => 2 * random() - 1;
  return () => deviation * (even() + even() + even());
}

/**
 * The way back, by the adjugate of the matrix: the factor before it makes no difference to where a point comes to lie.
 */
export function inverse({ a, b, c, d, e, f, g, h, i }: Homography): Homography {
  return {
    a: e * i - f * h,
    b: c * h - b * i,
    c: b * f - c * e,
    d: f * g - d * i,
    e: a * i - c * g,
    f: c * d - a * f,
    g: d * h - e * g,
    h: b * g - a * h,
    i: a * e - b * d,
  };
}

/** The light of an sRGB channel, both from 0 to 1: IEC 61966-2-1. */
export function linear(encoded: number): number {
  return encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4;
}

/** The way back; light beyond 1 stays beyond it. */
export function curve(light: number): number {
  return light <= 0.0031308 ? 12.92 * Math.max(0, light) : 1.055 * light ** (1 / 2.4) - 0.055;
}

export function asJpeg(light: Light): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height } = light;
  const data = new Uint8ClampedArray(4 * width * height);
  const rgb = bytesOf(light);
  for (let pixel = 0; pixel < width * height; pixel++) {
    data.set([...rgb.subarray(3 * pixel, 3 * pixel + 3), 255], 4 * pixel);
  }
  return encodeJpeg({ width, height, data });
}

export function asPng(light: Light): Uint8Array {
  return encodePng({ width: light.width, height: light.height, channels: 3, depth: 8, data: bytesOf(light) });
}

/** A PNG in Display P3, which it says by number (PNG, third edition, cICP: primaries 12 and the curve of sRGB, 13). */
export function asDisplayP3(light: Light): Uint8Array {
  const rgb = new Float32Array(light.rgb.length);
  for (let i = 0; i < rgb.length; i += 3) {
    const colour = light.rgb.subarray(i, i + 3);
    P3_OF_SRGB.forEach((row, channel) => {
      rgb[i + channel] = row.reduce((sum, part, from) => sum + part * (colour[from] as number), 0);
    });
  }
  return withChunks(asPng({ ...light, rgb }), ['cICP', Uint8Array.of(12, 13, 0, 1)]);
}

/** Linear sRGB to linear Display P3; CSS Color 4, sample code for colour conversions, rounded. */
const P3_OF_SRGB: readonly (readonly number[])[] = [
  [0.8224622, 0.1775378, 0],
  [0.0331942, 0.9668058, 0],
  [0.0170826, 0.0723974, 0.9105199],
];

function bytesOf({ rgb }: Light): Uint8Array {
  return Uint8Array.from(rgb, (light) => Math.round(255 * Math.min(1, curve(light))));
}

/** The picture lying on its side, as a camera held upright stores it: to be turned by a quarter to the right. */
export function onItsSide({ width, height, rgb }: Light): Light {
  const turned = new Float32Array(rgb.length);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      // The top row of what is seen is the right column of what is stored (orientation 6: row 0 is the right side).
      const to = (width - 1 - column) * height + row;
      turned.set(rgb.subarray(3 * (row * width + column), 3 * (row * width + column) + 3), 3 * to);
    }
  }
  return { width: height, height: width, rgb: turned };
}
