import type { Edges } from '../../../grammar/index.js';
import type { Lab } from '../../plan/colour/model.js';
import type { Plan, PlanObject } from '../../plan/plan.js';

/** How far an edge is from lost: hard 1, firm 0.7, soft 0.35, lost 0.1 (heuristic). */
export const SHARPNESS: Readonly<Record<Edges, number>> = { hard: 1, firm: 0.7, soft: 0.35, lost: 0.1 };

const VALUE_WEIGHT = 0.6;
const COLOUR_WEIGHT = 0.4;
/** The longest way there is on the scale of Munsell value. */
const ALL_VALUES = 10;
/** About the distance between two strong opposite colours in a*, b*. */
const FAR_COLOURS = 100;

/** What an area is painted in, as far as it is planned. */
export interface Tint {
  /** Munsell value. */
  readonly value: number;
  readonly lab: Lab;
}

/** How much the border of two areas draws the eye, and by what. */
export interface Contrast {
  readonly sharpness: number;
  readonly valueContrast: number;
  readonly colourContrast: number;
  readonly pull: number;
}

/** What is painted there; `GROUND` is the bare ground, and nothing is known of what has neither value nor colour. */
export function tintOf(plan: Plan, area: number): Tint | undefined {
  const object = plan.objects[area];
  if (object) {
    const { value, painted } = object;
    return value === undefined || !painted ? undefined : { value, lab: painted.lab };
  }
  const { ground } = plan.canvas;
  return { value: ground.value, lab: ground.colour.lab };
}

/**
 * The edges of a border: what the area in front says of its edges against the one behind, or the one behind against
 * it, or else the edges of the one in front.
 */
export function edgesBetween(plan: Plan, front: number, behind: number): Edges {
  const before = plan.objects[front];
  return edgesAgainst(before, behind) ?? edgesAgainst(plan.objects[behind], front) ?? before?.edges ?? 'firm';
}

function edgesAgainst(object: PlanObject | undefined, other: number): Edges | undefined {
  return object?.edgesAgainst.findLast(({ objects }) => objects.includes(other))?.edges;
}

/** The contrast of two tints over edges of a sharpness; none where either is not planned. */
export function contrastOf(one: Tint | undefined, other: Tint | undefined, edges: Edges): Contrast {
  const sharpness = SHARPNESS[edges];
  if (!one || !other) return { sharpness, valueContrast: 0, colourContrast: 0, pull: 0 };
  const valueContrast = Math.abs(one.value - other.value);
  const colourContrast = Math.hypot(one.lab[1] - other.lab[1], one.lab[2] - other.lab[2]);
  const contrast =
    (VALUE_WEIGHT * valueContrast) / ALL_VALUES + (COLOUR_WEIGHT * colourContrast) / FAR_COLOURS;
  return { sharpness, valueContrast, colourContrast, pull: sharpness * contrast };
}

/** The contrast of two areas of a plan as it stands. */
export function contrastBetween(plan: Plan, front: number, behind: number): Contrast {
  return contrastOf(tintOf(plan, front), tintOf(plan, behind), edgesBetween(plan, front, behind));
}
