import { type Polygons, areaOnGrid, difference, intersection, united } from './clipping.js';
import { crossTooOften } from './crossing-bound.js';
import {
  NOTHING,
  type Piece,
  boxArea,
  commonBox,
  cornersOf,
  mostShared,
  pieceOf,
  plainlyCovers,
  rectanglePath,
  samePieces,
} from './piece.js';
import { type Box, boxContains, boxesOverlap } from './point.js';
import { unitedParts } from './united-parts.js';

/** Counts the work done, so that a test can see what was worked out anew. */
export interface WorkCounter {
  clips: number;
  differences: number;
  intersections: number;
  /** Corners handed to cuts; counted by a counter that has it. */
  corners?: number;
}

export interface Way {
  /** Every cut with a second opinion; see `difference`. Pieces cut carefully are to be kept apart from others. */
  readonly careful: boolean;
  readonly counter: WorkCounter | undefined;
}

/** Beyond this many polygons in one go, the sweep over them costs more than cutting the subject into quarters. */
const MOST_AT_ONCE = 32;
const MOST_QUARTERINGS = 8;
/** So few covers are cut away in one go. */
const FEW = 4;
/** A cover that may hold this part of the subject is cut away ahead of the others: it may leave nothing to do. */
const LARGE = 1 / 4;

/** Results stay as long as the pieces they belong to; a piece never changes. */
const keptQuarters = new WeakMap<Piece, readonly Piece[]>();
const keptParts = new WeakMap<
  Piece,
  { readonly covers: readonly Piece[]; readonly parts: readonly Polygons[] }
>();
const keptLeft = new WeakMap<Piece, { readonly covers: readonly Piece[]; readonly left: Piece }>();
const keptJoined = new WeakMap<Piece, { readonly pieces: readonly Piece[]; readonly union: Piece }>();
const keptRests = new WeakMap<Piece, { readonly covers: readonly Piece[]; readonly rest: Piece }>();
const keptShared = new WeakMap<Piece, WeakMap<Piece, number>>();
const keptSharedCarefully = new WeakMap<Piece, WeakMap<Piece, number>>();
const keptWithin = new WeakMap<Piece, WeakMap<Piece, boolean>>();

/**
 * What is left of `subject` under all `covers`. Nearly linear in their number when each covers little of it, and
 * little work when a few large ones leave nothing; called again with the same pieces but a few, it works out anew
 * only the quarters that those few touch.
 */
export function subtract(subject: Piece, covers: readonly Piece[], way: Way): Piece {
  const near = covers.filter((cover) => boxesOverlap(cover.box, subject.box));
  if (near.length === 0 || subject.area === 0) return subject;
  const last = keptLeft.get(subject);
  if (last && samePieces(last.covers, near)) return last.left;
  const left = leftUnder(subject, near, way);
  keptLeft.set(subject, { covers: near, left });
  return left;
}

function leftUnder(subject: Piece, near: readonly Piece[], way: Way): Piece {
  if (near.some((cover) => plainlyCovers(cover, subject))) return NOTHING;
  // Asked first, because the answer holds whatever else lies in front.
  const [widest] = near.length > 1 ? near.toSorted((a, b) => b.area - a.area) : [];
  if (widest && isWithin(subject, widest, way)) return NOTHING;
  const large = near.length > FEW ? largestFirst(subject, near) : [];
  const rest = large.length > 0 ? restUnder(subject, large, way) : subject;
  const done = new Set(large);
  const others =
    large.length > 0
      ? touching(
          rest,
          near.filter((cover) => !done.has(cover)),
        )
      : near;
  if (others.length === 0) return rest;
  const parts = partsLeft(rest, others, MOST_QUARTERINGS, way);
  const [only] = parts;
  return pieceOf(parts.length === 1 && only ? only : unitedParts(parts.flat()));
}

/** Area that two pieces share, squares of the grid; 0 where they cross too often to be cut. */
export function sharedArea(a: Piece, b: Piece, way: Way): number {
  if (!boxesOverlap(a.box, b.box)) return 0;
  if (plainlyCovers(a, b)) return b.area;
  if (plainlyCovers(b, a)) return a.area;
  if (a.isBox && b.isBox) return boxArea(commonBox(a.box, b.box));
  return recalled(way.careful ? keptSharedCarefully : keptShared, a, b, () => {
    if (crossTooOften(a, b)) return 0;
    if (way.counter) way.counter.intersections++;
    count(way, a, [b]);
    return areaOnGrid(intersection(a.polygons, b.polygons, way.careful));
  });
}

