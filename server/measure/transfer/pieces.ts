import { flattenPath } from '../../plan/geometry/flatten.js';
import type { Outline, PathCommand, Ring } from '../../plan/geometry/outline.js';
import { endsOf, ringPoints, signedArea, subpathsOf } from '../../plan/geometry/path.js';
import { type Point, boxDiagonal, boxOfPoints } from '../../plan/geometry/point.js';
import { carryingPoints, cornersOf } from './carrying-points.js';
import { type RoundShape, roundOf } from './round-shapes.js';
import type { ShapePoint } from './shape-points.js';

/** One closed shape of an outline, by the places that carry it; canvas units. Places may lie off the canvas. */
export type ShapePiece = {
  /** Flattened, clockwise, from its topmost point. */
  readonly border: readonly Point[];
  readonly area: number;
} & (RoundShape | { readonly form: 'corners' | 'curve'; readonly points: readonly ShapePoint[] });

/** How far the flattened border stands off the curve, part of the shape's diagonal. */
const FLATNESS = 2e-4;

const known = new WeakMap<Outline, readonly ShapePiece[]>();

/** The closed shapes of an outline, the largest first; kept as long as the outline is. */
export function piecesOf(outline: Outline): readonly ShapePiece[] {
  const before = known.get(outline);
  if (before !== undefined) return before;
  const pieces = subpathsOf(outline.path)
    .flatMap((path) => pieceOf(path) ?? [])
    .sort((a, b) => b.area - a.area);
  known.set(outline, pieces);
  return pieces;
}

function pieceOf(path: readonly PathCommand[]): ShapePiece | undefined {
  const size = boxDiagonal(boxOfPoints(endsOf(path)));
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
  const points = signedArea(ring) < 0 ? [...ringPoints(ring)].reverse() : ringPoints(ring);
  let first = 0;
  points.forEach(({ x, y }, index) => {
    const top = points[first];
    if (top !== undefined && (y < top.y || (y === top.y && x < top.x))) first = index;
  });
  return [...points.slice(first), ...points.slice(0, first)];
}
