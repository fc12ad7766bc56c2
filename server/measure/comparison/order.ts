import { boxesOverlap } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { ObjectPair } from './pairs.js';

/** That an object came to lie in front of another, or behind it. */
export interface Passed {
  /** Index into the objects of the later plan. */
  readonly object: number;
  readonly isInFront: boolean;
}

/** So many objects are held against each other; the time goes by the square of it. */
const MOST = 300;

/**
 * Which objects changed the order in which they cover each other, by the index in the later plan of the one that was
 * taken to another place. Only those of one plane that lie over each other are told: other orders are not seen.
 */
export function passedObjects(
  earlier: Plan,
  later: Plan,
  pairs: readonly ObjectPair[],
): ReadonlyMap<number, readonly Passed[]> {
  const depthBefore = new Map(earlier.coveringOrder.map((object, depth) => [object, depth]));
  const depthNow = new Map(later.coveringOrder.map((object, depth) => [object, depth]));
  const inOrder = pairs
    .filter((pair) => earlier.objects[pair.earlier]?.plane === later.objects[pair.later]?.plane)
    .map((pair) => ({
      object: pair.later,
      before: depthBefore.get(pair.earlier) ?? 0,
      now: depthNow.get(pair.later) ?? 0,
    }))
    .sort((one, other) => one.now - other.now)
    .slice(0, MOST);
  const kept = longestRise(inOrder.map(({ before }) => before));
  const passed = new Map<number, readonly Passed[]>();
  inOrder.forEach((moved, index) => {
    if (kept.has(index)) return;
    const over = inOrder.flatMap((other): readonly Passed[] => {
      const isPassed = (moved.now - other.now) * (moved.before - other.before) < 0;
      return isPassed && liesOver(later, moved.object, other.object)
        ? [{ object: other.object, isInFront: moved.now > other.now }]
        : [];
    });
    if (over.length > 0) passed.set(moved.object, over);
  });
  return passed;
}

function liesOver({ objects }: Plan, one: number, other: number): boolean {
  const [a, b] = [objects[one], objects[other]];
  return (
    a !== undefined && b !== undefined && a.plane === b.plane && boxesOverlap(a.outline.box, b.outline.box)
  );
}

/**
 * Indices of the longest part of a sequence that rises: what stayed in order, so that the fewest are told to have
 * moved.
 */
function longestRise(sequence: readonly number[]): ReadonlySet<number> {
  const best = sequence.map(() => ({ length: 1, before: -1 }));
  let last = -1;
  sequence.forEach((value, index) => {
    for (let earlier = 0; earlier < index; earlier++) {
      const length = (best[earlier]?.length ?? 0) + 1;
      if ((sequence[earlier] ?? 0) < value && length > (best[index]?.length ?? 0))
        best[index] = { length, before: earlier };
    }
    if (last < 0 || (best[index]?.length ?? 0) > (best[last]?.length ?? 0)) last = index;
  });
  const kept = new Set<number>();
  for (let index = last; index >= 0; index = best[index]?.before ?? -1) kept.add(index);
  return kept;
}
