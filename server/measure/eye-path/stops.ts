import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { boxCentre } from '../../plan/geometry/point.js';
import { containsPoint, type VisibleAreas } from '../areas/areas.js';
import type { BorderStretch } from '../borders/borders.js';
import { higherFirst, inSteps } from '../areas/place-order.js';
import { awayFromFocus, isAtFocus } from '../emphasis/at-focus.js';
import type { EmphasisField, EmphasisMeasure, FocalEmphasis } from '../emphasis/emphasis.js';

/** Part of a cell by which a place may miss the line between two through rounding and lie on it. */
const BETWEEN = 1e-5;

/** One stop of the path that the eye is to take. */
export interface Stop {
  readonly object: number;
  /** The strongest place of its borders; the middle of its box when it has none that is seen. */
  readonly at: Point;
  /**
   * The emphasis there, of a stop at the focal point at least that of the focal point; 0 when none of its borders is
   * seen.
   */
  readonly strength: number;
  /** Whether anything is seen of it. */
  readonly isSeen: boolean;
  /** Whether what is seen of it holds the focal point or has a border within 5 % of the diagonal of it. */
  readonly isAtFocus: boolean;
}

/** What of the emphasis the stops are measured by. */
export type StopEmphasis = Pick<EmphasisMeasure, 'field'> & {
  readonly focal?: Pick<FocalEmphasis, 'strength'>;
};

/** The stops of the path in their order; of an object named twice, both. */
export function measureStops(
  plan: Plan,
  areas: VisibleAreas,
  stretches: readonly BorderStretch[],
  { field, focal }: StopEmphasis,
): readonly Stop[] {
  if (!plan.path) return [];
  const strongest = strongestPlaces(plan, stretches, field);
  const layers = new Map(plan.coveringOrder.map((object, position) => [object, areas.layers[position]]));
  return plan.path.value.map((object): Stop => {
    const layer = layers.get(object);
    const box = plan.objects[object]?.outline.box;
    const place = strongest.get(object) ?? { at: box ? boxCentre(box) : { x: 0, y: 0 }, strength: 0 };
    const focus = plan.focus?.at;
    const isSeen = layer !== undefined && layer.share > 0;
    const isThere =
      focus !== undefined &&
      isSeen &&
      (containsPoint(layer.visible, focus) ||
        isAtFocus(awayFromFocus(layer.visible, focus, plan.canvas.diagonal)));
    // The eye that comes to a stop at the focal point takes in all that is gathered there.
    const gathered = isThere && place.strength > 0 ? (focal?.strength ?? 0) : 0;
    const strength = Math.max(place.strength, gathered);
    return { object, at: place.at, strength, isSeen, isAtFocus: isThere };
  });
}

interface StrongestPlace {
  readonly at: Point;
  readonly strength: number;
  /** The strength in steps of what is alike. */
  readonly steps: number;
}

/**
 * For each stop the strongest place along its borders; of those alike the uppermost, then the one nearest to the
 * middle.
 */
function strongestPlaces(
  { path, canvas }: Plan,
  stretches: readonly BorderStretch[],
  field: EmphasisField,
): ReadonlyMap<number, StrongestPlace> {
  const stops = new Set(path?.value ?? []);
  const strongest = new Map<number, StrongestPlace>();
  const higher = higherFirst(canvas);
  const challenge = (object: number, place: StrongestPlace): void => {
    const known = strongest.get(object);
    const stronger = known ? place.steps - known.steps : 1;
    if (!known || stronger > 0 || (stronger === 0 && higher(place.at, known.at) < 0))
      strongest.set(object, place);
  };
  for (const { at, front, behind } of stretches) {
    const isFront = stops.has(front);
    const isBehind = stops.has(behind);
    if (!isFront && !isBehind) continue;
    const strength = strengthAt(field, at, canvas);
    const place = { at, strength, steps: inSteps(strength, field.strongest) };
    if (isFront) challenge(front, place);
    if (isBehind) challenge(behind, place);
  }
  return strongest;
}

/** The emphasis of the cell that a place lies in, of the strongest one where it lies between cells. */
function strengthAt(
  { columns, rows, strengths }: EmphasisField,
  { x, y }: Point,
  { width, height }: { readonly width: number; readonly height: number },
): number {
  const across = (x / width) * columns;
  const down = (y / height) * rows;
  const left = cellAt(across - BETWEEN, columns);
  const right = cellAt(across + BETWEEN, columns);
  const bottom = cellAt(down + BETWEEN, rows);
  let strongest = -Infinity;
  for (let row = cellAt(down - BETWEEN, rows); row <= bottom; row++)
    for (let column = left; column <= right; column++)
      strongest = Math.max(strongest, strengths[row * columns + column] ?? 0);
  return strongest;
}

function cellAt(place: number, count: number): number {
  return Math.min(count - 1, Math.max(0, Math.floor(place)));
}
