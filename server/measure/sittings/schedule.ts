import type { Layer } from '../../../grammar/index.js';
import type { Plan, Sitting } from '../../plan/plan.js';
import type { PaletteMeasure } from '../mixing/mixing.js';
import { type LayerConflict, layerOrder } from './conflicts.js';
import { dayOf, monthsOn, TakenDays } from './days.js';
import { type Drying, dryingOf, type LaidPaint } from './drying.js';
import { goesOverAll, isDryingOil, laidAs, type LaidAs, paintsObjects } from './layers.js';
import { paintLaid } from './paint-laid.js';
import { latestDays, VARNISH_AFTER_MONTHS } from './working-back.js';

export type { ConflictKind, LayerConflict } from './conflicts.js';

/** The sittings in time. Days are counted from 1970-01-01, so that they can be subtracted; `isoOf` writes one. */
export interface ScheduleMeasure {
  /** In the order in which they come: by date, those of one day and those without one as the text has them. */
  readonly sittings: readonly ScheduledSitting[];
  /** In the order of `plan.objects`. */
  readonly objects: readonly ObjectSchedule[];
  /** Places where a layer meets one that is not ready for it, in the order of time. */
  readonly conflicts: readonly LayerConflict[];
  /**
   * Indices into `plan.objects` of what is seen and never painted, for which a toned ground and a varnish don't count;
   * empty while the plan does not say of any object when it is painted.
   */
  readonly neverWorked: readonly number[];
  readonly due?: DueMeasure;
  /**
   * When the last layer anywhere is dry to the touch; missing without a dated sitting that leaves paint, and while
   * unsettled.
   */
  readonly dryOn?: number;
  /** The first day on which a final varnish is safe by common practice; missing as `dryOn` is. */
  readonly varnishFrom?: number;
  /** The days that the painter says are taken. */
  readonly taken: TakenDays;
  /**
   * False while mixtures that drying goes by are still being worked out: then the days that rest on them are missing.
   */
  readonly isSettled: boolean;
}

export interface ScheduledSitting extends LaidAs {
  /** Index into `plan.sittings`. */
  readonly sitting: number;
  /** Day number; missing without a readable date. */
  readonly day?: number;
  /** What it works on, as indices into `plan.objects`; everything for a toned ground or varnish that names nothing. */
  readonly works: readonly number[];
  /** It works on nothing and has nothing to do. */
  readonly isIdle: boolean;
  /** Index into `plan.away`: the painter has said that this day is taken. */
  readonly away?: number;
  /** Days until the last of what it lays is dry to the touch; 0 when it lays nothing; missing while unsettled. */
  readonly dryingDays?: number;
  /** When the last of what it lays is dry to the touch; missing without a day, without paint, and while unsettled. */
  readonly dryOn?: number;
  /**
   * When all that it goes over is ready for it, be the day taken or not; missing where it goes over nothing that is
   * known.
   */
  readonly readyFrom?: number;
  /** The latest day on which it can be held with everything after it in order and the work ready on the due date. */
  readonly latest?: number;
  /** `latest` - `day`: days that it can still be put off; under 0 it comes too late. */
  readonly slack?: number;
}

export interface ObjectSchedule {
  /** In the order of time. */
  readonly coats: readonly Coat[];
}

/** One layer on one object. `days` until it is dry to the touch, whole, rounded up. */
export interface Coat extends Drying {
  /** Index into `plan.sittings`. */
  readonly sitting: number;
  readonly laid: LaidAs;
  readonly layer: Layer;
  readonly day?: number;
  readonly fat: number;
  readonly dryOn?: number;
}

export interface DueMeasure {
  readonly day: number;
  /** The latest day of the first sitting with everything in order after it. */
  readonly latestStart?: number;
  /** Days between the first sitting and `latestStart`; under 0 there is too little time. */
  readonly slack?: number;
  /** When the work is ready to leave: the last sitting held and the last layer dry to the touch. */
  readonly readyOn?: number;
}

