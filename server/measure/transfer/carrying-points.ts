import { type Point, boxDiagonal, boxOfPoints } from '../../plan/geometry/point.js';
import { distanceToStretch } from '../../plan/leads-simplify.js';
import type { PlaceKind, ShapePoint } from './shape-points.js';

/** Places of one shape: more than these can't be told apart at an easel. */
const MOST_POINTS = 12;
/**
 * A border nearer than this to the straight lines between its places, as a part of the shape's diagonal, needs no more.
 */
const CLOSE_ENOUGH = 0.01;
/** A border that turns by more than this at a point has a corner there, degrees. */
const CORNER = 30;

/** All corners where they are few; points along a straight side are none. */
export function cornersOf(border: readonly Point[]): readonly ShapePoint[] {
  const corners = border.filter((_, index) => Math.abs(turnAt(border, index)) > 0.1);
  if (corners.length <= MOST_POINTS) return corners.map((at) => ({ at, kind: 'corner' }));
  return carryingPoints(corners).map(({ at }) => ({ at, kind: 'corner' }));
}

/**
 * The places that carry a shape: its outermost points, then one by one the point of the border that is farthest from
 * the straight lines between those chosen already, until none is far or there are `MOST_POINTS`. This is the line
 * simplification of U. Ramer (1972) and of D. H. Douglas and T. K. Peucker, Cartographica 10 (1973), taken by
 * importance.
 */
export function carryingPoints(border: readonly Point[]): readonly ShapePoint[] {
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
      const away = point === undefined ? 0 : distanceToStretch(point, start, end);
      if (away > off) {
        off = away;
        at = index;
      }
    }
  }
  return { from, to: wrapped, at: at % count, off };
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
