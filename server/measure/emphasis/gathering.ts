import type { Box, Point } from '../../plan/geometry/point.js';
import type { BorderStretch } from '../borders/borders.js';
import { ALIKE } from './candidates.js';
import { type Weigh, boxOfStretches } from './field.js';
import { PASSAGE, REACH, counted } from './grid.js';

/** What counts at a place. */
export interface Gathered {
  /** The middle of what is gathered there, weighted; canvas units. */
  readonly at: Point;
  /** The two areas whose border counts most there. */
  readonly areas: readonly [number, number];
}

/** Whether nothing within a box is gathered at a place; canvas units. */
export function isFarOff({ x, y }: Point, { left, top, right, bottom }: Box, diagonal: number): boolean {
  const farthest = 2 * REACH * diagonal;
  return left - x > farthest || x - right > farthest || top - y > farthest || y - bottom > farthest;
}

interface KeptGatherings {
  readonly weigh: Weigh;
  readonly diagonal: number;
  /** By place. */
  readonly at: Map<string, KeptGathering>;
}

interface KeptGathering {
  readonly place: Point;
  readonly gathered: Gathered;
}

const gatherings = new WeakMap<Fronts, KeptGatherings>();

/** `gathering`, kept as long as the borders, with what was last counted of them. */
export function keptGathering(byFront: Fronts, weigh: Weigh, place: Point, diagonal: number): Gathered {
  let kept = gatherings.get(byFront);
  if (kept?.weigh !== weigh || kept.diagonal !== diagonal) {
    kept = { weigh, diagonal, at: new Map() };
    gatherings.set(byFront, kept);
  }
  const key = `${place.x} ${place.y}`;
  const known = kept.at.get(key) ?? { place, gathered: gathering(byFront, weigh, place, diagonal) };
  kept.at.set(key, known);
  return known.gathered;
}

/**
 * Takes over what was gathered of the borders before at places that nothing comes near which is another now.
 *
 * @param before of which each front stands at its place, or nothing is taken over
 */
export function takeOverGatherings(byFront: Fronts, before: Fronts, weigh: Weigh, diagonal: number): void {
  const kept = gatherings.get(before);
  if (byFront.length !== before.length || kept?.weigh !== weigh || kept.diagonal !== diagonal) return;
  const changed: Box[] = [];
  byFront.forEach(({ stretches }, index) => {
    const earlier = (before[index] as Fronts[number]).stretches;
    if (stretches !== earlier) changed.push(boxOfStretches(stretches), boxOfStretches(earlier));
  });
  const at = new Map<string, KeptGathering>();
  for (const [key, known] of kept.at) {
    if (changed.every((box) => isFarOff(known.place, box, diagonal))) at.set(key, known);
  }
  gatherings.set(byFront, { weigh, diagonal, at });
}

/** The stretches of borders, by the front that they belong to. */
export type Fronts = readonly { readonly stretches: readonly BorderStretch[] }[];

const boxes = new WeakMap<Fronts, Float64Array>();

/** Left, top, right and bottom of the box round each list of stretches, kept as long as the lists. */
function boxesOf(byFront: Fronts): Float64Array {
  const known = boxes.get(byFront);
  if (known) return known;
  const all = new Float64Array(4 * byFront.length);
  let place = 0;
  for (const { stretches } of byFront) {
    const { left, top, right, bottom } = boxOfStretches(stretches);
    all[place++] = left;
    all[place++] = top;
    all[place++] = right;
    all[place++] = bottom;
  }
  boxes.set(byFront, all);
  return all;
}

/** Part of the diagonal beyond which no stretch counts, in spite of rounding. */
const OUTERMOST = REACH + PASSAGE;

/** What counts at a place: its weighted middle, and the border that counts most. */
export function gathering(byFront: Fronts, weigh: Weigh, place: Point, diagonal: number): Gathered {
  const farthest = OUTERMOST * diagonal;
  const around = boxesOf(byFront);
  let [sum, x, y] = [0, 0, 0];
  const borders = new Map<number, Map<number, number>>();
  for (let index = 0, box = 0; index < byFront.length; index++, box += 4) {
    if ((around[box] as number) - place.x > farthest || place.x - (around[box + 2] as number) > farthest)
      continue;
    if ((around[box + 1] as number) - place.y > farthest) continue;
    if (place.y - (around[box + 3] as number) > farthest) continue;
    for (const stretch of (byFront[index] as Fronts[number]).stretches) {
      const dx = stretch.at.x - place.x;
      const dy = stretch.at.y - place.y;
      // Most lie too far off to count, and a root costs more than all the rest.
      if (dx > farthest || dx < -farthest || dy > farthest || dy < -farthest) continue;
      const part = counted(Math.sqrt(dx * dx + dy * dy), diagonal);
      if (part === 0) continue;
      const amount = part * stretch.length * weigh(stretch);
      if (amount === 0) continue;
      sum += amount;
      x += amount * stretch.at.x;
      y += amount * stretch.at.y;
      let ofFront = borders.get(stretch.front);
      if (!ofFront) {
        ofFront = new Map<number, number>();
        borders.set(stretch.front, ofFront);
      }
      ofFront.set(stretch.behind, (ofFront.get(stretch.behind) ?? 0) + amount);
    }
  }
  let most = { amount: 0, areas: [-1, -1] as readonly [number, number] };
  for (const [front, ofFront] of borders) {
    for (const [behind, amount] of ofFront) {
      if (amount > most.amount * (1 + ALIKE)) most = { amount, areas: [front, behind] };
    }
  }
  return { at: sum > 0 ? { x: x / sum, y: y / sum } : place, areas: most.areas };
}
