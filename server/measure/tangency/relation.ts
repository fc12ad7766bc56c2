import { pointsOf } from '../../plan/build-outline.js';
import type { Outline } from '../../plan/geometry/outline.js';
import { type Box, type Point, between, boxesOverlap, distance } from '../../plan/geometry/point.js';
import { containsPoint } from '../areas/areas.js';
import { sidesOf } from './seen-border.js';
import { boxOf, distanceTo, fromOf, toOf, turn, widened } from './segments.js';

/** How two shapes lie to each other, borders that only touch left aside. */
export type Relation = 'apart' | 'first in second' | 'second in first' | 'crossing';

/** Of a shape with more sides, a texture or a thing repeated hundreds of times, nobody sees how it lies to another. */
export const MOST_SIDES = 4000;
/** What reaches just the slack over a border only touches it at any size of the canvas. */
const ROUNDING = 1e-9;
/** So many places of a border at most are held against the other shape. */
const MOST_PLACES = 400;

const kept = new WeakMap<
  Outline,
  WeakMap<Outline, { readonly slack: number; readonly relation: Relation }>
>();

/**
 * How two shapes lie to each other. What reaches less than `slack` (canvas units) over the other's border only touches
 * it. Shapes of more than 4,000 sides count as crossing whatever their boxes overlap. Kept as long as both outlines.
 */
export function relationOf(one: Outline, other: Outline, slack: number): Relation {
  const known = kept.get(one)?.get(other);
  if (known?.slack === slack) return known.relation;
  const relation = relate(one, other, slack);
  const ofOne = kept.get(one) ?? new WeakMap<Outline, { slack: number; relation: Relation }>();
  kept.set(one, ofOne);
  ofOne.set(other, { slack, relation });
  return relation;
}

function relate(one: Outline, other: Outline, least: number): Relation {
  const slack = least * (1 + ROUNDING);
  if (!boxesOverlap(one.box, other.box)) return 'apart';
  if (Math.max(pointsOf(one), pointsOf(other)) > MOST_SIDES) return 'crossing';
  const first = sideOf(one, other, slack);
  if (first === 'both') return 'crossing';
  const second = sideOf(other, one, slack);
  if (second === 'both' || (first === 'inside' && second === 'inside')) return 'crossing';
  if (crosses(one, other, slack)) return 'crossing';
  if (first === 'inside') return 'first in second';
  return second === 'inside' ? 'second in first' : 'apart';
}

/** On which side of another's border the corners of a shape and the middles of its sides lie, but for those on it. */
function sideOf(shape: Outline, other: Outline, slack: number): 'inside' | 'outside' | 'both' {
  const around = widened(other.box, slack);
  let inside = false;
  let outside = false;
  const { ends, count } = sidesOf(shape);
  const each = Math.ceil((2 * count) / MOST_PLACES);
  for (let index = 0; index < count; index += each) {
    const corner = fromOf(ends, index);
    for (const point of [corner, between(corner, toOf(ends, index), 0.5)]) {
      const within = isIn(point, around) && containsPoint(other.rings, point, other.fillRule);
      if (within ? inside : outside) continue;
      if (isIn(point, around) && distanceTo(sidesOf(other), point, slack) <= slack) continue;
      if (within) inside = true;
      else outside = true;
      if (inside && outside) return 'both';
    }
  }
  return inside ? 'inside' : 'outside';
}

function isIn({ x, y }: Point, box: Box): boolean {
  return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom;
}

/** Whether a side of one runs through a side of the other, as the bars of a cross do without a corner inside. */
function crosses(one: Outline, other: Outline, slack: number): boolean {
  const [sides, others] = [sidesOf(one), sidesOf(other)];
  for (let index = 0; index < sides.count; index++) {
    const a = fromOf(sides.ends, index);
    const b = toOf(sides.ends, index);
    for (const candidate of others.near(boxOf(sides.ends, index))) {
      const c = fromOf(others.ends, candidate);
      const d = toOf(others.ends, candidate);
      if (runsThrough(turn(a, b, c), turn(a, b, d), slack * distance(a, b))) {
        if (runsThrough(turn(c, d, a), turn(c, d, b), slack * distance(c, d))) return true;
      }
    }
  }
  return false;
}

function runsThrough(oneEnd: number, otherEnd: number, least: number): boolean {
  return oneEnd * otherEnd < 0 && Math.min(Math.abs(oneEnd), Math.abs(otherEnd)) > least;
}
