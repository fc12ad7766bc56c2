import type { PathCommand } from '../../plan/geometry/outline.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import type { ShapePoint } from './shape-points.js';

/** A circle or an ellipse; canvas units. */
export type RoundShape = { readonly points: readonly ShapePoint[] } & (
  | { readonly form: 'circle'; readonly radius: number }
  /** Whole axes, the long one first; `turn` in degrees clockwise, from -90 to 90, of the long axis. */
  | { readonly form: 'ellipse'; readonly axes: readonly [number, number]; readonly turn: number }
);

/** Part of its size by which a round shape may miss an ellipse. */
const ROUND = 2e-3;

/**
 * A path of four or eight cubics that is an ellipse, as round shapes are drawn: its ends lie where those of two
 * conjugate radii put them. Its axes follow from these in closed form, as those of the matrix that makes it of a
 * circle.
 */
export function roundOf(path: readonly PathCommand[]): RoundShape | undefined {
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
