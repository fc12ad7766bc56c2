import type { DivisionSystem } from '../../../grammar/index.js';
import type { Ring } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Crossing } from '../../plan/plan.js';
import { distanceToOutline } from '../areas/areas.js';

/** Where the centre of interest lies. */
export interface FocusMeasure {
  /** The crossing nearest to the focal point, of all systems of the plan. */
  readonly nearest?: {
    readonly system: DivisionSystem;
    readonly crossing: Crossing;
    /** Canvas units. */
    readonly distance: number;
    /** Part of the diagonal. */
    readonly distanceShare: number;
  };
  /** To the nearest place where lines of one division meet, named or not, part of the diagonal; missing without any. */
  readonly fromMeeting?: number;
  /** Distance to the middle of the canvas, part of the diagonal. */
  readonly fromCentre: number;
  /** For every dominant object: does its visible shape hold the point, and how far is its border. */
  readonly dominants: readonly {
    readonly object: number;
    readonly holds: boolean;
    /** From the focal point to its nearest visible border, part of the diagonal; missing when nothing of it is seen. */
    readonly distanceShare?: number;
  }[];
}

/** Part of the diagonal within which what is seen of an object brings it to the focal point. */
const AT_FOCUS = 0.05;
/** So that what is exactly as far counts in spite of rounding. */
const ROUNDING = 1e-9;
/**
 * What is seen is cut on a grid of some billionths of the diagonal, so distances from it are known to so many parts.
 */
const KNOWN_PARTS = 1e7;

/** How far the nearest border of what is seen lies from the focal point, part of the diagonal; infinite without any. */
export function awayFromFocus(visible: readonly Ring[], focus: Point, diagonal: number): number {
  return Math.round((KNOWN_PARTS * distanceToOutline(visible, focus)) / diagonal) / KNOWN_PARTS;
}

/** Whether a distance from the focal point, part of the diagonal, is no more than 5 %. */
export function isAtFocus(distanceShare: number): boolean {
  return distanceShare <= AT_FOCUS + ROUNDING;
}

/**
 * The dominant objects that lie at the focal point: what is seen of them holds it or comes within 5 % of the diagonal.
 */
export function dominantsAtFocus(focus: FocusMeasure | undefined): readonly number[] {
  return (focus?.dominants ?? [])
    .filter(({ holds, distanceShare = Infinity }) => holds || isAtFocus(distanceShare))
    .map(({ object }) => object);
}
