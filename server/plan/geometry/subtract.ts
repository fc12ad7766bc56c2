import { type Polygons, areaOnGrid, difference, intersection, united } from './clipping.js';
import { type Box, boxContains, boxOfPoints, boxesOverlap } from './point.js';

/** Polygons on the grid of whole numbers with what is asked of them again and again. */
export interface Piece {
  readonly polygons: Polygons;
  /** Grid steps. */
  readonly box: Box;
  /** Squares of the grid. */
  readonly area: number;
  /** True when the piece is exactly its box. */
  readonly isBox: boolean;
}

/** Counts the work done, so that a test can see what was worked out anew. */
export interface WorkCounter {
  clips: number;
  differences: number;
  intersections: number;
}

export interface Way {
  /** Every cut with a second opinion; see `difference`. Pieces cut carefully are to be kept apart from others. */
  readonly careful: boolean;
  readonly counter: WorkCounter | undefined;
}

/** Beyond this many polygons in one go, the sweep over them costs more than cutting the subject into quarters. */
const MOST_AT_ONCE = 32;
const MOST_QUARTERINGS = 8;

export function pieceOf(polygons: Polygons): Piece {
  const box = boxOfPoints(polygons.flat());
  const area = areaOnGrid(polygons);
  return { polygons, box, area, isBox: area > 0 && area === boxArea(box) };
}

/** Results stay as long as the pieces they belong to; a piece never changes. */
const keptQuarters = new WeakMap<Piece, readonly Piece[]>();
const keptParts = new WeakMap<
  Piece,
  { readonly covers: readonly Piece[]; readonly parts: readonly Polygons[] }
>();
const keptShared = new WeakMap<Piece, WeakMap<Piece, number>>();

/**
 * What is left of `subject` under all `covers`. Nearly linear in their number when each covers little of it; called
 * again with the same pieces but a few, it works out anew only the quarters that those few touch.
 */
export function subtract(subject: Piece, covers: readonly Piece[], way: Way): Piece {
  const near = covers.filter((cover) => boxesOverlap(cover.box, subject.box));
  if (near.length === 0 || subject.area === 0) return subject;
  const parts = partsLeft(subject, near, MOST_QUARTERINGS, way);
  const [only] = parts;
  return pieceOf(parts.length === 1 && only ? only : united(parts.flat()));
}

/** Area that two pieces share, squares of the grid. */
export function sharedArea(a: Piece, b: Piece, way: Way): number {
  if (!boxesOverlap(a.box, b.box)) return 0;
  if (boxCovers(a, b)) return b.area;
  if (boxCovers(b, a)) return a.area;
  if (a.isBox && b.isBox) return boxArea(commonBox(a.box, b.box));
  const known = keptShared.get(a)?.get(b);
  if (known !== undefined) return known;
  if (way.counter) way.counter.intersections++;
  const area = areaOnGrid(intersection(a.polygons, b.polygons, way.careful));
  const ofA = keptShared.get(a) ?? new WeakMap<Piece, number>();
  keptShared.set(a, ofA.set(b, area));
  return area;
}

function partsLeft(
  subject: Piece,
  covers: readonly Piece[],
  quarterings: number,
  way: Way,
): readonly Polygons[] {
  if (subject.area === 0 || covers.some((cover) => boxCovers(cover, subject))) return [];
  if (covers.length === 0) return [subject.polygons];
  const last = keptParts.get(subject);
  if (last && sameItems(last.covers, covers)) return last.parts;
  const quarters = covers.length > MOST_AT_ONCE && quarterings > 0 ? quartersOf(subject.box) : [];
  const near = quarters.map((quarter) => covers.filter(({ box }) => boxesOverlap(box, quarter)));
  const spread = near.reduce((sum, some) => sum + some.length, 0);
  if (quarters.length === 0 || spread > 2 * covers.length) {
    if (way.counter) way.counter.differences++;
    const clip = covers.flatMap(({ polygons }) => polygons);
    const parts = [difference(subject.polygons, clip, way.careful)];
    keptParts.set(subject, { covers, parts });
    return parts;
  }
  const parts = quarterPieces(subject, quarters, way).flatMap((quarter, index) =>
    partsLeft(quarter, near[index] ?? [], quarterings - 1, way),
  );
  keptParts.set(subject, { covers, parts });
  return parts;
}

function quarterPieces(subject: Piece, quarters: readonly Box[], way: Way): readonly Piece[] {
  const known = keptQuarters.get(subject);
  if (known) return known;
  const pieces = quarters.map((quarter) => {
    const cell = [rectanglePath(quarter)];
    return pieceOf(subject.isBox ? cell : intersection(subject.polygons, cell, way.careful));
  });
  keptQuarters.set(subject, pieces);
  return pieces;
}

function sameItems(a: readonly Piece[], b: readonly Piece[]): boolean {
  return a.length === b.length && a.every((piece, index) => piece === b[index]);
}

function quartersOf({ left, top, right, bottom }: Box): readonly Box[] {
  const x = Math.round((left + right) / 2);
  const y = Math.round((top + bottom) / 2);
  if (x <= left || x >= right || y <= top || y >= bottom) return [];
  return [
    { left, top, right: x, bottom: y },
    { left: x, top, right, bottom: y },
    { left, top: y, right: x, bottom },
    { left: x, top: y, right, bottom },
  ];
}

function boxCovers(cover: Piece, other: Piece): boolean {
  return cover.isBox && boxContains(cover.box, other.box);
}

/** The outer ring of a rectangle, running the way clipper2 counts positive. */
export function rectanglePath({ left, top, right, bottom }: Box): Polygons[number] {
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

function commonBox(a: Box, b: Box): Box {
  return {
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  };
}

function boxArea({ left, top, right, bottom }: Box): number {
  return (right - left) * (bottom - top);
}
