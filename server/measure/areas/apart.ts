import type { Ring } from '../../plan/geometry/outline.js';
import { boxGroups } from '../../plan/geometry/groups.js';
import { boxDiagonal, boxRound } from '../../plan/geometry/point.js';
import { areaOfRing, boxOfRing } from './kept-rings.js';
import { sameInputs } from '../memory.js';

/** What is closer than this part of the extent of an area is the same place; areas are cut a hundred times finer. */
const SAME_PLACE = 1e-8;

/** Rings as corners, each with the one after it in its ring. */
interface Corners {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly after: Int32Array;
  /** Which ring each is of. */
  readonly ringOf: Int32Array;
  /** All corners from left to right. */
  readonly order: Int32Array;
  /** Canvas units below which two places are the same. */
  readonly same: number;
}

/** A straight piece of a border from one corner to another. */
interface Piece {
  readonly from: number;
  readonly to: number;
  /** The ring on which it was found. */
  readonly ring: number;
}

/** What becomes of rings that lie near each other. */
interface Apart {
  readonly rings: readonly Ring[];
  /** Of each the ring on which it begins. */
  readonly begins: readonly number[];
}

interface KeptApart {
  readonly of: readonly Ring[];
  readonly same: number;
  readonly inward: number;
  readonly apart: Apart;
}

/** By the first ring of those near each other. */
const kept = new WeakMap<Ring, KeptApart>();

/**
 * The rings of an area taken apart wherever they touch: what only a corner joins does not hang together, and where two
 * sides run back on each other there is no border. Whichever way the rings were cut, what is left is the same. Rings
 * that touch nowhere are given back as they are; what comes of others is the same as long as all near them are.
 */
export function ringsApart(rings: readonly Ring[]): readonly Ring[] {
  const boxes = rings.map(boxOfRing);
  const whole = boxes.reduce(boxRound, undefined);
  if (!whole) return rings;
  const same = SAME_PLACE * boxDiagonal(whole);
  const inward = Math.sign(
    rings.map(areaOfRing).reduce((most, area) => (Math.abs(area) > Math.abs(most) ? area : most), 0),
  );
  const groups = boxGroups(boxes, 2 * same);
  const all: { readonly ring: Ring; readonly begins: number }[] = [];
  let touch = false;
  for (const group of groups) {
    const own = group.length === rings.length ? rings : group.map((index) => rings[index] as Ring);
    const apart = keptApart(own, same, inward);
    touch ||= apart.rings !== own && !sameInputs(apart.rings, own);
    apart.rings.forEach((ring, index) => {
      all.push({ ring, begins: group[apart.begins[index] as number] as number });
    });
  }
  if (!touch) return rings;
  return all.sort((one, other) => one.begins - other.begins).map(({ ring }) => ring);
}

function keptApart(rings: readonly Ring[], same: number, inward: number): Apart {
  const first = rings[0] as Ring;
  const last = kept.get(first);
  if (last?.same === same && last.inward === inward && sameInputs(last.of, rings)) return last.apart;
  const apart = takenApart(rings, same, inward);
  kept.set(first, { of: rings, same, inward, apart });
  return apart;
}

function takenApart(rings: readonly Ring[], same: number, inward: number): Apart {
  const corners = cornersOf(rings, same);
  const places = placesOf(corners);
  const touched = touchedSides(corners);
  if (touched.size === 0 && places.every((place, corner) => place === corner)) {
    return { rings, begins: rings.map((_, index) => index) };
  }
  return linked(piecesOf(corners, places, touched), corners, inward);
}

function cornersOf(rings: readonly Ring[], same: number): Corners {
  const count = rings.reduce((sum, ring) => sum + ring.length / 2, 0);
  const xs = new Float64Array(count);
  const ys = new Float64Array(count);
  const after = new Int32Array(count);
  const ringOf = new Int32Array(count);
  let corner = 0;
  rings.forEach((ring, index) => {
    const first = corner;
    for (let i = 0; i + 1 < ring.length; i += 2) {
      xs[corner] = ring[i] as number;
      ys[corner] = ring[i + 1] as number;
      after[corner] = i + 2 < ring.length ? corner + 1 : first;
      ringOf[corner] = index;
      corner++;
    }
  });
  const order = Int32Array.from({ length: count }, (_, index) => index);
  order.sort((one, other) => (xs[one] as number) - (xs[other] as number));
  return { xs, ys, after, ringOf, order, same };
}

