import type { Plan } from '../../plan/plan.js';

/** An area as a painter names it: `roof` in code marks, or the bare ground. */
export function areaName({ objects }: Plan, area: number): string {
  const object = objects[area];
  return object ? `\`${object.name}\`` : 'the bare ground';
}

/** `roof meets sky` */
export function meeting(plan: Plan, [front, behind]: readonly [number, number]): string {
  return `${areaName(plan, front)} meets ${areaName(plan, behind)}`;
}
