import { t } from '../../../grammar/localised.js';
import type { SketchLength, SketchPlace } from '../../../server/drawing/scene.js';
import {
  type Corners,
  type Homography,
  fromUnitSquare,
  project,
} from '../../../server/plan/geometry/homography.js';
import type { Point } from '../../../server/plan/geometry/point.js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** How a sketch is squared up. */
export interface Squaring {
  /** The part of the sketch that is needed, in its pixels, and the size that it is reduced to first. */
  readonly part: Size & Point;
  readonly reduced: Size;
  /** The size of what comes out. */
  readonly out: Size;
  /** From the unit square of the canvas to the pixels of the reduced part. */
  readonly map: Homography;
}

export type SquaringAnswer =
  | ({ readonly ok: true } & Squaring)
  /** Shown to the painter: a sentence in plain words. */
  | { readonly ok: false; readonly reason: string };

/** The longest side that comes out, pixels: enough for a page and for twice its size. */
const LONGEST_OUT = 2_000;
/** Corners may lie a little beside the sketch, where a scan has cut one off; farther off it is a slip. */
export const BESIDE = 0.5;

/**
 * How the part of a sketch between four corners is brought onto the canvas.
 * @param corners of the canvas in the sketch; none when they are the sketch's own
 * @param across how many times as wide as high the canvas is
 */
export function squaringOf(size: Size, corners: readonly SketchPlace[], across: number): SquaringAnswer {
  const [p0, p1, p2, p3, ...more] = corners.length === 0 ? ownCorners(size) : placesIn(size, corners);
  if (p0 === undefined || p1 === undefined || p2 === undefined || p3 === undefined || more.length > 0) {
    return refused(t('A canvas has four corners; `corners` gives {0}.', corners.length));
  }
  const quadrangle: Corners = [p0, p1, p2, p3];
  if (quadrangle.some(({ x, y }) => isFarOff(x, size.width) || isFarOff(y, size.height))) {
    return refused(
      t('A corner lies far beside the sketch, which is {0} × {1} pixels.', size.width, size.height),
    );
  }
  if (fromUnitSquare(quadrangle) === undefined) {
    return refused(
      t('The corners do not go round a sheet: upper left, upper right, lower right, lower left.'),
    );
  }

  const part = boxRound(quadrangle, size);
  if (part === undefined) return refused(t('The corners lie beside the sketch.'));
  const longest = Math.max(
    ...quadrangle.map((corner, index) => length(corner, quadrangle[(index + 1) % 4] ?? corner)),
  );
  const side = Math.max(1, Math.min(LONGEST_OUT, Math.round(longest)));
  const out =
    across >= 1
      ? { width: side, height: Math.max(1, Math.round(side / across)) }
      : { width: Math.max(1, Math.round(side * across)), height: side };
  // Taken point by point, a sketch of many more pixels than come out would lose its fine lines.
  const scale = Math.min(1, side / longest, (2 * LONGEST_OUT) / Math.max(part.width, part.height));
  const reduced = {
    width: Math.max(1, Math.round(part.width * scale)),
    height: Math.max(1, Math.round(part.height * scale)),
  };
  const into = ({ x, y }: Point): Point => ({
    x: ((x - part.x) * reduced.width) / part.width,
    y: ((y - part.y) * reduced.height) / part.height,
  });
  const map = fromUnitSquare([into(p0), into(p1), into(p2), into(p3)]);
  return map === undefined
    ? refused(t('The corners lie too near to each other.'))
    : { ok: true, part, reduced, out, map };
}

export interface Pixels extends Size {
  /** Red, green, blue and how opaque it is, row by row. */
  readonly data: Uint8ClampedArray;
}

/**
 * A sketch brought onto the canvas: each pixel that comes out is mixed from the four round its place in the sketch.
 * What lies beside the sketch is left clear.
 */
export function squareUp(
  { data, width, height }: Pixels,
  map: Homography,
  out: Size,
): Uint8ClampedArray<ArrayBuffer> {
  const made = new Uint8ClampedArray(out.width * out.height * 4);
  for (let row = 0; row < out.height; row++) {
    for (let column = 0; column < out.width; column++) {
      const at = project(map, { x: (column + 0.5) / out.width, y: (row + 0.5) / out.height });
      if (!(at.x >= 0 && at.y >= 0 && at.x <= width && at.y <= height)) continue;
      // The middle of the first pixel lies half a pixel in.
      const x = Math.min(width - 1, Math.max(0, at.x - 0.5));
      const y = Math.min(height - 1, Math.max(0, at.y - 0.5));
      const [left, top] = [Math.floor(x), Math.floor(y)];
      const [right, bottom] = [Math.min(width - 1, left + 1), Math.min(height - 1, top + 1)];
      const [partX, partY] = [x - left, y - top];
      const upperLeft = 4 * (top * width + left);
      const upperRight = 4 * (top * width + right);
      const lowerLeft = 4 * (bottom * width + left);
      const lowerRight = 4 * (bottom * width + right);
      const to = 4 * (row * out.width + column);
      for (let channel = 0; channel < 4; channel++) {
        const upper = mixed(data[upperLeft + channel], data[upperRight + channel], partX);
        const lower = mixed(data[lowerLeft + channel], data[lowerRight + channel], partX);
        made[to + channel] = upper + (lower - upper) * partY;
      }
    }
  }
  return made;
}

function mixed(one = 0, other = 0, part: number): number {
  return one + (other - one) * part;
}

/** Places of a sketch in its pixels. */
export function placesIn({ width, height }: Size, corners: readonly SketchPlace[]): readonly Point[] {
  return corners.map(({ across, down }) => ({ x: along(across, width), y: along(down, height) }));
}

function along({ value, in: unit }: SketchLength, side: number): number {
  return unit === 'pixels' ? value : value * side;
}

/** Upper left, upper right, lower right, lower left. */
export function ownCorners({ width, height }: Size): readonly Point[] {
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
}

function isFarOff(place: number, side: number): boolean {
  return place < -BESIDE * side || place > (1 + BESIDE) * side;
}

/** The whole pixels round the corners that the sketch has. */
function boxRound(corners: Corners, { width, height }: Size): (Size & Point) | undefined {
  const x = Math.max(0, Math.floor(Math.min(...corners.map((corner) => corner.x))));
  const y = Math.max(0, Math.floor(Math.min(...corners.map((corner) => corner.y))));
  const right = Math.min(width, Math.ceil(Math.max(...corners.map((corner) => corner.x))));
  const bottom = Math.min(height, Math.ceil(Math.max(...corners.map((corner) => corner.y))));
  return right > x && bottom > y ? { x, y, width: right - x, height: bottom - y } : undefined;
}

function length(from: Point, to: Point): number {
  return Math.hypot(to.x - from.x, to.y - from.y);
}

function refused(reason: string): { readonly ok: false; readonly reason: string } {
  return { ok: false, reason };
}