/** What of the other measures the sittings go by. */
export interface MeasuredForSittings {
  /** Visible part of the canvas, in the order of `plan.objects`. */
  readonly shares: readonly number[];
  readonly palette?: PaletteMeasure;
}

/** The sittings in time, with what dries when and what that leaves until the due date; nothing without a sitting. */
export function measureSchedule(plan: Plan, measured: MeasuredForSittings): ScheduleMeasure | undefined {
  if (plan.sittings.length === 0) return undefined;
  const taken = new TakenDays(
    plan.away.map(({ value: { from, to } }) => ({ from: dayOf(from) ?? 0, to: dayOf(to) ?? -1 })),
  );
  const ordered = inOrderOfTime(plan.sittings);
  const laid = plan.sittings.map((sitting) => laidAs(sitting, plan));
  const works = plan.sittings.map((sitting, index) => workedOn(plan, sitting, laid[index]));
  const objects = coatsOfObjects(plan, measured, { ordered, laid, works });
  const longest = longestDrying(plan, objects);
  const order = layerOrder(objects, taken);
  const due = plan.due && dayOf(plan.due.value);
  const latest = due === undefined ? undefined : latestDays({ ordered, objects, due, taken });
  const sittings = ordered.flatMap(({ index, day }): readonly ScheduledSitting[] => {
    const own = laid[index];
    const sitting = plan.sittings[index];
    if (own === undefined || sitting === undefined) return [];
    const worked = works[index] ?? [];
    const away = day === undefined ? undefined : taken.holding(day);
    const days = longest[index];
    const last = latest?.[index];
    const readyFrom = order.readyFrom.get(index);
    return [
      {
        ...own,
        sitting: index,
        works: worked,
        isIdle: worked.length === 0 && sitting.tasks.length === 0 && !goesOverAll(own.layer),
        ...(day === undefined ? {} : { day }),
        ...(away === undefined ? {} : { away }),
        ...(days === undefined ? {} : { dryingDays: days }),
        ...(day === undefined || days === undefined || worked.length === 0 ? {} : { dryOn: day + days }),
        ...(readyFrom === undefined ? {} : { readyFrom }),
        ...(last === undefined ? {} : { latest: last }),
        ...(last === undefined || day === undefined ? {} : { slack: last - day }),
      },
    ];
  });
  const isSettled = longest.every((days) => days !== undefined);
  return {
    sittings,
    objects,
    conflicts: order.conflicts,
    neverWorked: neverWorked(plan, measured.shares, objects),
    ...(due === undefined ? {} : { due: dueMeasure(due, sittings, isSettled) }),
    ...(isSettled ? endOf(sittings, objects) : {}),
    taken,
    isSettled,
  };
}

/** A sitting in its place in time. */
export interface Ordered {
  /** Index into `plan.sittings`. */
  readonly index: number;
  readonly day?: number;
}

/** By date; one without a date stays behind the one that it follows in the text. */
function inOrderOfTime(sittings: readonly Sitting[]): readonly Ordered[] {
  let behind = -Infinity;
  const placed = sittings.map(({ date }, index) => {
    const day = date === undefined ? undefined : dayOf(date);
    behind = day ?? behind;
    return { index, behind, ...(day === undefined ? {} : { day }) };
  });
  return placed
    .toSorted((one, other) => (one.behind === other.behind ? 0 : one.behind - other.behind))
    .map(({ index, day }) => ({ index, ...(day === undefined ? {} : { day }) }));
}

function workedOn({ objects }: Plan, { works }: Sitting, laid: LaidAs | undefined): readonly number[] {
  if (works.length === 0 && laid && goesOverAll(laid.layer)) return objects.map(({ index }) => index);
  return [...new Set(works)];
}

interface Laying {
  readonly ordered: readonly Ordered[];
  /** In the order of `plan.sittings`. */
  readonly laid: readonly LaidAs[];
  readonly works: readonly (readonly number[])[];
}

