import { GROUND } from '../../measure/borders/borders.js';
import type { StrongPlace } from '../../measure/emphasis/emphasis.js';
import type { Measures } from '../../measure/measures.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import type { RuleFinding } from '../finding.js';
import { hasFault } from '../limits.js';

const MOST_TOLD = 3;

/** One strength as a part of another, in whole per cent: a rule of thumb is no finer. */
export function strengthPercent(strength: number, of: number): string {
  return `${Math.round((100 * strength) / of)} %`;
}

/** The objects whose border it is, as `Finding.objects`. */
export function objectsOf({ areas }: Pick<StrongPlace, 'areas'>): readonly number[] {
  return areas.filter((area) => area !== GROUND);
}

/** The strongest place of each border, strongest first. */
export function oneABorder(places: readonly StrongPlace[]): readonly StrongPlace[] {
  const seen = new Set<string>();
  return places.filter((place) => {
    const key = borderKey(place);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Tells borders apart. */
export function borderKey({ areas }: Pick<StrongPlace, 'areas'>): string {
  return areas.join(' ');
}

/** `92 % as strongly`, `as strongly`, `1.4 times as strongly`, `twice as strongly`: above the whole, per cent are hard to read. */
export function howStrongly(strength: number, of: number): string {
  if (Math.round((100 * strength) / of) < 100) return `${strengthPercent(strength, of)} as strongly`;
  const times = plainNumber(strength / of, 1);
  if (times === '1') return 'as strongly';
  return times === '2' ? 'twice as strongly' : `${times} times as strongly`;
}

/** Whether every object that is seen has a value or a colour: until then strengths say little. */
export function isFarEnough(plan: Plan, { objects }: Measures): boolean {
  return plan.objects.every(
    ({ painted, colourLost }, index) =>
      (painted !== undefined && !colourLost) || (objects[index]?.share ?? 0) === 0,
  );
}

/** Whether what is written of the objects of a place could all be read. */
export function isReadable(plan: Plan, place: StrongPlace): boolean {
  return objectsOf(place).every((index) => {
    const object = plan.objects[index];
    return object !== undefined && !hasFault(plan, object);
  });
}

/** What is told of the strongest three of some places, the last with how many more there are. */
export function worstPlaces(
  places: readonly StrongPlace[],
  told: (place: StrongPlace) => RuleFinding,
  kind: { readonly one: string; readonly many: string },
): readonly RuleFinding[] {
  const more = places.length - MOST_TOLD;
  const findings = places.slice(0, MOST_TOLD).map(told);
  const last = findings.at(-1);
  if (more <= 0 || !last) return findings;
  const rest = more === 1 ? `There is one more ${kind.one}.` : `There are ${more} more ${kind.many}.`;
  return [...findings.slice(0, -1), { ...last, message: `${last.message} ${rest}` }];
}
