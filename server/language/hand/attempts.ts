import { holdsOf } from '../../drawing/handling/grips.js';
import { subjectsOf } from '../../drawing/views/subjects.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, refusal } from './attempt.js';
import type { HandChange } from './change.js';
import { moveTo } from './moves.js';

/** What a change comes to in the text. */
export function attemptOf(snapshot: Snapshot, change: HandChange): Attempt {
  const { plan } = snapshot;
  switch (change.kind) {
    case 'move': {
      const hold = holdsOf(plan, subjectsOf(plan, [])).find(({ grip }) => grip.key === change.grip);
      return hold
        ? moveTo(snapshot, hold, change.to)
        : refusal('What was to be moved is not in the plan any more.');
    }
    default:
      return refusal('This can’t be changed by hand yet.');
  }
}
