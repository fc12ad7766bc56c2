import type { ObjectRole, Plane } from '../../grammar/index.js';
import type { Plan, PlanObject } from '../plan/plan.js';
import { locate, plainNumber } from '../plan/problems.js';
import { every } from '../plan/select.js';
import { addLine, replace } from './edits/edit.js';
import type { FixEdit } from './finding.js';

export type { Rounding } from './edits/edit.js';
export { movedPlace, moveEdit, placeEdit } from './edits/move.js';
export { type Factors, sizeEdit, stretchEdit } from './edits/size.js';

/**
 * Edits of the text that change one thing of the picture, for the `fix` of a finding. Those of one fix may be put
 * together as long as each changes another line, or another thing of one line.
 */

/** The object on another step of the value scale. */
export function stepEdit({ node }: PlanObject, step: number): readonly FixEdit[] {
  const words = plainNumber(step);
  const stated = every(node.children, 'value').at(-1);
  return [stated ? replace(locate(stated, stated.statement.step), words) : addLine(node, 'value', words)];
}

/** The object in another plane. */
export function planeEdit({ node }: PlanObject, plane: Plane): readonly FixEdit[] {
  const stated = every(node.children, 'plane').at(-1);
  return [stated ? replace(locate(stated, stated.statement.plane), plane) : addLine(node, 'plane', plane)];
}

/** The object with another role behind its name, or with none. Nothing when it has that role already. */
export function roleEdit(
  { node, role: stated }: PlanObject,
  role: ObjectRole | undefined,
): readonly FixEdit[] | undefined {
  const { statement } = node;
  if (statement.kind !== 'object' || role === stated) return undefined;
  const { end } = statement.name;
  const behindName = locate(node, { start: end, end: statement.role?.end ?? end });
  return [replace(behindName, role === undefined ? '' : `, ${role}`)];
}

/**
 * The focal point at a place in words, such as `upper right` or `(12, 8)`; above the objects when the plan has none
 * yet. Nothing when the plan states one that can't be read, or has neither focal point nor objects.
 */
export function focusEdit(plan: Plan, words: string): readonly FixEdit[] | undefined {
  const statement = `focus   ${words}`;
  if (plan.focus) return [replace(plan.focus.location, statement)];
  return plan.focusUnplaced ? undefined : aboveObjects(plan, statement);
}

/**
 * A statement at the left margin, on a line of its own above the first object that the plan's own text has, or at its
 * end. Nothing when the plan has no object.
 */
export function aboveObjects({ objects }: Plan, statement: string): readonly FixEdit[] | undefined {
  if (objects.length === 0) return undefined;
  const first = objects.find(({ lines }) => lines !== undefined)?.lines?.first;
  if (first === undefined) return [{ kind: 'add statement', text: statement }];
  return [replace({ line: first, start: 0, end: 0 }, `${statement}\n`)];
}
