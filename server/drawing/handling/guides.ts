import type { Division, Plan } from '../../plan/plan.js';
import { distance } from '../../plan/geometry/point.js';
import type { Guides, Spot } from './handles.js';

/** Part of the diagonal within which two places are one. */
const SAME_PLACE = 1e-6;

/** A crossing that a hand can set something down on. */
export interface GuideCrossing {
  readonly at: Spot;
  /** As it is told, unique among the guides: `golden upper right`, `focal point`. */
  readonly name: string;
  /** As the plan says it as a place: `upper right`, with its system where that is needed. None for the focal point. */
  readonly words?: string;
}

/** What things that are moved may snap to: the lines and crossings of the divisions, and the focal point. */
export function guidesOf(plan: Plan): Guides {
  return {
    lines: plan.divisions.flatMap(({ lines }) =>
      lines.map(({ from, to }) => ({ from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y } })),
    ),
    crossings: crossingsOf(plan).map(({ at, name }) => ({ at, name })),
  };
}

/** The crossings of all divisions, and the focal point where it is on none. */
export function crossingsOf({ divisions, canvas, focus }: Plan): readonly GuideCrossing[] {
  const taken = new Set<string>();
  const crossings = divisions.flatMap((division, index): GuideCrossing[] => {
    // Of two divisions of one system only the first can be named.
    if (divisions.findIndex(({ system }) => system === division.system) < index) return [];
    return division.crossings.flatMap(({ name, at }): GuideCrossing[] => {
      const words = wordsFor(name, division, divisions);
      const told = `${division.system} ${name}`;
      if (taken.has(told)) return [];
      taken.add(told);
      return [{ at: { x: at.x, y: at.y }, name: told, words }];
    });
  });
  const slack = canvas.diagonal * SAME_PLACE;
  if (!focus || crossings.some(({ at }) => distance(at, focus.at) <= slack)) return crossings;
  return [...crossings, { at: { x: focus.at.x, y: focus.at.y }, name: 'focal point' }];
}

/** Without a system a place means the first division that has a crossing of that name. */
function wordsFor(name: string, division: Division, divisions: readonly Division[]): string {
  const first = divisions.find(({ crossings }) => crossings.some((crossing) => crossing.name === name));
  return first === division && divisions.length === 1 ? name : `${name} of ${division.system}`;
}
