import { Clipper, FillRule, type Path64, type Paths64, type Point64 } from 'clipper2-ts';

/**
 * Polygons on whole numbers. As results: borders do not cross, outer ones have positive area, holes negative.
 * Every call of clipper2-ts goes through this file, because of `withoutLevelRuns`.
 */
export type Polygons = Paths64;

/** What the rings hold together, by the even-odd rule or (nonzero) wherever they wind round a place. */
export function united(polygons: Polygons, fillRule?: 'evenodd'): Polygons {
  const rule = fillRule === 'evenodd' ? FillRule.EvenOdd : FillRule.NonZero;
  const safe = withoutLevelRuns(polygons);
  return safe.length === 0 ? [] : Clipper.union(safe, rule);
}

/** What is left of `subject` outside of `covers`. */
export function difference(subject: Polygons, covers: Polygons): Polygons {
  const safe = withoutLevelRuns(subject);
  return safe.length === 0 ? [] : Clipper.difference(safe, withoutLevelRuns(covers), FillRule.NonZero);
}

/** What `a` and `b` share. */
export function intersection(a: Polygons, b: Polygons): Polygons {
  const safe = withoutLevelRuns(a);
  return safe.length === 0 ? [] : Clipper.intersect(safe, withoutLevelRuns(b), FillRule.NonZero);
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