function coatsOfObjects(
  plan: Plan,
  { palette }: MeasuredForSittings,
  { ordered, laid, works }: Laying,
): readonly ObjectSchedule[] {
  const coats = plan.objects.map((): Coat[] => []);
  const paints = palette?.paints ?? [];
  for (const { index, day } of ordered) {
    const own = laid[index];
    if (own === undefined) continue;
    // Objects that are painted with the same get the same coat.
    const laying = new Map<LaidPaint, Coat>();
    for (const object of works[index] ?? []) {
      const paint = paintLaid(plan, palette, own.layer, object);
      const coat = laying.get(paint) ?? coatOf(index, day, own, dryingOf(own, paint, paints));
      laying.set(paint, coat);
      coats[object]?.push(coat);
    }
  }
  return coats.map((each) => ({ coats: each }));
}

function coatOf(sitting: number, day: number | undefined, laid: LaidAs, drying: Drying): Coat {
  const { layer, fat } = laid;
  return {
    ...drying,
    sitting,
    laid,
    layer,
    fat,
    ...(day === undefined ? {} : { day }),
    ...(day === undefined || drying.days === undefined ? {} : { dryOn: day + drying.days }),
  };
}

/** For each sitting of the plan, days until the last of what it lays is dry; undefined while that is not known. */
function longestDrying(
  { sittings }: Plan,
  objects: readonly ObjectSchedule[],
): readonly (number | undefined)[] {
  const longest: (number | undefined)[] = sittings.map(() => 0);
  for (const { coats } of objects) {
    for (const { sitting, days } of coats) {
      const known = longest[sitting];
      longest[sitting] = known === undefined || days === undefined ? undefined : Math.max(known, days);
    }
  }
  return longest;
}

function neverWorked(
  { objects }: Plan,
  shares: readonly number[],
  schedules: readonly ObjectSchedule[],
): readonly number[] {
  const painted = schedules.map(({ coats }) => coats.some(({ layer }) => paintsObjects(layer)));
  if (!painted.includes(true)) return [];
  return objects
    .map(({ index }) => index)
    .filter((index) => (shares[index] ?? 0) > 0 && painted[index] !== true);
}

function dueMeasure(day: number, sittings: readonly ScheduledSitting[], isSettled: boolean): DueMeasure {
  const [first] = sittings;
  const ends = sittings.flatMap(({ day: held, dryOn }) => dryOn ?? held ?? []);
  return {
    day,
    ...(first?.latest === undefined ? {} : { latestStart: first.latest }),
    ...(first?.slack === undefined ? {} : { slack: first.slack }),
    ...(isSettled && ends.length > 0 ? { readyOn: greatest(ends) } : {}),
  };
}

/** When all is dry to the touch, and half a year after the last layer of oil. */
function endOf(
  sittings: readonly ScheduledSitting[],
  objects: readonly ObjectSchedule[],
): Pick<ScheduleMeasure, 'dryOn' | 'varnishFrom'> {
  const dry = sittings.flatMap(({ dryOn }) => dryOn ?? []);
  if (dry.length === 0) return {};
  let lastOil = -Infinity;
  let lastDry = -Infinity;
  for (const { coats } of objects) {
    for (const { day, dryOn, laid, layer } of coats) {
      if (day === undefined || dryOn === undefined || layer === 'varnish') continue;
      if (isDryingOil(laid.binder)) lastOil = Math.max(lastOil, day);
      else lastDry = Math.max(lastDry, dryOn);
    }
  }
  const hard = lastOil === -Infinity ? lastOil : monthsOn(lastOil, VARNISH_AFTER_MONTHS);
  const safe = Math.max(hard, lastDry);
  return { dryOn: greatest(dry), ...(safe === -Infinity ? {} : { varnishFrom: safe }) };
}

function greatest(days: readonly number[]): number {
  return days.reduce((most, day) => Math.max(most, day), -Infinity);
}
