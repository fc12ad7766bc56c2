import type { Hold } from '../../drawing/handling/grips.js';
import { firstCopyOf, flatnessOf } from '../../drawing/handling/outline-points.js';
import { surroundingsOf } from '../../drawing/handling/surroundings.js';
import type { Spot } from '../../drawing/scene.js';
import { addLine } from '../../findings/edits/edit.js';
import { moveEdit } from '../../findings/edits.js';
import type { FixEdit } from '../../findings/finding.js';
import { buildOutline } from '../../plan/build-outline.js';
import { boxCentre } from '../../plan/geometry/point.js';
import type { PlanObject } from '../../plan/plan.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits, refusal } from './attempt.js';
import { moveFocus } from './focus.js';
import { moveLead, moveLeadPlace } from './leads.js';
import { coordinates } from './places.js';
import { movePoint } from './points.js';

/**
 * A grip put down at a place. Only what is taken hold of moves: what lies on it stays where it is, unless the text
 * places it by what is moved.
 */
export function moveTo(snapshot: Snapshot, { grip, held }: Hold, to: Spot): Attempt {
  const { plan } = snapshot;
  if (grip.fixed !== undefined) return refusal(grip.fixed);
  const right = to.x - grip.at.x;
  const down = to.y - grip.at.y;
  if (right === 0 && down === 0) return edits([]);
  switch (held.kind) {
    case 'object':
      return edits(moveObject(snapshot, held.object, right, down));
    case 'point':
      return movePoint(plan, held.object, held.point, to);
    case 'focus':
      return moveFocus(snapshot, to);
    case 'lead':
      return moveLead(snapshot, held.lead, right, down);
    case 'lead place':
      return moveLeadPlace(snapshot, held.place, to);
  }
}

/** An object moved by canvas units. */
export function moveObject(
  snapshot: Snapshot,
  object: PlanObject,
  right: number,
  down: number,
): readonly FixEdit[] {
  if (right === 0 && down === 0) return [];
  return moveEdit(snapshot.plan, object, right, down) ?? firstCopyAt(snapshot, object, right, down);
}

/** A repeated object that had no place of its own gets one for its first copy; the others follow it. */
function firstCopyAt(
  { plan }: Snapshot,
  { node }: PlanObject,
  right: number,
  down: number,
): readonly FixEdit[] {
  const surroundings = surroundingsOf(plan);
  const { input } = firstCopyOf(node.children, surroundings);
  const { x, y } = boxCentre(buildOutline(input, flatnessOf(surroundings)).outline.box);
  return [addLine(node, 'at', coordinates({ x: x + right, y: y + down }, plan))];
}
