import type { Side } from '../../grammar/index.js';
import { smallestOf } from './extremes.js';
import type { Outline, Ring } from './geometry/outline.js';
import { type Point, distance, hypotenuse, lengthAlong } from './geometry/point.js';
import { gridOver, polygonsOf, ringsOf } from './geometry/polygons.js';
import type { Frame } from './leads-frame.js';
import {
  type Preference,
  type RingPlace,
  edgeOfRing,
  farthestPlace,
  higherAndOuter,
  nearestPlace,
  preferring,
  wayRound,
  wayTo,
} from './leads-ring.js';
import { simplified, withoutRepeats } from './leads-simplify.js';
import { signedArea } from './geometry/path.js';

/**
 * How far round a ring the shorter way may go: a little more than half, so that two ends far apart are both in reach.
 */
const SHORTER_WAY = 0.55;
/** Of ways whose costs differ by less than this part, the shortest is taken. */
const ALIKE = 0.05;
/** Lengths that differ by less than this part are the same. */
const SAME = 1e-9;

export interface Carrying {
  /** Only along this edge; missing, all round. */
  readonly side?: Side;
  /** Where the lead comes from; missing, it begins on the outline. */
  readonly from?: Point;
  /** Where it goes when it has left the outline. */
  readonly target: Point;
  readonly canvas: Frame;
  /** Canvas units that are too little to be seen. */
  readonly tolerance: number;
}

interface Run {
  readonly points: readonly Point[];
  /** What is left to the target, a turn counted in; canvas units. */
  readonly cost: number;
  readonly length: number;
}

/**
 * The stretch of an outline that carries a lead, from where the lead meets it to where it leaves, at most 48 points in
 * canvas units; none for an outline without area.
 *
 * The lead meets the outline at the place nearest to `from`. Without one it begins at the place farthest from the
 * target, or at the farther end of the edge named, which is on the edge of the canvas where the line of that edge goes
 * on to there. It goes the shorter way round and leaves where gap x (2 - cos turn) is least: the gap is the way left to
 * the target, the turn is from the direction of the outline into that of the gap, so a turn of a right angle doubles
 * the way. Of two ways whose sums differ by less than 5 % it goes the shorter. An outline in several pieces carries it
 * along one, the piece nearest to `from` or else the one with the least of that sum.
 */
export function carriedAlong(outline: Outline, carrying: Carrying): readonly Point[] {
  const { from } = carrying;
  const rings = piecesOf(outline);
  const [nearest] =
    from === undefined ? [] : [...rings].sort((one, other) => gapTo(one, from) - gapTo(other, from));
  const runs = (nearest ? [nearest] : rings).flatMap((ring) =>
    waysOf(ring, carrying).map((way) => runOf(way, carrying.target)),
  );
  const least = smallestOf(runs.map(({ cost }) => cost));
  const [best] = runs
    .filter(({ cost }) => cost <= least * (1 + ALIKE + SAME))
    .sort(shorterFirst(carrying.canvas));
  return best ? simplified(withoutRepeats(best.points), carrying.tolerance) : [];
}

/** What has an outline that can carry a lead. */
export function hasEdge({ rings }: Outline): boolean {
  return rings.length > 0;
}

const pieces = new WeakMap<Outline, readonly Ring[]>();

/** The outer border of each piece, overlaps of its shapes melted together. */
function piecesOf(outline: Outline): readonly Ring[] {
  if (outline.rings.length < 2) return outline.rings;
  const kept = pieces.get(outline);
  if (kept) return kept;
  const grid = gridOver(outline.box);
  const melted = grid ? ringsOf(polygonsOf(outline, grid), grid) : [];
  const largest = melted.reduce((most, ring) => {
    const area = signedArea(ring);
    return Math.abs(area) > Math.abs(most) ? area : most;
  }, 0);
  const outer = melted.filter((ring) => signedArea(ring) * largest > 0);
  pieces.set(outline, outer);
  return outer;
}

function gapTo(ring: Ring, place: Point): number {
  return distance(nearestPlace(ring, place).at, place);
}

