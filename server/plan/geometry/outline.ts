import { flattenPath } from './flatten.js';
import { type Matrix, apply, isUsableMatrix } from './matrix.js';
import { EMPTY_OUTLINE, type Outline, type PathCommand, type Ring, boxOfRings } from './path.js';
import { type Box, type Point, isUsable, isUsablePoint } from './point.js';
import { closedCurve } from './smooth.js';

export { EMPTY_OUTLINE, boxOfRings, pathData } from './path.js';
export type { Outline, PathCommand, Ring } from './path.js';
export { join } from './join.js';

/** Smallest number of points in a ring that can hold an area. */
const RING_POINTS = 3;
const ELLIPSE_ARCS = 8;
const CLOSED: PathCommand = { kind: 'Z' };

/**
 * Upright rectangle between two opposite corners, given in any order. Without width or height it has a path but no
 * ring. This and every other constructor gives `EMPTY_OUTLINE` for a number that is not finite or beyond
 * `LARGEST_COORDINATE`.
 */
export function rectangle(a: Point, b: Point): Outline {
  const left = Math.min(a.x, b.x);
  const top = Math.min(a.y, b.y);
  const right = Math.max(a.x, b.x);
  const bottom = Math.max(a.y, b.y);
  const path: readonly PathCommand[] = [
    { kind: 'M', x: left, y: top },
    { kind: 'L', x: right, y: top },
    { kind: 'L', x: right, y: bottom },
    { kind: 'L', x: left, y: bottom },
    CLOSED,
  ];
  return outlineOf(path, 1);
}

/** Straight-sided shape through the points, closed. With fewer than three different points it has no ring. */
export function polygon(points: readonly Point[]): Outline {
  if (points.length === 0) return EMPTY_OUTLINE;
  const path: PathCommand[] = [];
  for (const { x, y } of points) path.push({ kind: path.length === 0 ? 'M' : 'L', x, y });
  path.push(CLOSED);
  return outlineOf(path, 1);
}

/** Where the ends and handles of the arcs of an ellipse lie: right and down of its middle, in radiuses. */
const arcs = (() => {
  const handle = (4 / 3) * Math.tan(Math.PI / (2 * ELLIPSE_ARCS));
  const at = (arc: number, along: number): Point => {
    const angle = ((arc % ELLIPSE_ARCS) * 2 * Math.PI) / ELLIPSE_ARCS;
    return { x: Math.cos(angle) - along * Math.sin(angle), y: Math.sin(angle) + along * Math.cos(angle) };
  };
  const each = Array.from({ length: ELLIPSE_ARCS }, (_, arc) => ({
    handle1: at(arc, handle),
    handle2: at(arc + 1, -handle),
    to: at(arc + 1, 0),
  }));
  return { start: at(0, 0), each };
})();

/**
 * Ellipse as eight cubics, clockwise from its right end. A cubic with handles of 4/3 tan(angle/4) stands off a
 * circular arc of 45 degrees by 4.2e-6 of the radius at most, so that the area before flattening is right to 1e-5.
 * A radius of 0 gives a path without a ring; the sign of a radius does not matter.
 */
export function ellipse(centre: Point, radiusX: number, radiusY: number, tolerance: number): Outline {
  if (!isUsablePoint(centre) || !isUsable(radiusX) || !isUsable(radiusY)) return EMPTY_OUTLINE;
  const { x, y } = centre;
  const width = Math.abs(radiusX);
  const height = Math.abs(radiusY);
  const { start, each } = arcs;
  const path: PathCommand[] = [{ kind: 'M', x: x + width * start.x, y: y + height * start.y }];
  for (const { handle1, handle2, to } of each) {
    path.push({
      kind: 'C',
      x1: x + width * handle1.x,
      y1: y + height * handle1.y,
      x2: x + width * handle2.x,
      y2: y + height * handle2.y,
      x: x + width * to.x,
      y: y + height * to.y,
    });
  }
  path.push(CLOSED);
  return outlineOf(path, tolerance);
}

