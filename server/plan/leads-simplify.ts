import { type Point, distance, samePoint } from './geometry/point.js';

/** Most points of a line that is left. */
const MOST_POINTS = 48;
/** Distances that differ by less than this part of the tolerance are the same. */
const SAME = 1e-3;

/**
 * A line with fewer points that strays no farther than the tolerance (canvas units) from the one given, as Ramer 1972
 * and Douglas and Peucker 1973; the tolerance is doubled until at most 48 points are left. Its ends are kept.
 */
export function simplified(line: readonly Point[], tolerance: number): readonly Point[] {
  if (line.length < 3) return line;
  let allowed = tolerance;
  let left = keptOf(line, allowed);
  while (left.length > MOST_POINTS) {
    allowed *= 2;
    left = keptOf(left, allowed);
  }
  return left;
}

function keptOf(line: readonly Point[], tolerance: number): readonly Point[] {
  const kept = new Set([0, line.length - 1]);
  const open: (readonly [number, number])[] = [[0, line.length - 1]];
  for (let stretch = open.pop(); stretch; stretch = open.pop()) {
    const [first, last] = stretch;
    const farthest = farthestBetween(line, first, last, SAME * tolerance);
    if (farthest.away <= (1 + SAME) * tolerance) continue;
    kept.add(farthest.from).add(farthest.to);
    open.push([first, farthest.from], [farthest.from, farthest.to], [farthest.to, last]);
  }
  return line.filter((_, index) => kept.has(index));
}

/**
 * The first and the last of the points that stray farthest, mostly one: so a line is left the same whichever way it
 * runs.
 */
function farthestBetween(
  line: readonly Point[],
  first: number,
  last: number,
  slack: number,
): { readonly from: number; readonly to: number; readonly away: number } {
  const from = line[first];
  const to = line[last];
  let best = { from: first, to: first, away: -Infinity };
  if (!from || !to) return best;
  for (let index = first + 1; index < last; index++) {
    const point = line[index];
    const away = point ? distanceToStretch(point, from, to) : 0;
    if (away > best.away + slack) best = { from: index, to: index, away };
    else if (away >= best.away - slack) best = { ...best, to: index };
  }
  return best;
}

/** From a point to the straight stretch between two others, canvas units. */
export function distanceToStretch(point: Point, from: Point, to: Point): number {
  const length = distance(from, to);
  if (length === 0) return distance(point, from);
  const along =
    ((point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)) / length / length;
  const part = Math.min(1, Math.max(0, along));
  return Math.hypot(point.x - from.x - part * (to.x - from.x), point.y - from.y - part * (to.y - from.y));
}

/** The line without points that are the same as the one before. */
export function withoutRepeats(points: readonly Point[]): readonly Point[] {
  return points.filter((point, index) => {
    const before = points[index - 1];
    return !before || !samePoint(point, before);
  });
}
