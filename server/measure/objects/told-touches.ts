import type { Canvas } from '../../plan/plan.js';
import { merged } from '../merged.js';
import { type Parts, notMeant } from './meant-touches.js';
import { type PlacedTouch, addTo, touchesAt } from './near-touches.js';
import type { Beside } from './seen-outlines.js';
import type { Touch } from './tangents.js';

/** The touches that a painter has not meant, with all that was looked at. */
export interface ToldTouches {
  readonly parts: Parts;
  readonly besides: readonly Beside[];
  /** What each object comes near, in the order of the objects. */
  readonly near: readonly (readonly PlacedTouch[])[];
  /** Nearest first. */
  readonly told: readonly PlacedTouch[];
}

/**
 * The touches of all objects that are not meant.
 *
 * @param last what was told before on a canvas of this size: only touches of objects that come near other things than
 * then are judged anew
 */
export function toldTouches(
  besides: readonly Beside[],
  canvas: Canvas,
  parts: Parts,
  last?: ToldTouches,
): ToldTouches {
  const near = besides.map((beside, place) =>
    beside === last?.besides[place] ? (last.near[place] ?? []) : touchesAt(beside, place, canvas),
  );
  const earlier = last?.parts === parts && last.near.length === near.length ? last : undefined;
  const stirred = earlier && objectsStirred(near, earlier.near);
  const judged: PlacedTouch[] = [];
  for (const own of near) for (const touch of own) if (isStirred(touch, stirred)) judged.push(touch);
  const isNotMeant = notMeant(canvas, () => parts, gapsRound(judged, near));
  const added = judged.filter(({ touch }) => isNotMeant(touch)).sort(nearestFirst);
  const stayed = earlier ? earlier.told.filter((touch) => !isStirred(touch, stirred)) : [];
  return { parts, besides, near, told: merged(stayed, added, nearestFirst) };
}

/** The objects that come near other things than before. */
function objectsStirred(
  near: readonly (readonly PlacedTouch[])[],
  before: readonly (readonly PlacedTouch[])[],
): ReadonlySet<number> {
  const stirred = new Set<number>();
  const take = ({ touch: { one, other } }: PlacedTouch): void => {
    stirred.add(one);
    stirred.add(other);
  };
  near.forEach((own, place) => {
    const earlier = before[place];
    if (own === earlier) return;
    own.forEach(take);
    earlier?.forEach(take);
  });
  return stirred;
}

/** @param stirred all objects are unless given */
function isStirred({ touch }: PlacedTouch, stirred: ReadonlySet<number> | undefined): boolean {
  return !stirred || (stirred.size > 0 && (stirred.has(touch.one) || stirred.has(touch.other)));
}

/** For each object of some touches all gaps beside it. */
function gapsRound(
  touches: readonly PlacedTouch[],
  near: readonly (readonly PlacedTouch[])[],
): (object: number) => readonly Touch[] {
  const wanted = new Set(touches.flatMap(({ touch: { one, other } }) => [one, other]));
  const gaps = new Map<number, Touch[]>();
  if (wanted.size > 0) {
    for (const own of near) {
      for (const { touch } of own) {
        if (!touch.along) continue;
        if (wanted.has(touch.one)) addTo(gaps, touch.one, touch);
        if (wanted.has(touch.other)) addTo(gaps, touch.other, touch);
      }
    }
  }
  return (object) => gaps.get(object) ?? [];
}

function nearestFirst(one: PlacedTouch, other: PlacedTouch): number {
  return one.steps - other.steps || one.order - other.order;
}
