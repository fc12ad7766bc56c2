import type { PathCommand, Ring } from './path.js';
import type { Point } from './point.js';

/** No cubic becomes more than this many straight pieces, however small the tolerance. */
const MOST_PIECES_PER_CURVE = 1000;
/** No path becomes many more than this many points. */
const MOST_POINTS = 400_000;

/**
 * The path as closed polylines, open subpaths closed. No point of the path is farther than `tolerance` (canvas
 * units) from them, unless that took over 1,000 pieces a curve. Points repeated in a row are left out; pieces of
 * fewer than three points are kept, so that the caller can tell a line from nothing.
 */
export function flattenPath(path: readonly PathCommand[], tolerance: number): Ring[] {
  const curves = path.reduce((count, { kind }) => count + (kind === 'C' ? 1 : 0), 0);
  const mostPieces = Math.min(
    MOST_PIECES_PER_CURVE,
    Math.max(4, Math.floor(MOST_POINTS / Math.max(1, curves))),
  );
  const rings: Ring[] = [];
  let points: number[] = [];
  let start: Point = { x: 0, y: 0 };
  let pen = start;

  const finish = () => {
    const ring = closedRing(points);
    if (ring.length > 0) rings.push(ring);
    points = [];
  };
  const begin = () => {
    if (points.length === 0) append(points, pen.x, pen.y);
  };

  for (const command of path) {
    switch (command.kind) {
      case 'M':
        finish();
        start = pen = { x: command.x, y: command.y };
        begin();
        break;
      case 'L':
        begin();
        append(points, command.x, command.y);
        pen = { x: command.x, y: command.y };
        break;
      case 'C':
        begin();
        appendCubic(points, pen, command, tolerance, mostPieces);
        pen = { x: command.x, y: command.y };
        break;
      case 'Z':
        finish();
        pen = start;
        break;
    }
  }
  finish();
  return rings;
}

/**
 * How many equal steps of the parameter keep a cubic within `tolerance` of its chords: the bound of Wang, Lane and
 * Riesenfeld on the second difference of the handles, n = sqrt(3/4 max|p(i) - 2 p(i+1) + p(i+2)| / tolerance);
 * quoted from memory. At least 1, at most `most`, also for numbers that are not finite.
 */
export function piecesOfCubic(
  from: Point,
  curve: Extract<PathCommand, { kind: 'C' }>,
  tolerance: number,
  most: number = MOST_PIECES_PER_CURVE,
): number {
  const bend = Math.max(
    Math.hypot(from.x - 2 * curve.x1 + curve.x2, from.y - 2 * curve.y1 + curve.y2),
    Math.hypot(curve.x1 - 2 * curve.x2 + curve.x, curve.y1 - 2 * curve.y2 + curve.y),
  );
  if (bend === 0) return 1;
  const pieces = Math.ceil(Math.sqrt((0.75 * bend) / Math.max(tolerance, 0)));
  return pieces <= most ? Math.max(1, pieces) : most;
}

function appendCubic(
  points: number[],
  from: Point,
  curve: Extract<PathCommand, { kind: 'C' }>,
  tolerance: number,
  most: number,
): void {
  const pieces = piecesOfCubic(from, curve, tolerance, most);
  for (let i = 1; i < pieces; i++) {
    const t = i / pieces;
    const s = 1 - t;
    const w0 = s * s * s;
    const w1 = 3 * s * s * t;
    const w2 = 3 * s * t * t;
    const w3 = t * t * t;
    append(
      points,
      w0 * from.x + w1 * curve.x1 + w2 * curve.x2 + w3 * curve.x,
      w0 * from.y + w1 * curve.y1 + w2 * curve.y2 + w3 * curve.y,
    );
  }
  append(points, curve.x, curve.y);
}

function append(points: number[], x: number, y: number): void {
  const last = points.length;
  if (last >= 2 && points[last - 2] === x && points[last - 1] === y) return;
  points.push(x, y);
}

function closedRing(points: readonly number[]): Ring {
  let end = points.length;
  while (end > 2 && points[0] === points[end - 2] && points[1] === points[end - 1]) end -= 2;
  return new Float64Array(end === points.length ? points : points.slice(0, end));
}
