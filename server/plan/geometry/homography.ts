import { type Point, cross, toward } from './point.js';

/**
 * A map of the plane that keeps straight lines straight, as a camera does with a flat picture: a matrix of three rows,
 * (x', y') = (a x + b y + c, d x + e y + f) / (g x + h y + i).
 */
export interface Homography {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
  readonly g: number;
  readonly h: number;
  readonly i: number;
}

/** Going round from the upper left: upper left, upper right, lower right, lower left. */
export type Corners = readonly [Point, Point, Point, Point];

/** A corner this near to the line through its neighbours, as a part of the sides there, is no corner. */
const FLAT = 1e-6;

/**
 * The map of the unit square, (0, 0) to (1, 1), onto four corners; `undefined` where they are not those of a quadrangle
 * that bulges outwards, which no flat picture looks like.
 *
 * In closed form: P. S. Heckbert, Fundamentals of Texture Mapping and Image Warping (1989), section 2.2.3.
 */
export function fromUnitSquare(corners: Corners): Homography | undefined {
  if (!isConvex(corners)) return undefined;
  const [p0, p1, p2, p3] = corners;
  const sum = { x: p0.x - p1.x + p2.x - p3.x, y: p0.y - p1.y + p2.y - p3.y };
  const one = { x: p1.x - p2.x, y: p1.y - p2.y };
  const two = { x: p3.x - p2.x, y: p3.y - p2.y };
  const whole = cross(one, two);
  const g = cross(sum, two) / whole;
  const h = cross(one, sum) / whole;
  return {
    a: p1.x - p0.x + g * p1.x,
    b: p3.x - p0.x + h * p3.x,
    c: p0.x,
    d: p1.y - p0.y + g * p1.y,
    e: p3.y - p0.y + h * p3.y,
    f: p0.y,
    g,
    h,
    i: 1,
  };
}

/** Where the map puts a point; infinite on the line that it sends to infinity. */
export function project({ a, b, c, d, e, f, g, h, i }: Homography, { x, y }: Point): Point {
  const depth = g * x + h * y + i;
  return { x: (a * x + b * y + c) / depth, y: (d * x + e * y + f) / depth };
}

/** Whether one turns the same way at every corner, and turns at each. */
function isConvex(corners: Corners): boolean {
  const turns = corners.map((corner, index) => {
    const before = toward(corners[(index + 3) % 4] as Point, corner);
    const after = toward(corner, corners[(index + 1) % 4] as Point);
    return cross(before, after) / (Math.hypot(before.x, before.y) * Math.hypot(after.x, after.y));
  });
  return turns.every((turn) => turn > FLAT) || turns.every((turn) => turn < -FLAT);
}
