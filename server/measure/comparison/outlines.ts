import type { Outline, PathCommand } from '../../plan/geometry/outline.js';
import { pointsOf, ringPoints, signedArea } from '../../plan/geometry/path.js';
import { boxCentre, distance, type Point } from '../../plan/geometry/point.js';
import { LEAST_MOVE, type Move, moveBetween } from './move.js';

/** How an outline became another. Lengths in units of the canvas; what did not change is missing. */
export interface OutlineChange {
  /** Of its middle. */
  readonly move?: Move;
  /** Degrees clockwise. */
  readonly turn?: number;
  /** How many times as wide and as high. */
  readonly scale?: { readonly across: number; readonly down: number };
  /** It has another shape, which no moving, turning and sizing makes of it. */
  readonly isReshaped: boolean;
}

export const UNCHANGED: OutlineChange = { isReshaped: false };

/** A shape that was drawn anew has moved when its middle has by this part of the diagonal. */
const MOVED_RESHAPED = 0.01;
const LEAST_TURN_DEGREES = 0.5;
const LEAST_SCALE = 0.005;
/** An outline of more points is not tried from each of them. */
const MOST_TURNED_ROUND = 64;

/**
 * What must be done to one outline to have another: moving, turning and sizing where they make it, worked out by least
 * squares from the points of the paths, else the move of the middle of the area. Where in the outline its drawing
 * begins, and which way round it runs, makes no difference to a shape of straight sides.
 */
export function compareOutlines(earlier: Outline, later: Outline, diagonal: number): OutlineChange {
  // A shape that fits so well is the same.
  const most = LEAST_MOVE * diagonal;
  const middle = boxCentre(earlier.box);
  const fits = [...correspondences(earlier, later)].flatMap(
    ([from, to]) => similarity(from, to, most) ?? stretch(from, to, most) ?? [],
  );
  // A square that is drawn from another corner has not been turned.
  const [best] = fits.sort((fit, other) => Math.abs(fit.turn) - Math.abs(other.turn));
  if (best !== undefined) return told(best, middle, most);
  const move = moveBetween(middleOf(earlier), middleOf(later), MOVED_RESHAPED * diagonal);
  return { isReshaped: true, ...(move ? { move } : {}) };
}

/** A change of places by which the points of one outline come to lie on those of another. */
interface Fit {
  readonly at: (place: Point) => Point;
  readonly turn: number;
  readonly across: number;
  readonly down: number;
}

function told({ at, turn, across, down }: Fit, middle: Point, most: number): OutlineChange {
  const move = moveBetween(middle, at(middle), most);
  const isScaled = Math.abs(across - 1) > LEAST_SCALE || Math.abs(down - 1) > LEAST_SCALE;
  return {
    isReshaped: false,
    ...(move ? { move } : {}),
    ...(Math.abs(turn) > LEAST_TURN_DEGREES ? { turn } : {}),
    ...(isScaled ? { scale: { across, down } } : {}),
  };
}

/** Points that may belong together, the likeliest first; none for outlines that are drawn in other steps. */
function* correspondences(
  earlier: Outline,
  later: Outline,
): Generator<readonly [readonly Point[], readonly Point[]]> {
  const [one, other] = [pointsOf(earlier.path), pointsOf(later.path)];
  const isAlike =
    one.length > 1 && kindsOf(earlier.path) === kindsOf(later.path) && one.length === other.length;
  if (isAlike) yield [one, other];
  const [from, to] = [onlyRing(earlier), onlyRing(later)];
  if (from === undefined || from.length !== to?.length || from.length > MOST_TURNED_ROUND) return;
  for (const ring of [to, [...to].reverse()])
    for (let first = 0; first < ring.length; first++)
      yield [from, [...ring.slice(first), ...ring.slice(0, first)]];
}

function kindsOf(path: readonly PathCommand[]): string {
  return path.map(({ kind }) => kind).join('');
}

/** The corners of a shape of straight sides in one piece. */
function onlyRing({ path, rings: [ring, ...more] }: Outline): readonly Point[] | undefined {
  if (ring === undefined || more.length > 0 || path.some(({ kind }) => kind === 'C')) return undefined;
  return ringPoints(ring);
}

/** Moved, turned and sized alike both ways: z' = a z + b in complex numbers, by least squares. */
function similarity(from: readonly Point[], to: readonly Point[], most: number): Fit | undefined {
  const [p, q] = [mean(from), mean(to)];
  let [real, imaginary, size] = [0, 0, 0];
  from.forEach(({ x, y }, index) => {
    const [dx, dy] = [x - p.x, y - p.y];
    const [ex, ey] = [(to[index]?.x ?? 0) - q.x, (to[index]?.y ?? 0) - q.y];
    real += dx * ex + dy * ey;
    imaginary += dx * ey - dy * ex;
    size += dx * dx + dy * dy;
  });
  if (size === 0) return undefined;
  const [a, b] = [real / size, imaginary / size];
  const at = ({ x, y }: Point): Point => ({
    x: q.x + a * (x - p.x) - b * (y - p.y),
    y: q.y + b * (x - p.x) + a * (y - p.y),
  });
  const scale = Math.hypot(a, b);
  const turn = (Math.atan2(b, a) * 180) / Math.PI;
  return fits(at, from, to, most) ? { at, turn, across: scale, down: scale } : undefined;
}

/** Moved, and sized in each direction by itself. */
function stretch(from: readonly Point[], to: readonly Point[], most: number): Fit | undefined {
  const [p, q] = [mean(from), mean(to)];
  const ratio = (of: 'x' | 'y'): number => {
    let [product, size] = [0, 0];
    from.forEach((point, index) => {
      product += (point[of] - p[of]) * ((to[index]?.[of] ?? 0) - q[of]);
      size += (point[of] - p[of]) ** 2;
    });
    return size === 0 ? 1 : product / size;
  };
  const [across, down] = [ratio('x'), ratio('y')];
  if (across <= 0 || down <= 0) return undefined;
  const at = ({ x, y }: Point): Point => ({ x: q.x + across * (x - p.x), y: q.y + down * (y - p.y) });
  return fits(at, from, to, most) ? { at, turn: 0, across, down } : undefined;
}

function fits(
  at: (place: Point) => Point,
  from: readonly Point[],
  to: readonly Point[],
  most: number,
): boolean {
  return from.every((point, index) => distance(at(point), to[index] ?? point) <= most);
}

function mean(points: readonly Point[]): Point {
  const sum = points.reduce((whole, { x, y }) => ({ x: whole.x + x, y: whole.y + y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

/** The middle of the area of its largest piece; of a shape without area that of the box. */
export function middleOf({ rings, box }: Outline): Point {
  const [largest] = [...rings].sort((one, other) => Math.abs(signedArea(other)) - Math.abs(signedArea(one)));
  const area = largest === undefined ? 0 : signedArea(largest);
  if (largest === undefined || area === 0) return boxCentre(box);
  const points = ringPoints(largest);
  const [origin = { x: 0, y: 0 }] = points;
  let [sumX, sumY] = [0, 0];
  points.forEach((point, index) => {
    const next = points[(index + 1) % points.length] ?? point;
    const [ax, ay, bx, by] = [point.x - origin.x, point.y - origin.y, next.x - origin.x, next.y - origin.y];
    const cross = ax * by - bx * ay;
    sumX += (ax + bx) * cross;
    sumY += (ay + by) * cross;
  });
  return { x: origin.x + sumX / (6 * area), y: origin.y + sumY / (6 * area) };
}