/** The ways that a lead may take along one ring, each from where it meets the ring. */
function waysOf(ring: Ring, { side, from, target, canvas }: Carrying): readonly (readonly Point[])[] {
  const prefer = higherAndOuter(canvas);
  if (side === undefined) {
    // From the middle of a round shape, where all its places are as near, it sets out towards where it goes.
    const start = from
      ? nearestPlace(ring, from, 'closed', (place) => [distance(place, target), ...prefer(place)])
      : farthestPlace(ring, target, prefer);
    return bothWaysRound(ring, start);
  }
  const edge = edgeOfRing(ring, side, signedArea(ring) >= 0, canvas);
  if (from) return bothWaysAlong(edge, from, prefer);
  const [first, last] = [edge[0], edge.at(-1)];
  if (!first || !last) return [];
  const slack = SAME * (distance(first, target) + distance(last, target));
  const further = distance(first, target) - distance(last, target);
  const isBefore = further > slack || (further >= -slack && preferring(prefer, first, last, slack) <= 0);
  return [isBefore ? edge : [...edge].reverse()];
}

function bothWaysRound(ring: Ring, start: RingPlace): readonly (readonly Point[])[] {
  const forward = wayRound(ring, start);
  const reach = lengthAlong(forward) * SHORTER_WAY;
  return [firstPart(forward, reach), firstPart([...forward].reverse(), reach)];
}

function bothWaysAlong(
  edge: readonly Point[],
  from: Point,
  prefer: Preference,
): readonly (readonly Point[])[] {
  const flat = Float64Array.from(edge.flatMap(({ x, y }) => [x, y]));
  const { side, at } = nearestPlace(flat, from, 'open', prefer);
  return [wayTo(at, edge.slice(side + 1)), wayTo(at, edge.slice(0, side + 1).reverse())];
}

/** Up to the place from which it is best to leave for the target; the first of equals. */
function runOf(way: readonly Point[], target: Point): Run {
  const [start] = way;
  if (!start) return { points: [], cost: Infinity, length: 0 };
  let best: { readonly cost: number; readonly after: number; readonly at: Point } = {
    cost: 2 * distance(start, target),
    after: 0,
    at: start,
  };
  for (let i = 0; i + 1 < way.length; i++) {
    const leaving = leavingOn(way[i] as Point, way[i + 1] as Point, target, i === 0);
    if (leaving && leaving.cost < best.cost - SAME * best.cost)
      best = { cost: leaving.cost, after: i, at: leaving.at };
  }
  const points = wayTo(best.at, way.slice(0, best.after + 1).reverse()).toReversed();
  return { points, cost: best.cost, length: lengthAlong(points) };
}

/**
 * The best place on a straight stretch. With the target h beside the line and s ahead, 2 sqrt(s^2 + h^2) - s is least
 * at s = h / sqrt 3, and rises to both sides of it.
 */
function leavingOn(
  from: Point,
  to: Point,
  target: Point,
  isFirst: boolean,
): { readonly cost: number; readonly at: Point } | undefined {
  const length = distance(from, to);
  if (length === 0) return undefined;
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  const ahead = (target.x - from.x) * ux + (target.y - from.y) * uy;
  const beside = Math.abs((target.x - from.x) * uy - (target.y - from.y) * ux);
  const along = Math.min(length, ahead - beside / Math.sqrt(3));
  // At the start of a later stretch the lead still has the direction of the one before, which has counted it.
  if (along <= 0 && !isFirst) return undefined;
  const part = Math.max(0, along);
  const left = ahead - part;
  return {
    cost: 2 * hypotenuse(left, beside) - left,
    at: part === length ? to : { x: from.x + ux * part, y: from.y + uy * part },
  };
}

/**
 * Of two as long, the one higher in the picture first, of those as high the one farther out from its upright middle.
 */
function shorterFirst(canvas: Frame): (one: Run, other: Run) => number {
  return (one, other) => {
    const slack = SAME * (one.length + other.length);
    if (Math.abs(one.length - other.length) > slack) return one.length - other.length;
    return preferring(higherAndOuter(canvas), middleOf(one.points), middleOf(other.points), slack);
  };
}

function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((all, { x, y }) => ({ x: all.x + x, y: all.y + y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function firstPart(way: readonly Point[], length: number): readonly Point[] {
  const part: Point[] = [];
  let run = 0;
  for (const point of way) {
    const last = part.at(-1);
    const step = last ? distance(last, point) : 0;
    if (last && run + step > length) {
      const share = (length - run) / step;
      part.push({ x: last.x + (point.x - last.x) * share, y: last.y + (point.y - last.y) * share });
      return part;
    }
    run += step;
    part.push(point);
  }
  return part;
}
