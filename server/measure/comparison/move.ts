import { distance, type Point } from '../../plan/geometry/point.js';

/** How far something went, in units of the later canvas. */
export interface Move {
  readonly right: number;
  readonly down: number;
}

/** Part of the diagonal that can't be seen: what moves less has not moved. */
export const LEAST_MOVE = 0.001;

/** From one place to another; nothing where they are no farther apart than a least length, in the same units. */
export function moveBetween(before: Point, now: Point, least: number): Move | undefined {
  return distance(before, now) <= least ? undefined : { right: now.x - before.x, down: now.y - before.y };
}
