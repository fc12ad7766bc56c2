import { reasonInWords } from '../../grammar/index.js';
import { doubtInWords } from '../findings/words/photographs.js';
import type { BudgetMeasure, Measures } from '../measure/measures.js';
import type { RecordFigures, RecordObject, SittingRecord } from '../measure/photograph/record.js';
import { computedColour, type Lab } from '../plan/colour/model.js';
import { toMunsell } from '../plan/colour/munsell.js';
import { toHex } from '../plan/colour/srgb.js';
import type { Plan } from '../plan/plan.js';
import { pointOf, round } from './figures.js';
import type { RecordDocument } from './schema/record.js';

type Entry = RecordDocument['sittings'][number];
type Measured = Extract<Entry, { is: 'measured' }>;

/** What the photographs of the sittings tell, for programs; its schema is `schema/record-1.json`. */
export function recordDocument(file: string, plan: Plan, measures: Measures, errors: number): RecordDocument {
  const mean = measures.values.mean;
  return {
    schema: 'mahlstick/schema/record-1.json',
    version: 1,
    file,
    errors,
    ...(plan.title ? { title: plan.title.value } : {}),
    unit: plan.canvas.unit,
    scale: plan.scale.steps,
    ...(mean === undefined ? {} : { plannedMeanValue: round(mean) }),
    sittings: (measures.record?.sittings ?? []).map((record) => entryOf(plan, measures, record)),
  };
}

function entryOf(plan: Plan, measures: Measures, record: SittingRecord): Entry {
  const sitting = plan.sittings[record.sitting];
  const head = {
    sitting: record.sitting + 1,
    title: sitting?.title ?? '',
    ...(sitting?.date === undefined ? {} : { date: sitting.date }),
    photograph: sitting?.photo?.file ?? '',
  };
  switch (record.is) {
    case 'on its way':
      return { ...head, is: record.is };
    case 'unreadable':
      return { ...head, is: record.is, reason: reasonInWords(record.reason) };
    case 'measured':
      return { ...head, is: record.is, ...measuredPart(plan, measures, record) };
  }
}

function measuredPart(
  plan: Plan,
  { values, colours }: Measures,
  { picture, figures }: Extract<SittingRecord, { is: 'measured' }>,
): Omit<Measured, 'is' | 'sitting' | 'title' | 'date' | 'photograph'> {
  const { type, width, height, profile, profileStated, taken } = picture.source;
  const { change, emphasis } = figures;
  return {
    type,
    width,
    height,
    profile,
    profileStated,
    ...(taken === undefined ? {} : { taken }),
    whole: { ...figures.isWhole },
    meanValue: round(figures.key),
    range: { darkest: round(figures.range.darkest), lightest: round(figures.range.lightest) },
    steps: figures.steps.map(({ share }) => round(share)),
    groups: figures.groups.map(({ name, from, to, share }, index) => ({
      name,
      from,
      to,
      share: round(share),
      planned: round(values.groups[index]?.share ?? 0),
    })),
    valueBudget: budgetPart(figures.valueBudget, values.budget),
    roles: figures.roles.map(({ role, share }) => ({
      role,
      share: round(share),
      planned: round(colours.roles.find((one) => one.role === role)?.share ?? 0),
    })),
    noRole: round(figures.noRoleShare),
    colourBudget: budgetPart(figures.colourBudget, colours.budget),
    ...(emphasis ? { emphasis: emphasisPart(emphasis) } : {}),
    objects: figures.objects.map((seen) => objectPart(plan, seen)),
    ...(change
      ? {
          change: {
            since: change.since + 1,
            mean: round(change.mean),
            objects: change.objects.map(({ object, difference }) => ({
              name: plan.objects[object]?.name ?? '',
              difference: round(difference),
            })),
            ...(change.bare === undefined ? {} : { bare: round(change.bare) }),
          },
        }
      : {}),
    doubts: figures.doubts.map((doubt) => ({
      about: doubt.about,
      grave: doubt.isGrave,
      inWords: doubtInWords(plan, doubt),
    })),
  };
}

function budgetPart(
  painted: readonly BudgetMeasure[],
  planned: readonly BudgetMeasure[],
): Measured['valueBudget'] {
  return painted.map(({ name, share, target, tolerance, within }, index) => ({
    name,
    share: round(share),
    planned: round(planned[index]?.share ?? 0),
    target,
    tolerance,
    within,
  }));
}

function emphasisPart({
  at,
  fromFocus,
  atFocus,
  planned,
}: NonNullable<RecordFigures['emphasis']>): NonNullable<Measured['emphasis']> {
  return {
    at: pointOf(at),
    ...(fromFocus === undefined ? {} : { fromFocus: round(fromFocus) }),
    ...(atFocus === undefined ? {} : { atFocus: round(atFocus) }),
    ...(planned?.atFocus === undefined ? {} : { plannedAtFocus: round(planned.atFocus) }),
  };
}

function objectPart(
  plan: Plan,
  { object, share, worked, colour, value, step, against, since }: RecordObject,
): Measured['objects'][number] {
  return {
    name: plan.objects[object]?.name ?? '',
    share: round(share),
    worked,
    ...colourPart(colour),
    value: round(value),
    step: round(step),
    ...(against
      ? {
          planned: { step: round(against.step), ...(against.colour ? colourPart(against.colour) : {}) },
          ...offPart(against),
          ...(against.hueAndChroma === undefined ? {} : { hueAndChroma: round(against.hueAndChroma) }),
        }
      : {}),
    ...(since ? { before: offPart(since), went: since.went } : {}),
  };
}

function offPart({ stepsOff, difference }: { readonly stepsOff: number; readonly difference?: number }) {
  return {
    stepsOff: round(stepsOff),
    ...(difference === undefined ? {} : { difference: round(difference) }),
  };
}

function colourPart(lab: Lab): { readonly colour: string; readonly munsell: string } {
  const colour = computedColour(lab);
  return { colour: toHex(colour), munsell: toMunsell(colour).text };
}
