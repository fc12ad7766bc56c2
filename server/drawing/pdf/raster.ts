import svgpath from 'svgpath';
import { encodedChannel, linearChannel } from '../../plan/colour/srgb-curve.js';
import type { Mark } from '../scene.js';

/** A picture in linear light: red, green and blue of each pixel from 0 to 1, row by row. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

/** Lines of light within a pixel, down; across, what is covered is exact. */
const LINES = 4;
/** Enough for shapes that are to be blurred. */
const CURVE_PIECES = 24;

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Lays the filled shapes over each other on white, `toPixels` turning their units into pixels. */
export function paintShapes(
  marks: readonly Mark[],
  { width, height }: Pick<Raster, 'width' | 'height'>,
  toPixels: (point: Point) => Point,
): Raster {
  const light = new Float32Array(width * height * 3).fill(1);
  for (const mark of marks) {
    if (mark.kind !== 'path' || mark.fill === undefined) continue;
    const rings = ringsOf(mark.d).map((ring) => ring.map(toPixels));
    const cover = coverOf(rings, mark.fillRule === 'evenodd', areaOf(rings, width, height));
    layOver(light, width, cover, linearOf(mark.fill));
  }
  return { width, height, light };
}

function ringsOf(d: string): readonly (readonly Point[])[] {
  const rings: Point[][] = [];
  const lineTo = (x: number, y: number) => void rings.at(-1)?.push({ x, y });
  svgpath(d)
    .abs()
    .unshort()
    .unarc()
    .iterate((segment, _index, x, y) => {
      switch (segment[0]) {
        case 'M':
          rings.push([{ x: segment[1], y: segment[2] }]);
          return;
        case 'L':
          lineTo(segment[1], segment[2]);
          return;
        case 'H':
          lineTo(segment[1], y);
          return;
        case 'V':
          lineTo(x, segment[1]);
          return;
        case 'C': {
          const [, x1, y1, x2, y2, x3, y3] = segment;
          for (let piece = 1; piece <= CURVE_PIECES; piece += 1) {
            const t = piece / CURVE_PIECES;
            lineTo(cubic(x, x1, x2, x3, t), cubic(y, y1, y2, y3, t));
          }
          return;
        }
        case 'Q': {
          const [, x1, y1, x2, y2] = segment;
          for (let piece = 1; piece <= CURVE_PIECES; piece += 1) {
            const t = piece / CURVE_PIECES;
            lineTo(quadratic(x, x1, x2, t), quadratic(y, y1, y2, t));
          }
          return;
        }
        default:
      }
    });
  return rings;
}

function cubic(a: number, b: number, c: number, d: number, t: number): number {
  const s = 1 - t;
  return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}

function quadratic(a: number, b: number, c: number, t: number): number {
  const s = 1 - t;
  return s * s * a + 2 * s * t * b + t * t * c;
}

interface Meeting {
  readonly x: number;
  /** 1 for an edge that runs down, -1 for one that runs up. */
  readonly turn: number;
}

/** Whole pixels of a raster. */
interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The pixels of a raster that rings reach: of a picture of many small shapes each costs no more than its own. */
function areaOf(rings: readonly (readonly Point[])[], width: number, height: number): Area {
  const reach = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const { x, y } of rings.flat()) {
    reach.left = Math.min(reach.left, x);
    reach.top = Math.min(reach.top, y);
    reach.right = Math.max(reach.right, x);
    reach.bottom = Math.max(reach.bottom, y);
  }
  const left = Math.max(0, Math.floor(reach.left));
  const top = Math.max(0, Math.floor(reach.top));
  return {
    left,
    top,
    width: Math.max(0, Math.min(width, Math.ceil(reach.right)) - left),
    height: Math.max(0, Math.min(height, Math.ceil(reach.bottom)) - top),
  };
}

interface Cover {
  readonly area: Area;
  /** How much of each pixel of the area is inside, from 0 to 1, row by row. */
  readonly parts: Float32Array;
}

function coverOf(rings: readonly (readonly Point[])[], isEvenOdd: boolean, area: Area): Cover {
  const lines: Meeting[][] = Array.from({ length: area.height * LINES }, () => []);
  for (const ring of rings) {
    ring.forEach((from, index) => {
      const to = ring[(index + 1) % ring.length] ?? from;
      const [upper, lower] = from.y < to.y ? [from, to] : [to, from];
      // Lines of light run through the middles of the slices of a pixel.
      const first = Math.max(0, Math.ceil((upper.y - area.top) * LINES - 0.5));
      const last = Math.min(lines.length - 1, Math.ceil((lower.y - area.top) * LINES - 0.5) - 1);
      for (let line = first; line <= last; line += 1) {
        const y = area.top + (line + 0.5) / LINES;
        const x = upper.x + ((y - upper.y) / (lower.y - upper.y)) * (lower.x - upper.x);
        lines[line]?.push({ x: x - area.left, turn: from.y < to.y ? 1 : -1 });
      }
    });
  }
  const parts = new Float32Array(area.width * area.height);
  lines.forEach((meetings, line) => {
    const row = Math.floor(line / LINES) * area.width;
    let winding = 0;
    let from = 0;
    for (const { x, turn } of meetings.sort((a, b) => a.x - b.x)) {
      if (winding === 0) from = x;
      winding += isEvenOdd ? (winding === 0 ? 1 : -1) : turn;
      if (winding === 0) coverSpan(parts, row, area.width, from, x);
    }
  });
  return { area, parts };
}

function coverSpan(parts: Float32Array, row: number, width: number, from: number, to: number): void {
  const left = Math.max(0, from);
  const right = Math.min(width, to);
  for (let x = Math.floor(left); x < right; x += 1) {
    const inside = Math.min(right, x + 1) - Math.max(left, x);
    parts[row + x] = (parts[row + x] ?? 0) + inside / LINES;
  }
}

/** @param width of the raster */
function layOver(
  light: Float32Array,
  width: number,
  { area, parts }: Cover,
  colour: readonly number[],
): void {
  parts.forEach((part, index) => {
    if (part === 0) return;
    const column = area.left + (index % area.width);
    const row = area.top + Math.floor(index / area.width);
    colour.forEach((channel, along) => {
      const at = 3 * (row * width + column) + along;
      const below = light[at] ?? 0;
      light[at] = below + Math.min(1, part) * (channel - below);
    });
  });
}

function linearOf(hex: string): readonly number[] {
  return [1, 3, 5].map((at) => linearChannel(Number.parseInt(hex.slice(at, at + 2), 16) / 255));
}

/** Light as bytes of sRGB. */
export function bytesOf({ light }: Raster): Uint8Array {
  return Uint8Array.from(light, (channel) =>
    Math.round(255 * Math.min(1, Math.max(0, encodedChannel(channel)))),
  );
}
