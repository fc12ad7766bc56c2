import { flattenPath } from './flatten.js';
import { type Matrix, apply, isUsableMatrix } from './matrix.js';
import { EMPTY_OUTLINE, type Outline, type PathCommand, type Ring, boxOfRings } from './path.js';
import { type Box, type Point, boxOfPoints, isUsable, isUsablePoint } from './point.js';
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
  const { left, top, right, bottom } = boxOfPoints([a, b]);
  return polygon([
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ]);
}

/** Straight-sided shape through the points, closed. With fewer than three different points it has no ring. */
export function polygon(points: readonly Point[]): Outline {
  if (points.length === 0 || !points.every(isUsablePoint)) return EMPTY_OUTLINE;
  const path = points.map(({ x, y }, index): PathCommand => ({ kind: index === 0 ? 'M' : 'L', x, y }));
  path.push(CLOSED);
  return outlineOf(path, 1);
}

/**
 * Ellipse as eight cubics, clockwise from its right end. A cubic with handles of 4/3 tan(angle/4) stands off a
 * circular arc of 45 degrees by 4.2e-6 of the radius at most, so that the area before flattening is right to 1e-5.
 * A radius of 0 gives a path without a ring; the sign of a radius does not matter.
 */
export function ellipse(centre: Point, radiusX: number, radiusY: number, tolerance: number): Outline {
  if (![centre.x, centre.y, radiusX, radiusY].every(isUsable)) return EMPTY_OUTLINE;
  const handle = (4 / 3) * Math.tan(Math.PI / (2 * ELLIPSE_ARCS));
  const at = (arc: number, along: number): Point => {
    const angle = ((arc % ELLIPSE_ARCS) * 2 * Math.PI) / ELLIPSE_ARCS;
    return {
      x: centre.x + Math.abs(radiusX) * (Math.cos(angle) - along * Math.sin(angle)),
      y: centre.y + Math.abs(radiusY) * (Math.sin(angle) + along * Math.cos(angle)),
    };
  };
  const path: PathCommand[] = [{ kind: 'M', ...at(0, 0) }];
  for (let arc = 0; arc < ELLIPSE_ARCS; arc++) {
    path.push(cubic(at(arc, handle), at(arc + 1, -handle), at(arc + 1, 0)));
  }
  path.push(CLOSED);
  return outlineOf(path, tolerance);
}

/**
 * Closed smooth outline through all points in their order: a centripetal Catmull-Rom spline as cubics, which makes
 * no loops or cusps of its own between two points. Fewer than three different points give a path without a ring.
 */
export function smooth(points: readonly Point[], tolerance: number): Outline {
  if (points.length === 0 || !points.every(isUsablePoint)) return EMPTY_OUTLINE;
  const curve = closedCurve(points);
  if (!curve) return polygon(points);
  const path: PathCommand[] = [{ kind: 'M', ...curve.start }];
  for (const { handle1, handle2, to } of curve.pieces) path.push(cubic(handle1, handle2, to));
  path.push(CLOSED);
  return outlineOf(path, tolerance);
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
  if (!path.every(isUsableCommand)) return EMPTY_OUTLINE;
  const pieces = flattenPath(path, tolerance);
  const box = boxOfRings(pieces);
  const rings = pieces.filter((ring) => ring.length >= 2 * RING_POINTS && ringBoxHasArea(ring));
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

function ringBoxHasArea(ring: Ring): boolean {
  const { left, top, right, bottom } = boxOfRings([ring]);
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
