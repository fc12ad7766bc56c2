import type { Measures } from '../../measure/measures.js';
import { distance, type Point } from '../../plan/geometry/point.js';
import { findCrossing } from '../../plan/places.js';
import type { Crossing, Division, Plan } from '../../plan/plan.js';
import { exceeds } from '../limits.js';
import { greatestDominant, middleOf } from './seen.js';

/**
 * What lies no farther from the middle of the canvas lies in the middle; part of the diagonal. Common practice, no
 * source.
 */
export const IN_THE_MIDDLE = 0.04;
/** So that crossings all round the middle count as equally far. */
const AS_FAR = 1.001;

/** A crossing with the words that a plan refers to it by: `upper right`, `upper right of thirds`. */
export interface NamedCrossing {
  readonly words: string;
  readonly at: Point;
  /** Canvas units from the place asked about. */
  readonly distance: number;
}

/** The crossings of all divisions of a plan, those nearest to a place first. */
export function crossingsNear(
  { divisions }: Pick<Plan, 'divisions'>,
  place: Point,
): readonly NamedCrossing[] {
  return divisions
    .flatMap((division) =>
      division.crossings.map((crossing) => ({
        words: crossingWords(divisions, division, crossing),
        at: crossing.at,
        distance: distance(crossing.at, place),
      })),
    )
    .sort((one, other) => one.distance - other.distance);
}

/**
 * The crossing nearest to the focal point that lies off the middle of the canvas by more than a part of the diagonal;
 * of several as far away, the one on the dominant object's side.
 */
export function crossingOffMiddle(plan: Plan, measures: Measures, limit: number): NamedCrossing | undefined {
  const { canvas, focus } = plan;
  if (!focus) return undefined;
  const middle = { x: canvas.width / 2, y: canvas.height / 2 };
  const away = crossingsNear(plan, focus.at).filter(({ at }) =>
    exceeds(distance(at, middle) / canvas.diagonal, limit),
  );
  const [first] = away;
  const dominant = greatestDominant(plan, measures);
  if (!first || !dominant) return first;
  const place = middleOf(dominant);
  return away
    .filter((crossing) => crossing.distance <= first.distance * AS_FAR)
    .reduce((one, other) => (distance(other.at, place) < distance(one.at, place) ? other : one));
}

/** The name alone where it means this crossing; with its system where another would be found first. */
function crossingWords(divisions: readonly Division[], { system }: Division, { name }: Crossing): string {
  const numbered = /\d/.test(name);
  const alone = numbered ? divisions.length === 1 : findCrossing(divisions, name)?.system === system;
  return alone ? name : `${name} of ${system}`;
}
