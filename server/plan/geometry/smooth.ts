import { type Point, distance, samePoint } from './point.js';

/** A closed chain of cubics: from `start`, each to the start of the next, the last back to `start`. */
export interface ClosedCurve {
  readonly start: Point;
  readonly pieces: readonly { readonly handle1: Point; readonly handle2: Point; readonly to: Point }[];
}

/**
 * Closed centripetal Catmull-Rom spline through the points, as cubics. Points repeated in a row count once;
 * nothing is returned when fewer than three are left.
 *
 * The knots lie sqrt(distance) apart (Yuksel, Schaefer and Keyser, "Parameterization and applications of
 * Catmull-Rom curves", 2011: no cusp and no self-crossing within a piece). The tangent at a point is that of the
 * parabola through it and its two neighbours at those knots; a handle is a third of the tangent times the knot step.
 */
export function closedCurve(points: readonly Point[]): ClosedCurve | undefined {
  const knots = withoutRepeats(points);
  const start = knots[0];
  if (!start || knots.length < 3) return undefined;
  const at = (index: number) => knots[(index + knots.length) % knots.length] ?? start;
  const pieces = knots.map((from, index) => {
    const to = at(index + 1);
    return {
      handle1: handle(at(index - 1), from, to),
      handle2: handle(at(index + 2), to, from),
      to,
    };
  });
  return { start, pieces };
}

/** The handle at `knot` on its way to `next`, coming from `previous`. */
function handle(previous: Point, knot: Point, next: Point): Point {
  const before = distance(previous, knot);
  const after = distance(knot, next);
  const stepBefore = Math.sqrt(before);
  const stepAfter = Math.sqrt(after);
  const divisor = 3 * stepBefore * (stepBefore + stepAfter);
  if (divisor === 0) return knot;
  return {
    x: knot.x + (before * (next.x - knot.x) + after * (knot.x - previous.x)) / divisor,
    y: knot.y + (before * (next.y - knot.y) + after * (knot.y - previous.y)) / divisor,
  };
}

function withoutRepeats(points: readonly Point[]): readonly Point[] {
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
