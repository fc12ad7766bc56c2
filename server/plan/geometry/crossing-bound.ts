import { CrossingCount } from './crossing-count.js';
import type { Ring } from './path.js';
import { type Piece, cornersOf } from './piece.js';

/** Crossings of outlines with each other: so many are cut in about a second. */
export const MOST_MUTUAL_CROSSINGS = 100_000;

/** What tells how often rings cross others at most. */
export interface BorderSize {
  readonly points: number;
  /** Runs of edges that all go up or all go down. */
  readonly runs: number;
}

/** Two edges cross once at most, and two runs as often as they have edges together, as each next crossing is higher. */
export function mostCrossings(one: BorderSize, other: BorderSize): number {
  return Math.min(one.points * other.points, other.runs * one.points + one.runs * other.points);
}

export function borderSizeOf(rings: readonly Ring[]): BorderSize {
  let points = 0;
  let runs = 0;
  for (const ring of rings) {
    points += ring.length / 2;
    let last = 0;
    let from = ring[1] as number;
    for (let i = 1; i < ring.length; i += 2) {
      const to = ring[i + 2 < ring.length ? i + 2 : 1] as number;
      const way = to > from ? 1 : to < from ? -1 : 0;
      from = to;
      if (way !== 0 && way !== last) runs++;
      if (way !== 0) last = way;
    }
    // A run that goes on across the seam is counted as two, and a ring that is level all along has one.
    runs += last === 0 ? 1 : 0;
  }
  return { points, runs };
}

/** Whether two pieces cross each other more often than can be cut while somebody waits. */
export function crossTooOften(one: Piece, other: Piece): boolean {
  const points = [cornersOf(one), cornersOf(other)] as const;
  if (points[0] * points[1] <= MOST_MUTUAL_CROSSINGS) return false;
  const shapes = [one, other].map((piece) => ({ rings: piece.polygons.map(ringOf), box: piece.box }));
  const [first, second] = shapes.map(({ rings }) => borderSizeOf(rings));
  if (first && second && mostCrossings(first, second) <= MOST_MUTUAL_CROSSINGS) return false;
  const width = Math.max(one.box.right, other.box.right);
  const height = Math.max(one.box.bottom, other.box.bottom);
  const count = new CrossingCount({ width, height }, MOST_MUTUAL_CROSSINGS, points[0] + points[1]);
  return !shapes.every((shape) => count.lay(shape));
}

function ringOf(polygon: Piece['polygons'][number]): Ring {
  return Float64Array.from(polygon.flatMap(({ x, y }) => [x, y]));
}