/** True when nothing of `inner` is left outside of `outer`. */
export function isWithin(inner: Piece, outer: Piece, way: Way): boolean {
  if (inner.area > outer.area || !boxContains(outer.box, inner.box)) return false;
  if (plainlyCovers(outer, inner)) return true;
  return recalled(keptWithin, outer, inner, () => cut(inner, [outer], way).length === 0);
}

/** The pieces as one. */
export function joined(pieces: readonly Piece[], way: Way): Piece {
  const [first] = pieces;
  if (!first) return NOTHING;
  const last = keptJoined.get(first);
  if (last && samePieces(last.pieces, pieces)) return last.union;
  count(way, first, pieces.slice(1));
  const union = pieceOf(united(pieces.flatMap(({ polygons }) => polygons)));
  keptJoined.set(first, { pieces, union });
  return union;
}

/** Those covers that may hold a large part of the subject, the largest first. */
function largestFirst(subject: Piece, covers: readonly Piece[]): readonly Piece[] {
  return covers
    .map((cover) => ({ cover, most: mostShared(subject, cover) }))
    .filter(({ most }) => most >= LARGE * subject.area)
    .sort((a, b) => b.most - a.most)
    .map(({ cover }) => cover);
}

/** Cut in ever larger batches, so that little is done when the first covers leave nothing. */
function restUnder(subject: Piece, covers: readonly Piece[], way: Way): Piece {
  const last = keptRests.get(subject);
  if (last && samePieces(last.covers, covers)) return last.rest;
  let rest = subject;
  for (let from = 0, many = FEW; from < covers.length && rest.area > 0; from += many, many *= 2) {
    const batch = touching(rest, covers.slice(from, from + many));
    if (batch.length > 0) rest = pieceOf(cut(rest, batch, way));
  }
  keptRests.set(subject, { covers, rest });
  return rest;
}

function partsLeft(
  subject: Piece,
  covers: readonly Piece[],
  quarterings: number,
  way: Way,
): readonly Polygons[] {
  if (subject.area === 0 || covers.some((cover) => plainlyCovers(cover, subject))) return [];
  if (covers.length === 0) return [subject.polygons];
  const last = keptParts.get(subject);
  if (last && samePieces(last.covers, covers)) return last.parts;
  const quarters = covers.length > MOST_AT_ONCE && quarterings > 0 ? quartersOf(subject.box) : [];
  const near = quarters.map((quarter) => covers.filter(({ box }) => boxesOverlap(box, quarter)));
  const spread = near.reduce((sum, some) => sum + some.length, 0);
  const parts =
    quarters.length === 0 || spread > 2 * covers.length
      ? [takenOver(cut(subject, covers, way), last?.parts ?? [])]
      : quarterPieces(subject, quarters, way).flatMap((quarter, index) =>
          partsLeft(quarter, near[index] ?? [], quarterings - 1, way),
        );
  keptParts.set(subject, { covers, parts });
  return parts;
}

/** Polygons, those that were there before as the same ones: what is kept by them stays. */
function takenOver(polygons: Polygons, before: readonly Polygons[]): Polygons {
  const known = new Map(before.flat().map((path) => [keyOf(path), path]));
  return polygons.map((path) => {
    const same = known.get(keyOf(path));
    const isSame =
      same?.length === path.length && same.every(({ x, y }, at) => x === path[at]?.x && y === path[at]?.y);
    return isSame ? same : path;
  });
}

function keyOf([first]: Polygons[number]): string {
  return `${first?.x} ${first?.y}`;
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

function cut(subject: Piece, covers: readonly Piece[], way: Way): Polygons {
  if (way.counter) way.counter.differences++;
  count(way, subject, covers);
  const clip = covers.flatMap(({ polygons }) => polygons);
  return difference(subject.polygons, clip, way.careful);
}

function count({ counter }: Way, subject: Piece, others: readonly Piece[]): void {
  if (counter?.corners === undefined) return;
  counter.corners += others.reduce((sum, piece) => sum + cornersOf(piece), cornersOf(subject));
}

function touching({ box }: Piece, covers: readonly Piece[]): readonly Piece[] {
  return covers.filter((cover) => boxesOverlap(cover.box, box));
}

function recalled<Result>(
  kept: WeakMap<Piece, WeakMap<Piece, Result>>,
  a: Piece,
  b: Piece,
  work: () => Result,
): Result {
  const ofA = kept.get(a) ?? new WeakMap<Piece, Result>();
  kept.set(a, ofA);
  const known = ofA.get(b);
  if (known !== undefined) return known;
  const result = work();
  ofA.set(b, result);
  return result;
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