/** For each corner the one that stands for all at its place. */
function placesOf({ xs, ys, order, same }: Corners): Int32Array {
  const places = new Int32Array(xs.length);
  order.forEach((corner, at) => {
    const [x, y] = [xs[corner] as number, ys[corner] as number];
    let place = corner;
    for (let before = at - 1; before >= 0; before--) {
      const other = order[before] as number;
      if (x - (xs[other] as number) > same) break;
      if (Math.abs(y - (ys[other] as number)) <= same) place = places[other] as number;
    }
    places[corner] = place;
  });
  return places;
}

/** For each side that a corner lies on, between its ends, these corners in their order along it. */
function touchedSides({ xs, ys, after, order, same }: Corners): ReadonlyMap<number, readonly number[]> {
  const touched = new Map<number, readonly number[]>();
  for (let side = 0; side < xs.length; side++) {
    const [ax, ay] = [xs[side] as number, ys[side] as number];
    const end = after[side] as number;
    const [bx, by] = [xs[end] as number, ys[end] as number];
    const length = Math.hypot(bx - ax, by - ay);
    if (length <= same) continue;
    const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
    const [top, bottom] = [Math.min(ay, by) - same, Math.max(ay, by) + same];
    const right = Math.max(ax, bx) + same;
    const found: { readonly corner: number; readonly along: number }[] = [];
    for (let at = firstFrom(xs, order, Math.min(ax, bx) - same); at < order.length; at++) {
      const corner = order[at] as number;
      const x = xs[corner] as number;
      const y = ys[corner] as number;
      if (x > right) break;
      if (y < top || y > bottom) continue;
      if (Math.abs((x - ax) * uy - (y - ay) * ux) > same) continue;
      const along = (x - ax) * ux + (y - ay) * uy;
      if (along > same && along < length - same) found.push({ corner, along });
    }
    if (found.length === 0) continue;
    touched.set(
      side,
      found.sort((one, other) => one.along - other.along).map(({ corner }) => corner),
    );
  }
  return touched;
}

/** The first place in the order of corners that is no farther left than `x`. */
function firstFrom(xs: Float64Array, order: Int32Array, x: number): number {
  let [first, behind] = [0, order.length];
  while (first < behind) {
    const middle = (first + behind) >> 1;
    if ((xs[order[middle] as number] as number) < x) first = middle + 1;
    else behind = middle;
  }
  return first;
}

/**
 * The sides divided where corners lie on them, one corner standing for all at its place, without those that run back
 * on each other.
 */
function piecesOf(
  { xs, after, ringOf }: Corners,
  places: Int32Array,
  touched: ReadonlyMap<number, readonly number[]>,
): readonly Piece[] {
  const pieces = new Map<string, Piece>();
  const add = (from: number, to: number, ring: number): void => {
    if (from === to || pieces.delete(`${to} ${from}`)) return;
    const key = `${from} ${to}`;
    if (!pieces.has(key)) pieces.set(key, { from, to, ring });
  };
  for (let side = 0; side < xs.length; side++) {
    const way = [side, ...(touched.get(side) ?? []), after[side] as number];
    way.slice(1).forEach((to, at) => {
      add(places[way[at] as number] as number, places[to] as number, ringOf[side] as number);
    });
  }
  return [...pieces.values()];
}

/**
 * Pieces of border put together into rings. Where several meet, each goes on with the one that bounds the same wedge of
 * the area with it; `inward` is 1 for an area to the left of its borders, -1 for one to their right.
 */
function linked(pieces: readonly Piece[], { xs, ys }: Corners, inward: number): Apart {
  const leaving = new Map<number, Piece[]>();
  for (const piece of pieces) {
    const known = leaving.get(piece.from);
    if (known) known.push(piece);
    else leaving.set(piece.from, [piece]);
  }
  const direction = (from: number, to: number): number =>
    Math.atan2((ys[to] as number) - (ys[from] as number), (xs[to] as number) - (xs[from] as number));
  const next = ({ from, to }: Piece): Piece | undefined => {
    const choices = leaving.get(to) ?? [];
    if (choices.length < 2) return choices[0];
    const back = direction(to, from);
    const turns = choices.map((choice) => {
      const turn = inward * (back - direction(to, choice.to));
      return { choice, turn: turn > 0 ? turn : turn + 2 * Math.PI };
    });
    return turns.reduce((least, one) => (one.turn < least.turn ? one : least)).choice;
  };
  const used = new Set<Piece>();
  const rings: Ring[] = [];
  const begins: number[] = [];
  for (const start of pieces) {
    const ring: number[] = [];
    for (let piece: Piece | undefined = start; piece && !used.has(piece); piece = next(piece)) {
      used.add(piece);
      ring.push(xs[piece.from] as number, ys[piece.from] as number);
    }
    if (ring.length < 6) continue;
    rings.push(Float64Array.from(ring));
    begins.push(start.ring);
  }
  return { rings, begins };
}
