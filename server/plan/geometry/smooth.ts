import type { PathCommand } from './path.js';
import { type Point, distance, samePoint } from './point.js';

const CLOSED: PathCommand = { kind: 'Z' };

/**
 * Closed centripetal Catmull-Rom spline through the points, as a path of cubics. Points repeated in a row count once;
 * nothing is returned when fewer than three are left.
 *
 * The knots lie sqrt(distance) apart (Yuksel, Schaefer and Keyser, "Parameterization and applications of
 * Catmull-Rom curves", 2011: no cusp and no self-crossing within a piece). The tangent at a point is that of the
 * parabola through it and its two neighbours at those knots; a handle is a third of the tangent times the knot step.
 */
export function closedCurve(points: readonly Point[]): readonly PathCommand[] | undefined {
  const knots = withoutRepeats(points);
  const count = knots.length;
  if (count < 3) return undefined;
  const start = knots[0] as Point;
  const path: PathCommand[] = [{ kind: 'M', x: start.x, y: start.y }];
  let previous = knots[count - 1] as Point;
  let before = distance(previous, start);
  let from = start;
  let length = distance(from, knots[1] as Point);
  for (let at = 0; at < count; at++) {
    const next = at + 1 < count ? at + 1 : 0;
    const to = knots[next] as Point;
    const beyond = knots[next + 1 < count ? next + 1 : 0] as Point;
    const after = distance(to, beyond);
    const first = reach(before, length);
    const second = reach(after, length);
    path.push({
      kind: 'C',
      x1: handle(previous.x, from.x, to.x, before, length, first),
      y1: handle(previous.y, from.y, to.y, before, length, first),
      x2: handle(beyond.x, to.x, from.x, after, length, second),
      y2: handle(beyond.y, to.y, from.y, after, length, second),
      x: to.x,
      y: to.y,
    });
    previous = from;
    before = length;
    length = after;
    from = to;
  }
  path.push(CLOSED);
  return path;
}

/** What the handle at a knot is divided by, with the lengths from the knot before and to the next. */
function reach(before: number, after: number): number {
  const step = Math.sqrt(before);
  return 3 * step * (step + Math.sqrt(after));
}

/** One coordinate of the handle at `knot` on its way to `next`, coming from `previous`. */
function handle(
  previous: number,
  knot: number,
  next: number,
  before: number,
  after: number,
  divisor: number,
): number {
  if (divisor === 0) return knot;
  return knot + (before * (next - knot) + after * (knot - previous)) / divisor;
}

function withoutRepeats(points: readonly Point[]): readonly Point[] {
  if (!hasRepeats(points)) return points;
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (!last || !samePoint(last, point)) kept.push(point);
  }
  while (kept.length > 1) {
    const [first] = kept;
    const last = kept.at(-1);
    if (!first || !last || !samePoint(first, last)) break;
    kept.pop();
  }
  return kept;
}

/** Whether a point is the same as the one before it, the first as the last. */
function hasRepeats(points: readonly Point[]): boolean {
  let last = points.at(-1);
  for (const point of points) {
    if (samePoint(last as Point, point)) return true;
    last = point;
  }
  return false;
}