/**
 * Closed smooth outline through all points in their order: a centripetal Catmull-Rom spline as cubics, which makes
 * no loops or cusps of its own between two points. Fewer than three different points give a path without a ring.
 */
export function smooth(points: readonly Point[], tolerance: number): Outline {
  for (const point of points) if (!isUsablePoint(point)) return EMPTY_OUTLINE;
  const path = closedCurve(points);
  return path ? outlineOf(path, tolerance) : polygon(points);
}

/**
 * The outline moved by a matrix. Without `tolerance` the flattened points are moved as they are, which is right for
 * turning, mirroring and moving; with it the curves are flattened anew, as enlarging needs. Gives `EMPTY_OUTLINE`
 * when it would land beyond `LARGEST_COORDINATE`.
 */
export function transform(outline: Outline, matrix: Matrix, tolerance?: number): Outline {
  if (!isUsableMatrix(matrix)) return EMPTY_OUTLINE;
  const path = outline.path.map((command) => movedCommand(command, matrix));
  if (tolerance !== undefined) return outlineOf(path, tolerance, outline.fillRule);
  const rings = outline.rings.map((ring) => movedRing(ring, matrix));
  const box = rings.length > 0 ? boxOfRings(rings) : boxOfRings(flattenPath(path, Infinity));
  if (!isUsableBox(box)) return EMPTY_OUTLINE;
  return { path, rings, box, ...(outline.fillRule && { fillRule: outline.fillRule }) };
}

/**
 * An outline from drawing commands, flattened to `tolerance` (canvas units). `EMPTY_OUTLINE` when a point of it is
 * not finite or beyond `LARGEST_COORDINATE`.
 */
export function outlineOf(path: readonly PathCommand[], tolerance: number, fillRule?: 'evenodd'): Outline {
  for (const command of path) if (!isUsableCommand(command)) return EMPTY_OUTLINE;
  const pieces = flattenPath(path, tolerance);
  const box = boxOfRings(pieces);
  const rings =
    pieces.length === 1 && hasCorners(pieces[0] as Ring) && hasArea(box)
      ? pieces
      : pieces.filter((ring) => hasCorners(ring) && hasArea(boxOfRings([ring])));
  return fillRule ? { path, rings, box, fillRule } : { path, rings, box };
}

/** True when every number of the command can be drawn. */
export function isUsableCommand(command: PathCommand): boolean {
  switch (command.kind) {
    case 'M':
    case 'L':
      return isUsablePoint(command);
    case 'C':
      return (
        isUsable(command.x1) &&
        isUsable(command.y1) &&
        isUsable(command.x2) &&
        isUsable(command.y2) &&
        isUsablePoint(command)
      );
    case 'Z':
      return true;
  }
}

function hasCorners(ring: Ring): boolean {
  return ring.length >= 2 * RING_POINTS;
}

function hasArea({ left, top, right, bottom }: Box): boolean {
  return right > left && bottom > top;
}

function isUsableBox({ left, top, right, bottom }: Box): boolean {
  return [left, top, right, bottom].every(isUsable);
}

function cubic(handle1: Point, handle2: Point, to: Point): PathCommand {
  return { kind: 'C', x1: handle1.x, y1: handle1.y, x2: handle2.x, y2: handle2.y, x: to.x, y: to.y };
}

function movedCommand(command: PathCommand, matrix: Matrix): PathCommand {
  switch (command.kind) {
    case 'M':
    case 'L':
      return { kind: command.kind, ...apply(matrix, command) };
    case 'C':
      return cubic(
        apply(matrix, { x: command.x1, y: command.y1 }),
        apply(matrix, { x: command.x2, y: command.y2 }),
        apply(matrix, command),
      );
    case 'Z':
      return command;
  }
}

function movedRing(ring: Ring, { a, b, c, d, e, f }: Matrix): Ring {
  const moved = new Float64Array(ring.length);
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const x = ring[i] as number;
    const y = ring[i + 1] as number;
    moved[i] = a * x + c * y + e;
    moved[i + 1] = b * x + d * y + f;
  }
  return moved;
}
