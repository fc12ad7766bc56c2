import { flattenPath } from '../../plan/geometry/flatten.js';
import type { Outline, PathCommand, Ring } from '../../plan/geometry/outline.js';
import { signedArea } from '../../plan/geometry/path.js';
import { type Point, boxDiagonal, boxOfPoints, distance } from '../../plan/geometry/point.js';

/** What a place of a shape is to the painter who looks for it. */
export type PlaceKind =
  'corner' | 'centre' | 'end of an axis' | 'leftmost' | 'topmost' | 'rightmost' | 'lowest' | 'on the curve';

export interface ShapePoint {
  readonly at: Point;
  readonly kind: PlaceKind;
}

/** One closed shape of an outline, by the places that carry it; canvas units. Places may lie off the canvas. */
export type ShapePiece = {
  /** Flattened, clockwise, from its topmost point. */
  readonly border: readonly Point[];
  readonly area: number;
  readonly points: readonly ShapePoint[];
} & (
  | { readonly form: 'corners' | 'curve' }
  | { readonly form: 'circle'; readonly radius: number }
  /** Whole axes, the long one first; `turn` in degrees clockwise, from -90 to 90, of the long axis. */
  | { readonly form: 'ellipse'; readonly axes: readonly [number, number]; readonly turn: number }
);

/** Places of one shape: more than these can't be told apart at an easel. */
export const MOST_POINTS = 12;
/** A border nearer than this to the straight lines between its places, as a part of the shape's diagonal, needs no more. */
const CLOSE_ENOUGH = 0.01;
/** A border that turns by more than this at a point has a corner there, degrees. */
const CORNER = 30;
/** How far the flattened border stands off the curve, part of the shape's diagonal. */
const FLATNESS = 2e-4;
/** Part of its size by which a round shape may miss an ellipse. */
const ROUND = 2e-3;

const known = new WeakMap<Outline, readonly ShapePiece[]>();

/** The closed shapes of an outline, the largest first; kept as long as the outline is. */
export function piecesOf(outline: Outline): readonly ShapePiece[] {
  const before = known.get(outline);
  if (before !== undefined) return before;
  const pieces = subpathsOf(outline.path)
    .flatMap((path) => pieceOf(path) ?? [])
    .map((piece, index) => ({ piece, index }))
    .sort((a, b) => b.piece.area - a.piece.area || a.index - b.index)
    .map(({ piece }) => piece);
  known.set(outline, pieces);
  return pieces;
}

function subpathsOf(path: readonly PathCommand[]): readonly (readonly PathCommand[])[] {
  const subpaths: PathCommand[][] = [];
  for (const command of path) {
    if (command.kind === 'M' || subpaths.length === 0) subpaths.push([]);
    subpaths.at(-1)?.push(command);
  }
  return subpaths;
}

function pieceOf(path: readonly PathCommand[]): ShapePiece | undefined {
  const drawn = path.flatMap((command) => (command.kind === 'Z' ? [] : [{ x: command.x, y: command.y }]));
  const size = boxDiagonal(boxOfPoints(drawn));
  const [ring] = flattenPath(path, size * FLATNESS);
  if (ring === undefined || ring.length < 6) return undefined;
  const border = clockwise(ring);
  const area = Math.abs(signedArea(ring));
  const round = roundOf(path);
  if (round !== undefined) return { border, area, ...round };
  const isStraight = path.every(({ kind }) => kind !== 'C');
  const points = isStraight ? cornersOf(border) : carryingPoints(border);
  return { form: isStraight ? 'corners' : 'curve', border, area, points };
}

/** From the topmost point, of several the leftmost, the same way round whichever way it was drawn. */
function clockwise(ring: Ring): readonly Point[] {
  const points = pointsOf(ring);
  if (signedArea(ring) < 0) points.reverse();
  let first = 0;
  points.forEach(({ x, y }, index) => {
    const top = points[first];
    if (top !== undefined && (y < top.y || (y === top.y && x < top.x))) first = index;
  });
  return [...points.slice(first), ...points.slice(0, first)];
}

function pointsOf(ring: Ring): Point[] {
  const points: Point[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) points.push({ x: ring[i] ?? 0, y: ring[i + 1] ?? 0 });
  return points;
}

/** All corners where they are few; points along a straight side are none. */
function cornersOf(border: readonly Point[]): readonly ShapePoint[] {
  const corners = border.filter((_, index) => Math.abs(turnAt(border, index)) > 0.1);
  if (corners.length <= MOST_POINTS) return corners.map((at) => ({ at, kind: 'corner' }));
  return carryingPoints(corners).map(({ at }) => ({ at, kind: 'corner' }));
}

