import { type Edges, nameKey } from '../../../grammar/index.js';
import type { PlanObject } from '../../plan/plan.js';
import { locate } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import type { FixEdit } from '../finding.js';
import { addLine, replace } from './edit.js';

/** The object with other edges: all of them, or only those against another object. */
export function edgesEdit(
  { node }: PlanObject,
  edges: Edges,
  against?: Pick<PlanObject, 'name' | 'key'>,
): readonly FixEdit[] {
  const stated = every(node.children, 'edges').findLast(({ statement }) =>
    against
      ? statement.against.some(({ text }) => nameKey(text) === against.key)
      : statement.against.length === 0,
  );
  // A line that names others too is left as it is: of two lines the later counts.
  if (stated && stated.statement.against.length <= (against ? 1 : 0)) {
    return [replace(locate(stated, stated.statement.edges), edges)];
  }
  return [addLine(node, 'edges', against ? `${edges} against ${against.name}` : edges)];
}

/** The object with other detail. */
export function detailEdit({ node }: PlanObject, detail: PlanObject['detail']): readonly FixEdit[] {
  const stated = every(node.children, 'detail').at(-1);
  return [
    stated ? replace(locate(stated, stated.statement.detail), detail) : addLine(node, 'detail', detail),
  ];
}
