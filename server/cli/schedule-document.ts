import { isoOf } from '../measure/sittings/days.js';
import type { Coat, LayerConflict, ScheduledSitting, ScheduleMeasure } from '../measure/sittings/schedule.js';
import { weekdayInWords } from '../findings/words/days.js';
import type { Plan } from '../plan/plan.js';
import { round } from './figures.js';
import type { ScheduleDocument } from './schema/schedule.js';

type Held = ScheduleDocument['sittings'][number];

/** The sittings of a plan in time, for programs; its schema is `schema/schedule-1.json`. */
export function scheduleDocument(
  file: string,
  plan: Plan,
  schedule: ScheduleMeasure | undefined,
  errors: number,
): ScheduleDocument {
  const nameOf = (object: number): string => plan.objects[object]?.name ?? '';
  return {
    schema: 'mahlstick/schema/schedule-1.json',
    version: 1,
    file,
    errors,
    ...(plan.title ? { title: plan.title.value } : {}),
    sittings: schedule ? heldSittings(plan, schedule) : [],
    conflicts: schedule ? schedule.conflicts.map((one) => conflictPart(plan, schedule, one)) : [],
    neverWorked: (schedule?.neverWorked ?? []).map(nameOf),
    ...optional('dryOn', iso(schedule?.dryOn)),
    ...optional('varnishFrom', iso(schedule?.varnishFrom)),
    ...(schedule?.due ? { due: duePart(schedule.due) } : {}),
    away: plan.away.map(({ value: { from, to } }) => ({ from, to })),
  };
}

function heldSittings(plan: Plan, { sittings, objects }: ScheduleMeasure): Held[] {
  const coats = plan.sittings.map((): { readonly object: string; readonly coat: Coat }[] => []);
  objects.forEach((schedule, object) => {
    for (const coat of schedule.coats)
      coats[coat.sitting]?.push({ object: plan.objects[object]?.name ?? '', coat });
  });
  return sittings.map((held) => ({
    ...headOf(plan, held),
    ...laidPart(held),
    works: held.works.map((object) => plan.objects[object]?.name ?? ''),
    tasks: (plan.sittings[held.sitting]?.tasks ?? []).map(({ value }) => value),
    idle: held.isIdle,
    coats: (coats[held.sitting] ?? []).map(({ object, coat }) => coatPart(plan, object, coat)),
    ...optional('dryingDays', held.dryingDays),
    ...optional('dryOn', iso(held.dryOn)),
    ...optional('readyFrom', iso(held.readyFrom)),
    ...optional('latest', iso(held.latest)),
    ...optional('slackDays', held.slack),
  }));
}

function headOf(
  { sittings }: Plan,
  { sitting, day, away }: ScheduledSitting,
): Pick<Held, 'title' | 'date' | 'weekday' | 'taken'> {
  return {
    title: sittings[sitting]?.title ?? '',
    ...(day === undefined ? {} : { date: isoOf(day), weekday: weekdayInWords(day) }),
    taken: away !== undefined,
  };
}

function laidPart({ layer, layerStated, varnish, fat, fatFrom, film, filmStated, binder }: ScheduledSitting) {
  return {
    layer,
    layerStated,
    ...optional('varnish', varnish),
    fat: round(fat),
    fatFrom,
    filmMillimetres: round(film),
    filmStated,
    binder,
  };
}

function coatPart(
  { palette }: Plan,
  object: string,
  { days, dryOn, restsOn, slowest }: Coat,
): Held['coats'][number] {
  const paint = slowest && palette?.paints[slowest.paint];
  return {
    object,
    ...optional('days', days),
    ...optional('dryOn', iso(dryOn)),
    restsOn,
    ...(slowest && paint
      ? {
          slowest: {
            paint: paint.name,
            ...optional('index', slowest.pigment?.index),
            days: slowest.days,
            ...optional('source', slowest.source),
          },
        }
      : {}),
  };
}

function conflictPart(
  plan: Plan,
  { sittings }: ScheduleMeasure,
  conflict: LayerConflict,
): ScheduleDocument['conflicts'][number] {
  const placeOf = (index: number): number => sittings.findIndex(({ sitting }) => sitting === index);
  const { kind, object, below, above, missing, from, fat, thinFilmDays } = conflict;
  return {
    kind,
    object: plan.objects[object]?.name ?? '',
    below: placeOf(below),
    above: placeOf(above),
    ...optional('missingDays', missing),
    ...optional('from', iso(from)),
    ...(fat ? { fat: [round(fat[0]), round(fat[1])] } : {}),
    ...(thinFilmDays ? { thinFilmDays: [thinFilmDays[0], thinFilmDays[1]] } : {}),
  };
}

function duePart({
  day,
  readyOn,
  latestStart,
  slack,
}: NonNullable<ScheduleMeasure['due']>): NonNullable<ScheduleDocument['due']> {
  return {
    date: isoOf(day),
    weekday: weekdayInWords(day),
    ...optional('readyOn', iso(readyOn)),
    ...optional('latestStart', iso(latestStart)),
    ...optional('slackDays', slack),
  };
}

function iso(day: number | undefined): string | undefined {
  return day === undefined ? undefined : isoOf(day);
}

function optional<K extends string, T>(key: K, value: T | undefined): { readonly [P in K]?: T } {
  return value === undefined ? {} : ({ [key]: value } as { readonly [P in K]: T });
}
