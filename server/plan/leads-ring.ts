import type { Side } from '../../grammar/index.js';
import type { Ring } from './geometry/outline.js';
import { boxOfRings } from './geometry/outline.js';
import { type Point, distance, samePoint, edgeOfBox } from './geometry/point.js';
import { type Frame, onToFrame } from './leads-frame.js';

/** A place on a ring: on the straight side from point `side` to the next. */
export interface RingPlace {
  readonly side: number;
  readonly at: Point;
}

/** Distances closer than this part of the ring's size are the same. */
const SAME = 1e-9;

/**
 * Figures by which places are told apart that nothing else does: the place is taken of which the first that differs is
 * less.
 */
export type Preference = (place: Point) => readonly number[];

/** The higher place, then the one farther out from the upright middle of the canvas: the same in a mirror. */
export function higherAndOuter({ width }: Frame): Preference {
  return ({ x, y }) => [y, -Math.abs(x - width / 2)];
}

/** Below 0 where the first of two places is preferred; figures within `slack` are the same. */
export function preferring(prefer: Preference, one: Point, other: Point, slack: number): number {
  const others = prefer(other);
  const differences = prefer(one).map((figure, index) => figure - (others[index] ?? 0));
  return differences.find((difference) => Math.abs(difference) > slack) ?? 0;
}

/**
 * The place of a ring nearest to a point. Of places equally near, the one that is preferred, else the first.
 * An `open` one has no side from its last point back to its first.
 */
export function nearestPlace(
  ring: Ring,
  to: Point,
  kind: 'closed' | 'open' = 'closed',
  prefer: Preference = () => [],
): RingPlace {
  const count = ring.length / 2;
  const sides = kind === 'closed' ? count : count - 1;
  let best: RingPlace = { side: 0, at: pointOf(ring, 0) };
  let least = Infinity;
  for (let side = 0; side < sides; side++) {
    const at = nearestOnSide(pointOf(ring, side), pointOf(ring, (side + 1) % count), to);
    const away = distance(at, to);
    const slack = SAME * (least === Infinity ? 0 : least + away);
    if (away > least + slack) continue;
    const isNearer = away < least - slack || least === Infinity;
    if (isNearer || preferring(prefer, at, best.at, slack) < 0) {
      best = { side, at };
      least = away;
    }
  }
  return best;
}

/** The corner of a ring farthest from a point; of several the one that is preferred. */
export function farthestPlace(ring: Ring, from: Point, prefer: Preference): RingPlace {
  let best: RingPlace = { side: 0, at: pointOf(ring, 0) };
  let most = distance(best.at, from);
  for (let side = 1; side < ring.length / 2; side++) {
    const at = pointOf(ring, side);
    const away = distance(at, from);
    const slack = SAME * (away + most);
    const isPreferred = away >= most - slack && preferring(prefer, at, best.at, slack) < 0;
    if (away > most + slack || isPreferred) {
      best = { side, at };
      most = Math.max(most, away);
    }
  }
  return best;
}

/** Once round a ring, in its own direction, from a place on it back to that place. */
export function wayRound(ring: Ring, { side, at }: RingPlace): readonly Point[] {
  const count = ring.length / 2;
  const corners = Array.from({ length: count }, (_, step) => pointOf(ring, (side + 1 + step) % count));
  return [...wayTo(at, corners), ...(samePoint(corners.at(-1) ?? at, at) ? [] : [at])];
}

/** A way that begins at a place and goes on through points; one that is the place itself is not gone to again. */
export function wayTo(at: Point, then: readonly Point[]): readonly Point[] {
  const [first] = then;
  return first && samePoint(first, at) ? then : [at, ...then];
}

/**
 * One edge of a ring: from its place nearest to one end of that side of its box to its place nearest to the other
 * end, by the way that does not pass the other two corners. Left to right, or from the top down. Where its line goes on
 * to the edge of the canvas it goes on to there.
 */
export function edgeOfRing(ring: Ring, side: Side, isClockwise: boolean, canvas: Frame): readonly Point[] {
  const [first, last] = edgeOfBox(boxOfRings([ring]), side);
  const prefer = outermost(side);
  const start = nearestPlace(ring, first, 'closed', prefer);
  const end = nearestPlace(ring, last, 'closed', prefer);
  const isForward = isClockwise === (side === 'top' || side === 'right');
  const [from, to] = isForward ? [start, end] : [end, start];
  const edge = wayBetween(ring, from, to);
  const whole = [
    ...onward([...edge].reverse(), wayRound(ring, from).toReversed(), canvas).toReversed(),
    ...edge,
    ...onward(edge, wayRound(ring, to), canvas),
  ];
  return isForward ? whole : whole.reverse();
}

/** What follows the last stretch of an edge up to the edge of the canvas. */
function onward(edge: readonly Point[], round: readonly Point[], canvas: Frame): readonly Point[] {
  const [before, end] = edge.slice(-2);
  return before && end ? onToFrame(before, end, round, canvas) : [];
}

function outermost(side: Side): Preference {
  switch (side) {
    case 'top':
      return ({ y }) => [y];
    case 'bottom':
      return ({ y }) => [-y];
    case 'left':
      return ({ x }) => [x];
    case 'right':
      return ({ x }) => [-x];
  }
}

/** Along a ring in its own direction. */
function wayBetween(ring: Ring, start: RingPlace, end: RingPlace): readonly Point[] {
  const count = ring.length / 2;
  const from = pointOf(ring, start.side);
  const isAhead = start.side === end.side && distance(from, start.at) <= distance(from, end.at);
  const steps = isAhead ? 0 : (end.side - start.side + count) % count || count;
  const corners = Array.from({ length: steps }, (_, step) => pointOf(ring, (start.side + 1 + step) % count));
  const last = corners.at(-1) ?? start.at;
  return [...wayTo(start.at, corners), ...(samePoint(last, end.at) ? [] : [end.at])];
}

function nearestOnSide(a: Point, b: Point, to: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const squared = dx * dx + dy * dy;
  const part = squared > 0 ? ((to.x - a.x) * dx + (to.y - a.y) * dy) / squared : 0;
  if (part <= 0) return a;
  return part >= 1 ? b : { x: a.x + part * dx, y: a.y + part * dy };
}

function pointOf(ring: Ring, index: number): Point {
  return { x: ring[2 * index] ?? NaN, y: ring[2 * index + 1] ?? NaN };
}
