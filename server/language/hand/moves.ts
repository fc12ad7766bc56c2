import type { Hold } from '../../drawing/handling/grips.js';
import type { Spot } from '../../drawing/scene.js';
import { moveEdit } from '../../findings/edits.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits, refusal } from './attempt.js';
import { moveFocus } from './focus.js';
import { moveLead, moveLeadPlace } from './leads.js';
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
    case 'object': {
      const moved = moveEdit(plan, held.object, right, down);
      return moved
        ? edits(moved)
        : refusal(`\`${held.object.name}\` has no place in the text that could be changed.`);
    }
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
