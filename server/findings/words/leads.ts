import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { capitalised, plainNumber } from '../../plan/problems.js';
import type { RuleFinding } from '../finding.js';
import { counted, quoted } from './words.js';

/** Most findings of one kind about leads. */
const MOST_TOLD = 3;

/** `12°` */
export function degreesInWords(degrees: number): string {
  return `${plainNumber(degrees, degrees < 10 ? 1 : 0)}°`;
}

/** The worst three of what is found, in the order given, the last of them with how many more there are. */
export function worstFirst<T>(
  found: readonly T[],
  worse: (one: T, other: T) => number,
  told: (one: T) => RuleFinding,
  kind: { readonly one: string; readonly many: string },
): readonly RuleFinding[] {
  const worst = [...found].sort(worse).slice(0, MOST_TOLD).map(told);
  const more = found.length - worst.length;
  const last = worst.at(-1);
  if (more === 0 || !last) return worst;
  const rest = `${capitalised(counted(more))} more ${more === 1 ? kind.one : kind.many}.`;
  return [...worst.slice(0, -1), { ...last, message: `${last.message} ${rest}` }];
}

/** Where a place lies from another: `above`, `to the left of`. */
export function lies(place: Point, from: Point): string {
  const [dx, dy] = [place.x - from.x, place.y - from.y];
  if (Math.abs(dx) > Math.abs(dy)) return dx < 0 ? 'to the left of' : 'to the right of';
  return dy < 0 ? 'above' : 'below';
}

/** The name of a lead as it stands in the text. */
export function leadName({ leads }: Plan, index: number): string {
  return quoted(leads[index]?.name ?? '');
}
