import type { Plan, PlanObject } from './plan.js';
import { areSameThings, isSameData } from './same-data.js';

type InTheMaking = { -readonly [Part in keyof Plan]: Plan[Part] };

/**
 * Gives a plan in the making the parts of the plan before that say the same, so that whoever keeps what is worked out
 * of a part knows it again. Outlines and statements are not compared point by point: those that are alike are the same
 * ones already.
 */
export function takeOverParts(plan: InTheMaking, before: Plan): void {
  if (!areSameThings(plan.objects, before.objects))
    plan.objects = plan.objects.map((object, index) => takenOver(object, before.objects[index]));
  for (const part of Object.keys(plan) as (keyof Plan)[]) takeOver(part, plan, before);
}

function takenOver(object: PlanObject, before: PlanObject | undefined): PlanObject {
  if (!before || object === before) return object;
  const isAlike = object.outline === before.outline && object.node === before.node;
  return isAlike && isSameData(object, before) ? before : object;
}

function takeOver<Part extends keyof Plan>(part: Part, plan: InTheMaking, before: Plan): void {
  if (isSamePart(part, plan, before)) plan[part] = before[part];
}

function isSamePart(part: keyof Plan, plan: Plan, before: Plan): boolean {
  switch (part) {
    case 'objects':
    case 'statements':
      return areSameThings(plan[part], before[part]);
    case 'basedOn':
      return false;
    default:
      return isSameData(plan[part], before[part]);
  }
}
