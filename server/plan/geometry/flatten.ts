import { withOneMore } from './one-more.js';
import type { PathCommand, Ring } from './path.js';
import { hypotenuse, type Point } from './point.js';

/** No cubic becomes more than this many straight pieces, however small the tolerance. */
const MOST_PIECES_PER_CURVE = 1000;
/** No path becomes many more than this many points. */
const MOST_POINTS = 400_000;

/** Numbers of points that rings share memory of; a ring with a good part of them has its own. */
const SHARED = 1024;
/** So many numbers of points are kept room for from one path to the next. */
const MOST_ROOM = 1 << 16;

/** The points of the ring that is being flattened, as x0, y0, x1, y1 ... */
let room = new Float64Array(1024);
/** How many numbers of them there are. */
let taken = 0;
/** What rings take their numbers from: many small pieces of memory of their own would cost more than the flattening. */
let shared = new Float64Array(0);
let sharedTaken = 0;

/**
 * The path as closed polylines, open subpaths closed. No point of the path is farther than `tolerance` (canvas
 * units) from them, unless that took over 1,000 pieces a curve. Points repeated in a row are left out; pieces of
 * fewer than three points are kept, so that the caller can tell a line from nothing.
 */
export function flattenPath(path: readonly PathCommand[], tolerance: number): Ring[] {
  const mostPieces = piecesPerCurve(path);
  let rings: Ring[] | undefined;
  let [startX, startY, penX, penY] = [0, 0, 0, 0];
  taken = 0;
  for (const command of path) {
    if (command.kind === 'Z') {
      rings = finish(rings);
      penX = startX;
      penY = startY;
      continue;
    }
    if (command.kind === 'M') {
      rings = finish(rings);
      startX = command.x;
      startY = command.y;
      append(startX, startY);
    } else {
      if (taken === 0) append(penX, penY);
      if (command.kind === 'L') append(command.x, command.y);
      else appendCubic(command, tolerance, mostPieces);
    }
    penX = command.x;
    penY = command.y;
  }
  rings = finish(rings);
  if (room.length > MOST_ROOM) room = new Float64Array(1024);
  return rings ?? [];
}

function piecesPerCurve(path: readonly PathCommand[]): number {
  let curves = 0;
  for (const { kind } of path) if (kind === 'C') curves++;
  return Math.min(MOST_PIECES_PER_CURVE, Math.max(4, Math.floor(MOST_POINTS / Math.max(1, curves))));
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
  return piecesFrom(from.x, from.y, curve, tolerance, most);
}

function piecesFrom(
  x: number,
  y: number,
  curve: Extract<PathCommand, { kind: 'C' }>,
  tolerance: number,
  most: number,
): number {
  const bend = Math.max(
    hypotenuse(x - 2 * curve.x1 + curve.x2, y - 2 * curve.y1 + curve.y2),
    hypotenuse(curve.x1 - 2 * curve.x2 + curve.x, curve.y1 - 2 * curve.y2 + curve.y),
  );
  if (bend === 0) return 1;
  const pieces = Math.ceil(Math.sqrt((0.75 * bend) / Math.max(tolerance, 0)));
  return pieces <= most ? Math.max(1, pieces) : most;
}

/** From the last point on. */
function appendCubic(curve: Extract<PathCommand, { kind: 'C' }>, tolerance: number, most: number): void {
  const fromX = room[taken - 2] as number;
  const fromY = room[taken - 1] as number;
  const { x1, y1, x2, y2, x, y } = curve;
  const pieces = piecesFrom(fromX, fromY, curve, tolerance, most);
  for (let i = 1; i < pieces; i++) {
    const t = i / pieces;
    const s = 1 - t;
    const w0 = s * s * s;
    const w1 = 3 * s * s * t;
    const w2 = 3 * s * t * t;
    const w3 = t * t * t;
    append(w0 * fromX + w1 * x1 + w2 * x2 + w3 * x, w0 * fromY + w1 * y1 + w2 * y2 + w3 * y);
  }
  append(x, y);
}

function append(x: number, y: number): void {
  if (taken >= 2 && room[taken - 2] === x && room[taken - 1] === y) return;
  if (taken === room.length) {
    const larger = new Float64Array(2 * taken);
    larger.set(room);
    room = larger;
  }
  room[taken] = x;
  room[taken + 1] = y;
  taken += 2;
}

/** Closes the ring that is being flattened, if it has points. @returns the rings with it */
function finish(rings: Ring[] | undefined): Ring[] | undefined {
  let end = taken;
  while (end > 2 && room[0] === room[end - 2] && room[1] === room[end - 1]) end -= 2;
  taken = 0;
  if (end === 0) return rings;
  const ring = numbers(end);
  for (let i = 0; i < end; i++) ring[i] = room[i] as number;
  return withOneMore(rings, ring);
}

function numbers(count: number): Float64Array {
  if (count > SHARED / 4) return new Float64Array(count);
  if (sharedTaken + count > shared.length) {
    shared = new Float64Array(SHARED);
    sharedTaken = 0;
  }
  const first = shared.byteOffset + sharedTaken * Float64Array.BYTES_PER_ELEMENT;
  sharedTaken += count;
  return new Float64Array(shared.buffer, first, count);
}
