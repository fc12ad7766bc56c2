import { plainNumber } from '../plan/problems.js';
import type { Canvas, Location, Plan } from '../plan/plan.js';
import type { ObjectShare } from '../measure/objects.js';

/** A share as a painter reads it: `34 %`, `4.5 %`; what is there but rounds to nothing is `under 0.1 %`. */
export function percent(share: number): string {
  const rounded = plainNumber(share * 100, 1);
  return rounded === '0' && share > 0 ? 'under 0.1 %' : `${rounded} %`;
}

/** A length on the canvas with its unit: `3.2 cm`. */
export function length(canvasUnits: number, canvas: Pick<Canvas, 'unit'>): string {
  return `${plainNumber(canvasUnits, canvas.unit === 'm' ? 3 : 1)} ${canvas.unit}`;
}

export function quoted(name: string): string {
  return `\`${name}\``;
}

/** `snow` (21 %) */
export function objectShare(plan: Plan, { object, share }: ObjectShare): string {
  return `${quoted(plan.objects[object]?.name ?? '')} (${percent(share)})`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Where to tell what concerns the plan as a whole: at its title, its canvas, or its first line. */
export function heading(plan: Plan): Location {
  return plan.title?.location ?? plan.canvas.location ?? { line: 0, start: 0, end: 0 };
}