/**
 * The places that carry a shape: its outermost points, then one by one the point of the border that is farthest from the
 * straight lines between those chosen already, until none is far or there are `MOST_POINTS`. This is the line
 * simplification of U. Ramer (1972) and of D. H. Douglas and T. K. Peucker, Cartographica 10 (1973), taken by importance.
 */
function carryingPoints(border: readonly Point[]): readonly ShapePoint[] {
  const outermost = [
    farthest(border, ({ y }) => -y),
    farthest(border, ({ x }) => x),
    farthest(border, ({ y }) => y),
    farthest(border, ({ x }) => -x),
  ] as const;
  const chosen = new Set<number>(outermost);
  const close = CLOSE_ENOUGH * boxDiagonal(boxOfPoints(border));
  let stretches = stretchesOf(
    [...chosen].sort((a, b) => a - b),
    border,
  );
  while (chosen.size < MOST_POINTS) {
    const worst = stretches.reduce((one, other) => (other.off > one.off ? other : one));
    if (worst.off <= close) break;
    chosen.add(worst.at);
    stretches = stretches.flatMap((stretch) =>
      stretch === worst
        ? [measured(stretch.from, stretch.at, border), measured(stretch.at, stretch.to, border)]
        : [stretch],
    );
  }
  return [...chosen]
    .sort((a, b) => a - b)
    .flatMap((index): readonly ShapePoint[] => {
      const at = border[index];
      return at === undefined ? [] : [{ at, kind: kindOf(index, outermost, border) }];
    });
}

function kindOf(
  index: number,
  [top, right, bottom, left]: readonly [number, number, number, number],
  border: readonly Point[],
): PlaceKind {
  if (Math.abs(turnAt(border, index)) > CORNER) return 'corner';
  if (index === top) return 'topmost';
  if (index === bottom) return 'lowest';
  if (index === left) return 'leftmost';
  return index === right ? 'rightmost' : 'on the curve';
}

function farthest(border: readonly Point[], along: (point: Point) => number): number {
  let best = 0;
  let most = -Infinity;
  border.forEach((point, index) => {
    if (along(point) > most) {
      most = along(point);
      best = index;
    }
  });
  return best;
}

/** A stretch of the border between two chosen points, and the point of it that is farthest off their line. */
interface Stretch {
  readonly from: number;
  /** Beyond the last index of the border where it runs on to its beginning. */
  readonly to: number;
  readonly at: number;
  readonly off: number;
}

function stretchesOf(chosen: readonly number[], border: readonly Point[]): readonly Stretch[] {
  return chosen.map((from, index) =>
    measured(from, chosen[index + 1] ?? (chosen[0] ?? 0) + border.length, border),
  );
}

function measured(from: number, to: number, border: readonly Point[]): Stretch {
  const count = border.length;
  const wrapped = to <= from ? to + count : to;
  const start = border[from % count];
  const end = border[wrapped % count];
  let at = from;
  let off = 0;
  if (start !== undefined && end !== undefined) {
    for (let index = from + 1; index < wrapped; index++) {
      const point = border[index % count];
      const away = point === undefined ? 0 : distanceToLine(point, start, end);
      if (away > off) {
        off = away;
        at = index;
      }
    }
  }
  return { from, to: wrapped, at: at % count, off };
}

function distanceToLine(point: Point, from: Point, to: Point): number {
  const length = distance(from, to);
  if (length === 0) return distance(point, from);
  const along = ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length ** 2;
  const part = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - part * (to.x - from.x), point.y - from.y - part * (to.y - from.y));
}

/** By how much the border turns at a point, degrees. */
function turnAt(border: readonly Point[], index: number): number {
  const count = border.length;
  const point = border[index];
  const before = border[(index + count - 1) % count];
  const after = border[(index + 1) % count];
  if (point === undefined || before === undefined || after === undefined) return 0;
  const one = { x: point.x - before.x, y: point.y - before.y };
  const two = { x: after.x - point.x, y: after.y - point.y };
  return (Math.atan2(one.x * two.y - one.y * two.x, one.x * two.x + one.y * two.y) * 180) / Math.PI;
}

type Round =
  Extract<ShapePiece, { form: 'circle' | 'ellipse' }> extends infer Each
    ? Each extends unknown
      ? Omit<Each, 'border' | 'area'>
      : never
    : never;

