import { boxOfRings } from '../../plan/geometry/outline.js';
import {
  type Box,
  type Point,
  boxDiagonal,
  boxHeight,
  boxWidth,
  distance,
} from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { SeenAreas } from '../areas/areas.js';
import { wholeOf } from '../areas/parts.js';
import { type FocusMeasure, dominantsAtFocus } from './at-focus.js';
import { REACH } from './grid.js';
import type { Peak } from './places.js';

/**
 * The objects that make up the centre of interest, each with how far from the focal point its edges are one with it,
 * part of the diagonal.
 */
export type Centre = ReadonlyMap<number, number>;

/** What lies so close round the focal point is one with what is dominant there; part of the diagonal. */
const CLOSE = 2 * REACH;
/** Part of the diagonal of the box round what is seen of a long object. */
const OWN = 0.5;
/** Part of the diagonal: more than the grid on which is cut what is seen, so that what is just at a limit is at it. */
const ROUNDING = 1e-7;

/**
 * The dominant objects at the focal point with all that lies on them. The edges of one are one with the focal point up
 * to half of the diagonal of the box round what is seen of it with all that lies on it: all of them where the point
 * lies in its middle, not its far end where the point lies at the other. What is nearly as broad as long is one place
 * as a whole, so they are so at least up to the shorter side of that box; and always up to 16 % of the diagonal of the
 * canvas.
 */
export function centreOfInterest(
  { canvas, coveringOrder }: Pick<Plan, 'canvas' | 'coveringOrder'>,
  {
    areas,
    focus,
    parts,
  }: {
    readonly areas: SeenAreas;
    readonly focus?: FocusMeasure;
    readonly parts: readonly (readonly number[])[];
  },
): Centre {
  const centre = new Map<number, number>();
  for (const dominant of dominantsAtFocus(focus)) {
    const whole = wholeOf(parts, dominant);
    const seen = whole.flatMap((object) => areas.layers[coveringOrder.indexOf(object)]?.visible ?? []);
    const reach = Math.max(CLOSE, ownReach(boxOfRings(seen)) / canvas.diagonal);
    for (const object of whole) centre.set(object, Math.max(reach, centre.get(object) ?? 0));
  }
  return centre;
}

function ownReach(box: Box): number {
  return Math.max(OWN * boxDiagonal(box), Math.min(boxWidth(box), boxHeight(box)));
}

/**
 * Whether an edge of the area in front, so far from the focal point, is one with the centre of interest; part of the
 * diagonal.
 */
export function isOwnEdge(front: number, away: number, centre: Centre): boolean {
  const reach = centre.get(front);
  return reach !== undefined && away <= reach + ROUNDING;
}

/** Whether a place is another than the focal point; see `FocalEmphasis.elsewhere`. */
export function isElsewhere(
  { at, areas }: Pick<Peak, 'at' | 'areas'>,
  focus: Point,
  centre: Centre,
  diagonal: number,
): boolean {
  const away = distance(at, focus) / diagonal;
  const [front, behind] = areas;
  const isFar = (reach: number): boolean => away > reach + ROUNDING;
  return isFar(REACH) && !isOwnEdge(front, away, centre) && (isFar(CLOSE) || !centre.has(behind));
}
