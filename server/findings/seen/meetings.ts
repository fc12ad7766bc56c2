import type { Measures } from '../../measure/measures.js';
import type { Coat, ConflictKind, LayerConflict, ScheduledSitting } from '../../measure/sittings/schedule.js';
import type { Plan } from '../../plan/plan.js';

/** Two sittings of which the later lays something on objects that are not ready for it. */
export interface Meeting {
  readonly below: ScheduledSitting;
  readonly above: ScheduledSitting;
  /** Indices into `plan.objects`, in the order of the text. */
  readonly objects: readonly number[];
  /** The conflict of the object that is farthest from being ready, with its two layers. */
  readonly worst: LayerConflict;
  readonly coatBelow: Coat;
  readonly coatAbove: Coat;
}

/**
 * Conflicts of a kind, one for each pair of sittings, or for each varnish, in the order of time. Objects for which
 * the plan sets the rule aside have their own, so that the others are still told.
 */
export function meetings(
  plan: Plan,
  { schedule }: Measures,
  rule: string,
  kind: ConflictKind,
): readonly Meeting[] {
  if (!schedule) return [];
  const aside = setAsideAlone(plan, rule);
  const scheduled = new Map(schedule.sittings.map((sitting) => [sitting.sitting, sitting]));
  const pairs = new Map<string, LayerConflict[]>();
  for (const conflict of schedule.conflicts) {
    if (conflict.kind !== kind) continue;
    const { below, above, object } = conflict;
    // A varnish goes over everything at once, whatever each object was last painted in.
    const pair = `${kind === 'varnish too soon' ? '' : below} ${above}`;
    const key = `${pair}${aside.has(object) ? ` ${object}` : ''}`;
    const known = pairs.get(key);
    if (known) known.push(conflict);
    else pairs.set(key, [conflict]);
  }
  return [...pairs.values()].flatMap((conflicts) => {
    const worst = conflicts.reduce((one, other) => (extent(other) > extent(one) ? other : one));
    const below = scheduled.get(worst.below);
    const above = scheduled.get(worst.above);
    const coats = schedule.objects[worst.object]?.coats ?? [];
    const coatBelow = coats.find(({ sitting }) => sitting === worst.below);
    const coatAbove = coats.find(({ sitting }) => sitting === worst.above);
    if (!below || !above || !coatBelow || !coatAbove) return [];
    const objects = conflicts.map(({ object }) => object).sort((one, other) => one - other);
    return [{ below, above, objects, worst, coatBelow, coatAbove }];
  });
}

/** The objects for which alone the plan sets a rule aside. */
function setAsideAlone({ allowances }: Plan, rule: string): ReadonlySet<number> {
  return new Set(allowances.filter((one) => one.rule === rule).flatMap(({ objects }) => objects));
}

/** How far a layer is from being ready: days, or shares, or days of a thin film. */
function extent({ missing, fat, thinFilmDays }: LayerConflict): number {
  if (missing !== undefined) return missing;
  const [below, above] = fat ?? thinFilmDays ?? [0, 0];
  return below - above;
}
