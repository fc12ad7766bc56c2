import type { Node, NodeOf, Place } from '../../../grammar/index.js';
import { isOwnPlace, placesOfLead } from '../../drawing/handling/grips.js';
import type { Spot } from '../../drawing/scene.js';
import { replace } from '../../findings/edits/edit.js';
import type { Lead, LeadPlace, Location } from '../../plan/plan.js';
import { every } from '../../plan/select.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits } from './attempt.js';
import { namedPlaceAt, takenTo } from './places.js';

/** One place of a lead put down elsewhere: on the focal point or in the middle of an object it takes its name. */
export function moveLeadPlace({ plan }: Snapshot, { at, location }: LeadPlace, to: Spot): Attempt {
  const named = namedPlaceAt(to, plan);
  if (named !== undefined) return edits([replace(location, named)]);
  const { node, place } = placeAt(plan.statements, location);
  return edits(takenTo(place, node, at, to, plan));
}

/** All places of a lead that are its own, moved by as much; those of other things stay. */
export function moveLead({ plan }: Snapshot, lead: Lead, right: number, down: number): Attempt {
  const own = placesOfLead(lead).filter(({ place }) => isOwnPlace(place));
  return edits(
    own.flatMap(({ place: { at, location } }) => {
      const { node, place } = placeAt(plan.statements, location);
      return takenTo(place, node, at, { x: at.x + right, y: at.y + down }, plan);
    }),
  );
}

/** The place that stands there. */
function placeAt(
  nodes: readonly Node[],
  { line, start, file }: Location,
): { readonly node: NodeOf<'lead'>; readonly place: Place } {
  for (const node of every(nodes, 'lead')) {
    if (node.line !== line || node.file !== file) continue;
    const { from, through, to } = node.statement;
    const place = [...(from ? [from] : []), ...through, to].find((one) => one.start === start);
    if (place) return { node, place };
  }
  throw new Error('a lead of the plan stands nowhere in its text');
}