/**
 * A path of four or eight cubics that is an ellipse, as round shapes are drawn: its ends lie where those of two conjugate
 * radii put them. Its axes follow from these in closed form, as those of the matrix that makes it of a circle.
 */
function roundOf(path: readonly PathCommand[]): Round | undefined {
  const [start, ...rest] = path;
  const curves = rest.flatMap((command) => (command.kind === 'C' ? [command] : []));
  const isClosed = rest.every(({ kind }) => kind === 'C' || kind === 'Z');
  if (start?.kind !== 'M' || !isClosed || (curves.length !== 4 && curves.length !== 8)) return undefined;
  const ends: readonly Point[] = [start, ...curves];
  const quarter = curves.length / 4;
  const [right, lower, left, upper] = [0, 1, 2, 3].map((each) => ends[each * quarter]);
  if (right === undefined || lower === undefined || left === undefined || upper === undefined)
    return undefined;
  const centre = { x: (right.x + left.x) / 2, y: (right.y + left.y) / 2 };
  const u = { x: right.x - centre.x, y: right.y - centre.y };
  const v = { x: lower.x - centre.x, y: lower.y - centre.y };
  const size = Math.hypot(u.x, u.y, v.x, v.y);
  const at = (angle: number): Point => ({
    x: centre.x + Math.cos(angle) * u.x + Math.sin(angle) * v.x,
    y: centre.y + Math.cos(angle) * u.y + Math.sin(angle) * v.y,
  });
  const step = (2 * Math.PI) / curves.length;
  const isRound =
    size > 0 &&
    curves.every((curve, index) => {
      const from = ends[index];
      return (
        from !== undefined &&
        distance(curve, at((index + 1) * step)) < ROUND * size &&
        distance(middleOf(from, curve), at((index + 0.5) * step)) < ROUND * size
      );
    });
  if (!isRound) return undefined;
  // The singular values of the matrix with the columns u and v are the half axes.
  const angle = 0.5 * Math.atan2(2 * (u.x * v.x + u.y * v.y), u.x ** 2 + u.y ** 2 - v.x ** 2 - v.y ** 2);
  const [one, two] = [at(angle), at(angle + Math.PI / 2)];
  const [long, short] =
    distance(centre, one) >= distance(centre, two) ? ([one, two] as const) : ([two, one] as const);
  const [a, b] = [distance(centre, long), distance(centre, short)];
  const opposite = ({ x, y }: Point): Point => ({ x: 2 * centre.x - x, y: 2 * centre.y - y });
  if (a - b < ROUND * a) {
    const radius = (a + b) / 2;
    return {
      form: 'circle',
      radius,
      points: [
        { at: centre, kind: 'centre' },
        { at: { x: centre.x, y: centre.y - radius }, kind: 'topmost' },
        { at: { x: centre.x + radius, y: centre.y }, kind: 'rightmost' },
        { at: { x: centre.x, y: centre.y + radius }, kind: 'lowest' },
        { at: { x: centre.x - radius, y: centre.y }, kind: 'leftmost' },
      ],
    };
  }
  const slope = (Math.atan2(long.y - centre.y, long.x - centre.x) * 180) / Math.PI;
  const ends4 = [long, short, opposite(long), opposite(short)];
  return {
    form: 'ellipse',
    axes: [2 * a, 2 * b],
    turn: slope > 90 ? slope - 180 : slope <= -90 ? slope + 180 : slope,
    points: [
      { at: centre, kind: 'centre' },
      ...clockwiseRound(ends4, centre).map((end): ShapePoint => ({ at: end, kind: 'end of an axis' })),
    ],
  };
}

/** The middle of a cubic. */
function middleOf(from: Point, curve: Extract<PathCommand, { kind: 'C' }>): Point {
  return {
    x: (from.x + 3 * curve.x1 + 3 * curve.x2 + curve.x) / 8,
    y: (from.y + 3 * curve.y1 + 3 * curve.y2 + curve.y) / 8,
  };
}

/** From the one at the top on. */
function clockwiseRound(points: readonly Point[], centre: Point): readonly Point[] {
  const fromTop = ({ x, y }: Point) => {
    const angle = Math.atan2(x - centre.x, centre.y - y);
    return angle < -Math.PI / 4 - 1e-9 ? angle + 2 * Math.PI : angle;
  };
  return [...points].sort((one, other) => fromTop(one) - fromTop(other));
}
