import { largestOf } from '../../plan/extremes.js';
import { type Point, between, distance } from '../../plan/geometry/point.js';
import {
  type Segments,
  boxOf,
  distanceTo,
  fromOf,
  middleOf,
  nearestPlaces,
  toOf,
  widened,
} from './segments.js';

/** Where two borders come nearest to each other. */
export interface Meeting {
  /** Canvas units. */
  readonly gap: number;
  readonly on: Point;
  readonly onOther: Point;
}

/** Distances that differ by less than this part of the reach are one. */
const ALIKE = 1e-6;
/** Places nearer to each other than so many reaches are one stretch. */
const ONE_STRETCH = 6;
/** A border is walked in steps of this part of the tolerance, but no more than so many to a piece. */
const STEP = 0.5;
const MOST_STEPS = 400;

/**
 * Where two borders come nearest, none when they are farther apart than `reach`. Of several places as near, the middle
 * when they lie in one stretch, else the nearest to the middle of the canvas.
 */
export function meetingOf(
  border: Segments,
  other: Segments,
  reach: number,
  middle: Point,
): Meeting | undefined {
  let best = reach;
  let found: Meeting[] = [];
  for (let index = 0; index < border.count; index++) {
    for (const candidate of other.near(widened(boxOf(border.ends, index), best + ALIKE * reach))) {
      const places = nearestPlaces(
        fromOf(border.ends, index),
        toOf(border.ends, index),
        fromOf(other.ends, candidate),
        toOf(other.ends, candidate),
        ALIKE * reach,
      );
      if (places.gap > best + ALIKE * reach) continue;
      if (places.gap < best - ALIKE * reach) found = [];
      best = Math.min(best, places.gap);
      found.push(places);
    }
  }
  const nearest = found.filter(({ gap }) => gap <= best + ALIKE * reach);
  const inOrder = nearest.toSorted(
    (one, another) =>
      distance(one.on, middle) - distance(another.on, middle) ||
      one.on.y - another.on.y ||
      one.on.x - another.on.x,
  );
  const [first] = inOrder;
  const farthest = first && largestOf(inOrder.map(({ on }) => distance(on, first.on)));
  if (!first || farthest === undefined || farthest > ONE_STRETCH * reach) return first;
  return {
    gap: best,
    on: middleOf(inOrder.map(({ on }) => on)),
    onOther: middleOf(inOrder.map(({ onOther }) => onOther)),
  };
}

/** Length of a border, canvas units. */
export function lengthOf({ ends, count }: Segments): number {
  let length = 0;
  for (let index = 0; index < count; index++) length += distance(fromOf(ends, index), toOf(ends, index));
  return length;
}

/** Length of a border, canvas units, that lies within a distance of another. */
export function lengthWithin(border: Segments, other: Segments, within: number): number {
  let length = 0;
  for (let index = 0; index < border.count; index++) {
    if (other.near(widened(boxOf(border.ends, index), within)).length === 0) continue;
    const [from, to] = [fromOf(border.ends, index), toOf(border.ends, index)];
    const whole = distance(from, to);
    const steps = Math.min(MOST_STEPS, Math.max(1, Math.ceil(whole / (STEP * within))));
    for (let step = 0; step < steps; step++) {
      const at = between(from, to, (step + 0.5) / steps);
      if (distanceTo(other, at, within) <= within) length += whole / steps;
    }
  }
  return length;
}
