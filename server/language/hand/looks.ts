import { nameKey, said, t } from '../../../grammar/index.js';
import { addLine, replace } from '../../findings/edits/edit.js';
import { sizeEdit, stepEdit } from '../../findings/edits.js';
import { parseColour } from '../../plan/colour/colour.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import { locate } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import { type Attempt, edits, refusal } from './attempt.js';

/** The object so many times as large. */
export function resize(plan: Plan, object: PlanObject, factor: number): Attempt {
  const sized = sizeEdit(plan, object, factor);
  return sized
    ? edits(sized)
    : refusal(t('`{0}` has no shape that could be made larger or smaller.', object.name));
}

/** The object on a step of the scale, in whole numbers. */
export function takeStep({ scale }: Plan, object: PlanObject, step: number): Attempt {
  const whole = Math.round(step);
  if (whole >= 1 && whole <= scale.steps) return edits(stepEdit(object, whole));
  return refusal(
    t('The scale has steps 1 (darkest) to {0} (lightest), so there is no value {1}.', scale.steps, whole),
  );
}

/** The object in a colour of the plan, or in one written out. */
export function takeColour({ colours }: Plan, { node }: PlanObject, colour: string): Attempt {
  const wanted = colour.trim();
  const named = colours.find(({ key }) => key === nameKey(wanted));
  if (!named) {
    const reading = parseColour(wanted);
    if (!reading.ok) return refusal(said(reading.reason));
  }
  const words = named?.name ?? wanted;
  const stated = every(node.children, 'colour').at(-1);
  return edits([
    stated ? replace(locate(stated, stated.statement.colour), words) : addLine(node, 'colour', words),
  ]);
}
