import { plainNumber } from '../../plan/problems.js';
import type { Canvas, Location, Plan } from '../../plan/plan.js';
import type { ObjectShare } from '../../measure/objects/objects.js';
import type { RuleLimit } from '../finding.js';
import { exceeds } from '../limits.js';

const MOST_DECIMALS = 6;

/** A share as a painter reads it: `34 %`, `4.5 %`; what is there but rounds to nothing is `under 0.1 %`. */
export function percent(share: number): string {
  const rounded = plainNumber(share * 100, 1);
  return rounded === '0' && share > 0 ? 'under 0.1 %' : `${rounded} %`;
}

/** A share that lies outside a tolerance, with as many places as it takes to see that it does. */
export function percentOutside(share: number, target: number, tolerance: number): string {
  for (let decimals = 1; decimals <= MOST_DECIMALS; decimals++) {
    const rounded = Number((share * 100).toFixed(decimals)) / 100;
    if (!exceeds(Math.abs(rounded - target), tolerance)) continue;
    return decimals === 1 ? percent(share) : `${plainNumber(share * 100, decimals)} %`;
  }
  return percent(share);
}

/** A limit as a plan states it: `5%`, `40 degrees`, `2`. */
export function limitForm({ value, unit }: Pick<RuleLimit, 'value' | 'unit'>): string {
  switch (unit) {
    case 'part':
      return `${plainNumber(value * 100)}%`;
    case 'degrees':
      return `${plainNumber(value)} degrees`;
    case 'number':
      return plainNumber(value);
  }
}

/** A limit as a painter reads it, with what it is of: `5 % of the diagonal`, `30 degrees between the two hues`. */
export function limitInWords(limit: RuleLimit): string {
  switch (limit.unit) {
    case 'part':
      return `${percent(limit.value)} of ${limit.of}`;
    case 'degrees':
    case 'number':
      return `${limitForm(limit)} ${limit.of}`;
  }
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

/** Where to tell what concerns the plan as a whole: at its title, its canvas, or its first line. */
export function heading(plan: Plan): Location {
  return plan.title?.location ?? plan.canvas.location ?? { line: 0, start: 0, end: 0 };
}
