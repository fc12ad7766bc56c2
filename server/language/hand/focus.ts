import { type Node, type NodeOf, t } from '../../../grammar/index.js';
import { crossingsOf } from '../../drawing/handling/guides.js';
import type { Spot } from '../../drawing/scene.js';
import { replace } from '../../findings/edits/edit.js';
import { locate } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import type { Snapshot } from '../snapshot.js';
import { type Attempt, edits, refusal } from './attempt.js';
import { newFocusLine } from './new-lines.js';
import { crossingAt, takenTo } from './places.js';

/** The focal point put down at a place: on a crossing of a division it is said in words, elsewhere in coordinates. */
export function moveFocus({ plan }: Snapshot, to: Spot): Attempt {
  const node = focusNode(plan.statements);
  if (!node || !plan.focus) return refusal(t('The plan has no focal point yet.'));
  const place = node.statement.at;
  const words = crossingAt(to, plan);
  return edits(
    words === undefined
      ? takenTo(place, node, plan.focus.at, to, plan)
      : [replace(locate(node, place), words)],
  );
}

/** The focal point on a crossing by its name among the guides, in a line of its own when the plan has none yet. */
export function focusOnCrossing(snapshot: Snapshot, name: string): Attempt {
  const { plan } = snapshot;
  const crossing = crossingsOf(plan).find((candidate) => candidate.name === name);
  if (!crossing) return refusal(t('The division of the canvas has no such crossing any more.'));
  const node = focusNode(plan.statements);
  const { words } = crossing;
  if (words === undefined) return edits([]);
  return node ? edits([replace(locate(node, node.statement.at), words)]) : newFocusLine(snapshot, words);
}

/** The line that counts. */
function focusNode(nodes: readonly Node[]): (Node & NodeOf<'focus'>) | undefined {
  return every(nodes, 'focus').at(-1);
}
