import type { Hold } from '../../drawing/handling/grips.js';
import type { Spot } from '../../drawing/scene.js';
import { moveEdit } from '../../findings/edits.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits, refusal } from './attempt.js';

/**
 * A grip put down at a place. Only what is taken hold of moves: what lies on it stays where it is, unless the text
 * places it by what is moved.
 */
export function moveTo({ plan }: Snapshot, { grip, held }: Hold, to: Spot): Attempt {
  if (grip.fixed !== undefined) return refusal(grip.fixed);
  const right = to.x - grip.at.x;
  const down = to.y - grip.at.y;
  switch (held.kind) {
    case 'object':
      return edits(
        moveEdit(plan, held.object, right, down),
        `\`${held.object.name}\` has no place in the text that could be changed.`,
      );
    case 'focus':
    case 'lead':
    case 'lead place':
      return refusal(`The ${grip.name} can’t be moved by hand yet.`);
  }
}
