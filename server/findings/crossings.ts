import { distance, type Point } from '../plan/geometry/point.js';
import { findCrossing } from '../plan/places.js';
import type { Crossing, Division, Plan } from '../plan/plan.js';

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

/** The name alone where it means this crossing; with its system where another would be found first. */
function crossingWords(divisions: readonly Division[], { system }: Division, { name }: Crossing): string {
  const numbered = /\d/.test(name);
  const alone = numbered ? divisions.length === 1 : findCrossing(divisions, name)?.system === system;
  return alone ? name : `${name} of ${system}`;
}
