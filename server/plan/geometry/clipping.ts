import { Clipper, FillRule, type Path64, type Paths64, type Point64 } from 'clipper2-ts';
import { type Box, NO_BOX } from './point.js';

/**
 * Polygons on whole numbers. As results: borders do not cross, outer ones have positive area, holes negative.
 * Every call of clipper2-ts goes through this file, because of `withoutLevelRuns`.
 */
export type Polygons = Paths64;

/** Area of results, in squares of the grid; never negative. */
export function areaOnGrid(polygons: Polygons): number {
  return Math.max(0, windingArea(polygons));
}

/** The box round polygons, grid steps; `NO_BOX` for none. */
export function boxOfPolygons(polygons: Polygons): Box {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const path of polygons) {
    for (const { x, y } of path) {
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
  }
  return left <= right ? { left, top, right, bottom } : NO_BOX;
}

/** What the rings hold together, by the even-odd rule or (nonzero) wherever they wind round a place. */
export function united(polygons: Polygons, fillRule?: 'evenodd'): Polygons {
  const rule = fillRule === 'evenodd' ? FillRule.EvenOdd : FillRule.NonZero;
  const safe = withoutLevelRuns(polygons);
  if (safe.length === 0) return [];
  const union = Clipper.union(safe, rule);
  // Rings that wind once round their inside prove the result right; others need a second opinion.
  if (Math.abs(Math.abs(windingArea(safe)) - areaOnGrid(union)) <= roundingOf(safe)) return union;
  return agreed([safe], ([rings = []]) => Clipper.union(withoutLevelRuns(rings), rule));
}

/** What is left of `subject` outside of `covers`; with a second opinion if `careful`. */
export function difference(subject: Polygons, covers: Polygons, careful: boolean): Polygons {
  return clipped([subject, covers], careful, ([a = [], b = []]) =>
    Clipper.difference(a, b, FillRule.NonZero),
  );
}

/** What `a` and `b` share; with a second opinion if `careful`. */
export function intersection(a: Polygons, b: Polygons, careful: boolean): Polygons {
  return clipped([a, b], careful, ([first = [], second = []]) =>
    Clipper.intersect(first, second, FillRule.NonZero),
  );
}

function clipped(inputs: readonly Polygons[], careful: boolean, work: Work): Polygons {
  const safely: Work = (rings) => work(rings.map(withoutLevelRuns));
  return careful ? agreed(inputs, safely) : safely(inputs);
}

type Work = (inputs: readonly Polygons[]) => Polygons;

interface Turn {
  readonly there: (point: Point64) => Point64;
  readonly back: (point: Point64) => Point64;
  /** True when rings run the other way round afterwards. */
  readonly mirrors: boolean;
}

const TURNS: readonly Turn[] = [
  { there: (point) => point, back: (point) => point, mirrors: false },
  { there: swapped, back: swapped, mirrors: true },
  { there: ({ x, y }) => ({ x: -x, y }), back: ({ x, y }) => ({ x: -x, y }), mirrors: true },
  { there: ({ x, y }) => ({ x: -y, y: x }), back: ({ x, y }) => ({ x: y, y: -x }), mirrors: false },
  { there: ({ x, y }) => ({ x, y: -y }), back: ({ x, y }) => ({ x, y: -y }), mirrors: true },
];

/**
 * The first result that comes out the same with the sheet turned another way. Where many borders meet in one point,
 * clipper2 now and then loses or adds a piece (its issue 1067 and others; some 1 in 2,000 scribbles over a coarse
 * lattice), but hardly ever the same one from two sides.
 */
function agreed(inputs: readonly Polygons[], work: Work): Polygons {
  const rounding = roundingOf(inputs.flat());
  const results: { readonly polygons: Polygons; readonly area: number }[] = [];
  for (const turn of TURNS) {
    const outcome = work(inputs.map((rings) => rings.map((ring) => ring.map(turn.there))));
    const polygons = outcome.map((ring) => {
      const back = ring.map(turn.back);
      return turn.mirrors ? back.reverse() : back;
    });
    const area = areaOnGrid(polygons);
    const twin = results.find((other) => Math.abs(other.area - area) <= rounding);
    if (twin) return twin.polygons;
    results.push({ polygons, area });
  }
  return results[0]?.polygons ?? [];
}

function swapped({ x, y }: Point64): Point64 {
  return { x: y, y: x };
}

/** How far two right results may lie apart: each point is rounded to the grid, with sides as long as the box. */
function roundingOf(rings: Polygons): number {
  const { left, top, right, bottom } = boxOfPolygons(rings);
  const points = rings.reduce((sum, ring) => sum + ring.length, 0);
  return (points + 16) * (right - left + bottom - top);
}

/** Each place counted as often as the rings wind round it. */
function windingArea(polygons: Polygons): number {
  return polygons.reduce((sum, path) => sum + twiceArea(path), 0) / 2;
}

/** Measured from the first point, so that a small ring far from the origin loses nothing to rounding. */
function twiceArea(path: Path64): number {
  const [origin] = path;
  if (!origin) return 0;
  let sum = 0;
  let previous = origin;
  for (const point of path) {
    sum += (previous.x - origin.x) * (point.y - origin.y) - (point.x - origin.x) * (previous.y - origin.y);
    previous = point;
  }
  return sum;
}

/**
 * The same rings with a run of level sides made one, and rings without area left out. clipper2-ts 2.0.1 never ends
 * on level sides in a row that turn back on themselves (its pull request 36); what such a ring winds round is the
 * same without them.
 */
function withoutLevelRuns(polygons: Polygons): Polygons {
  return polygons.map(levelled).filter((path) => path.length > 2);
}

function levelled(path: Path64): Path64 {
  if (!path.some((_, index) => isLevelAt(path, index))) return path;
  const kept: Point64[] = [];
  for (const point of path) {
    while (kept.length > 1 && isLevel(kept.at(-2), kept.at(-1), point)) kept.pop();
    if (!same(kept.at(-1), point)) kept.push(point);
  }
  // The run may go on across the seam, where the last point meets the first.
  let first = 0;
  for (;;) {
    const last = kept.at(-1);
    if (kept.length - first < 3) return [];
    if (same(last, kept[first]) || isLevel(kept.at(-2), last, kept[first])) kept.pop();
    else if (isLevel(last, kept[first], kept[first + 1])) first++;
    else return kept.slice(first);
  }
}

function isLevelAt(path: Path64, index: number): boolean {
  return isLevel(path.at(index - 1), path[index], path[(index + 1) % path.length]);
}

function isLevel(a: Point64 | undefined, b: Point64 | undefined, c: Point64 | undefined): boolean {
  return a?.y === b?.y && b?.y === c?.y;
}

function same(a: Point64 | undefined, b: Point64 | undefined): boolean {
  return a?.x === b?.x && a?.y === b?.y;
}
