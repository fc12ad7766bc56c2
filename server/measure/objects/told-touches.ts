import type { Canvas } from '../../plan/plan.js';
import { type Carried, carried } from '../carried.js';
import { merged } from '../merged.js';
import { type Parts, notMeant } from './meant-touches.js';
import { type PlacedTouch, addTo, touchesAt } from './near-touches.js';
import type { Beside } from './seen-outlines.js';
import type { Touch } from './tangents.js';

/** The touches that a painter has not meant, with all that was looked at. */
export interface ToldTouches {
  readonly parts: Parts;
  /** What each object comes near, in the order of the objects. */
  readonly near: Carried<Beside, readonly PlacedTouch[]>;
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
  const near = carried(besides, last?.near, (beside, place) => touchesAt(beside, place, canvas));
  const isAlike = last?.parts === parts && last.near.results.length === besides.length;
  const earlier = isAlike ? last : undefined;
  if (earlier?.near.results === near.results) return { parts, near, told: earlier.told };
  const stirred = earlier
    ? objectsStirred(near.results, earlier.near.results, parts.length)
    : new Uint8Array(parts.length).fill(1);
  const judged: PlacedTouch[] = [];
  for (const own of near.results) for (const touch of own) if (isStirred(touch, stirred)) judged.push(touch);
  const isNotMeant = notMeant(canvas, () => parts, gapsRound(judged, near.results, parts.length));
  const added = judged.filter(({ touch }) => isNotMeant(touch)).sort(nearestFirst);
  const stayed = earlier ? earlier.told.filter((touch) => !isStirred(touch, stirred)) : [];
  return { parts, near, told: merged(stayed, added, nearestFirst) };
}

/** 1 for each object that comes near other things than before, `count` of all. */
function objectsStirred(
  near: readonly (readonly PlacedTouch[])[],
  before: readonly (readonly PlacedTouch[])[],
  count: number,
): Uint8Array {
  const stirred = new Uint8Array(count);
  const take = (touches: readonly PlacedTouch[] | undefined): void => {
    for (const { touch } of touches ?? []) {
      stirred[touch.one] = 1;
      stirred[touch.other] = 1;
    }
  };
  near.forEach((own, place) => {
    if (own === before[place]) return;
    take(own);
    take(before[place]);
  });
  return stirred;
}

function isStirred({ touch }: PlacedTouch, stirred: Uint8Array): boolean {
  return stirred[touch.one] === 1 || stirred[touch.other] === 1;
}

/** For each object of some touches all gaps beside it, `count` objects in all. */
function gapsRound(
  touches: readonly PlacedTouch[],
  near: readonly (readonly PlacedTouch[])[],
  count: number,
): (object: number) => readonly Touch[] {
  const wanted = new Uint8Array(count);
  for (const { touch } of touches) {
    wanted[touch.one] = 1;
    wanted[touch.other] = 1;
  }
  const gaps = new Map<number, Touch[]>();
  if (touches.length > 0) {
    for (const own of near) {
      for (const { touch } of own) {
        if (!touch.along) continue;
        if (wanted[touch.one] === 1) addTo(gaps, touch.one, touch);
        if (wanted[touch.other] === 1) addTo(gaps, touch.other, touch);
      }
    }
  }
  return (object) => gaps.get(object) ?? [];
}

function nearestFirst(one: PlacedTouch, other: PlacedTouch): number {
  return one.steps - other.steps || one.order - other.order;
}
