import type { Node, Place } from '../../../grammar/index.js';
import { buildOutline } from '../../plan/build-outline.js';
import { apply, IDENTITY, type Matrix, translate } from '../../plan/geometry/matrix.js';
import type { Outline } from '../../plan/geometry/outline.js';
import { endsOf } from '../../plan/geometry/path.js';
import { distance, type Point } from '../../plan/geometry/point.js';
import { ObjectBlock } from '../../plan/object-block.js';
import { type PlaceSurroundings, resolvePlace } from '../../plan/places.js';
import type { PlanObject } from '../../plan/plan.js';
import { flatnessOn } from '../../plan/references.js';
import { every } from '../../plan/select.js';
import { gatherShapes, type OutlineInput } from '../../plan/shapes.js';

/** A point of an outline, as the text gives it and where it lies. */
export interface OutlinePoint {
  /** The line on which it stands. */
  readonly node: Pick<Node, 'line'>;
  readonly place: Place;
  /** The line of its shape, and which of that shape's points it is, from 0. */
  readonly shapeLine: number;
  readonly index: number;
  /** As the text gives it, before the shape is mirrored, sized, turned and set down. */
  readonly given: Point;
  /** Where it lies; of a repeated shape in its first copy. */
  readonly at: Point;
}

/** What is done to a shape after its points are known, other than repeating it. */
const ARRANGING: ReadonlySet<Node['statement']['kind']> = new Set([
  'mirror',
  'size',
  'size along',
  'resize',
  'turn',
  'at',
]);

/**
 * The points of an object's `outline` and `smooth` shapes, in the order of the text. None where it can't be told how
 * they are set down: of an object that is arranged together with a part of a file, and of a line without width that is
 * sized or turned.
 */
export function outlinePoints(object: PlanObject, surroundings: PlaceSurroundings): readonly OutlinePoint[] {
  const given = givenPoints(object, surroundings);
  if (given.length === 0) return [];
  const matrix = arrangementOf(object, surroundings);
  if (!matrix) return [];
  return given.map((point) => ({ ...point, at: apply(matrix, point.given) }));
}

function givenPoints(
  { node: { children } }: PlanObject,
  surroundings: PlaceSurroundings,
): readonly Omit<OutlinePoint, 'at'>[] {
  const given: Omit<OutlinePoint, 'at'>[] = [];
  for (const shapeNode of every(children, 'shape')) {
    const { shape } = shapeNode.statement;
    if (shape.form !== 'outline' && shape.form !== 'smooth') continue;
    let index = 0;
    const take = (node: Pick<Node, 'line'>, points: readonly Place[]): void => {
      for (const place of points) {
        const at = resolvePlace(place, node, surroundings);
        if (at) given.push({ node, place, given: at, shapeLine: shapeNode.line, index: index++ });
      }
    };
    take(shapeNode, shape.points);
    for (const row of every(shapeNode.children, 'points')) take(row, row.statement.points);
  }
  return given;
}

const known = new WeakMap<Outline, { readonly matrix: Matrix | undefined }>();

/**
 * What takes the points of an object's shapes to where they lie. An outline that is the same was arranged in the same
 * way.
 */
function arrangementOf(object: PlanObject, surroundings: PlaceSurroundings): Matrix | undefined {
  const { children } = object.node;
  if (!isArranged(children)) return IDENTITY;
  const kept = known.get(object.outline);
  if (kept) return kept.matrix;
  const isWhole = every(children, 'shape').every(({ statement }) => statement.shape.form !== 'file');
  const matrix = isWhole
    ? arrangement(firstCopyOf(children, surroundings).input, flatnessOf(surroundings))
    : undefined;
  known.set(object.outline, { matrix });
  return matrix;
}

/** Whether the points of a shape lie elsewhere than the text gives them. */
export function isArranged(children: readonly Node[]): boolean {
  return children.some(({ statement }) => ARRANGING.has(statement.kind));
}

/** What an object's first copy is built from, and the lines on which its shapes stand. */
export function firstCopyOf(
  children: readonly Node[],
  surroundings: PlaceSurroundings,
): { readonly input: OutlineInput; readonly lines: readonly number[] } {
  const { input, from } = gatherShapes(new ObjectBlock(children), surroundings, () => undefined);
  const { shapes, mirror, sizing, turn, at } = input;
  return {
    input: { shapes, ...(mirror ? { mirror } : {}), sizing, turn, ...(at ? { at } : {}) },
    lines: from.map(({ line }) => line),
  };
}

export function flatnessOf({ canvas }: PlaceSurroundings): number {
  return flatnessOn(Math.hypot(canvas.width, canvas.height));
}

/** What takes the shapes of an outline to where it is set down; nothing for a line that is sized or turned. */
export function arrangement(input: OutlineInput, flatness: number): Matrix | undefined {
  const given = buildOutline({ shapes: input.shapes, sizing: [], turn: 0 }, flatness).outline;
  const placed = buildOutline(input, flatness).outline;
  const isOnlyMoved = input.mirror === undefined && input.sizing.length === 0 && input.turn === 0;
  return mapBetween(endsOf(given.path), endsOf(placed.path), isOnlyMoved);
}

/** Part of the square of a shape's length that its points must stand off one line by. */
const FLAT = 1e-9;

/** The affine map that takes each point to the other of the same index, from three points that stand wide apart. */
function mapBetween(from: readonly Point[], to: readonly Point[], isOnlyMoved: boolean): Matrix | undefined {
  const [first] = from;
  const [firstTo] = to;
  if (!first || !firstTo || from.length !== to.length) return undefined;
  if (isOnlyMoved) return translate(firstTo.x - first.x, firstTo.y - first.y);
  const second = indexOfMost(from, (point) => distance(first, point));
  const u = less(from[second], first);
  const third = indexOfMost(from, (point) => Math.abs(cross(u, less(point, first))));
  const v = less(from[third], first);
  const size = cross(u, v);
  if (Math.abs(size) <= FLAT * (u.x ** 2 + u.y ** 2)) return undefined;
  const mapped = [less(to[second], firstTo), less(to[third], firstTo)] as const;
  const a = (mapped[0].x * v.y - mapped[1].x * u.y) / size;
  const c = (mapped[1].x * u.x - mapped[0].x * v.x) / size;
  const b = (mapped[0].y * v.y - mapped[1].y * u.y) / size;
  const d = (mapped[1].y * u.x - mapped[0].y * v.x) / size;
  return {
    a,
    b,
    c,
    d,
    e: firstTo.x - a * first.x - c * first.y,
    f: firstTo.y - b * first.x - d * first.y,
  };
}

function less(point: Point | undefined, from: Point): Point {
  return point ? { x: point.x - from.x, y: point.y - from.y } : { x: 0, y: 0 };
}

function cross(u: Point, v: Point): number {
  return u.x * v.y - u.y * v.x;
}

function indexOfMost(points: readonly Point[], measure: (point: Point) => number): number {
  let best = 0;
  let most = -Infinity;
  points.forEach((point, index) => {
    const here = measure(point);
    if (here > most) [best, most] = [index, here];
  });
  return best;
}
