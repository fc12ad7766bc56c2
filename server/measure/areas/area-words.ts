import { t } from '../../../grammar/index.js';
import type { Plan } from '../../plan/plan.js';

/** An area as a painter names it: `roof` in code marks, or the bare ground. */
export function areaName({ objects }: Plan, area: number): string {
  const object = objects[area];
  return object ? `\`${object.name}\`` : t('the bare ground');
}

/** `roof meets sky` */
export function meeting(plan: Plan, [front, behind]: readonly [number, number]): string {
  return t('{0} meets {1}', areaName(plan, front), areaName(plan, behind));
}
