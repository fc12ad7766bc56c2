import type { Measures } from '../../measure/measures.js';
import type { RecordObject, SittingRecord } from '../../measure/photograph/record.js';
import type { Location, Plan, PlanObject } from '../../plan/plan.js';
import type { Severity } from '../finding.js';
import { hasFault } from '../limits.js';

type Gravity = { readonly severity?: Severity };

/** A photograph by which the painting is judged. */
export interface Judged extends Extract<SittingRecord, { readonly is: 'measured' }> {
  /** Of the photograph's line. */
  readonly location: Location;
  /** What is told of it may rest on a fault of the photograph, so that it is no more than a hint. */
  readonly gravity: Gravity;
  /** The same for colours, which want a grey patch as well. */
  readonly colourGravity: Gravity;
}

/**
 * The latest photograph in time, by which the painting as it stands is judged; earlier ones are history. Nothing while
 * it is on its way, or where a line of a sitting up to then could not be read, for what is to stand on the canvas is
 * not known then. One that can't be read is passed over.
 */
export function latestPhotograph(plan: Plan, { record, schedule }: Measures): Judged | undefined {
  const inTime = (schedule?.sittings ?? []).map(({ sitting }) => sitting);
  const readable = inTime.flatMap(
    (index) => record?.sittings.find(({ sitting, is }) => sitting === index && is !== 'unreadable') ?? [],
  );
  const latest = readable.at(-1);
  if (latest?.is !== 'measured') return undefined;
  const upTo = inTime.slice(0, inTime.indexOf(latest.sitting) + 1);
  if (upTo.some((index) => plan.sittings[index]?.faulty !== false)) return undefined;
  const location = plan.sittings[latest.sitting]?.photo?.location;
  if (!location) return undefined;
  const { doubts } = latest.figures;
  const isDoubtful = doubts.some(({ isGrave }) => isGrave);
  const isUnbalanced = isDoubtful || doubts.some(({ about }) => about === 'no grey patch');
  const hint = { severity: 'hint' } as const;
  return {
    ...latest,
    location,
    gravity: isDoubtful ? hint : {},
    colourGravity: isUnbalanced ? hint : {},
  };
}

/** Its objects that can be held to the plan. */
export function heldToPlan(
  plan: Plan,
  { figures }: Judged,
): readonly {
  readonly object: PlanObject;
  readonly seen: RecordObject;
  readonly against: NonNullable<RecordObject['against']>;
}[] {
  return figures.objects.flatMap((seen) => {
    const object = plan.objects[seen.object];
    return object && seen.against && !hasFault(plan, object) ? [{ object, seen, against: seen.against }] : [];
  });
}

/** Whether every object could be read, so that shares of the whole canvas mean something. */
export function isReadable(plan: Plan): boolean {
  return !plan.objects.some((object) => hasFault(plan, object));
}
