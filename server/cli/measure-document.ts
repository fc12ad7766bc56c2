import type { Measures } from '../measure/measures.js';
import { toHex } from '../plan/colour/srgb.js';
import type { Plan } from '../plan/plan.js';
import { designPart, proportionPart } from './design-document.js';
import { pointOf, round } from './figures.js';
import type { MeasureDocument } from './schema/measure.js';

type Part<K extends keyof MeasureDocument> = NonNullable<MeasureDocument[K]>;

/** What is measured on a plan, for programs; its schema is `schema/measure-2.json`. */
export function measureDocument(
  file: string,
  plan: Plan,
  measures: Measures,
  errors: number,
): MeasureDocument {
  const focus = focusPart(plan, measures);
  return {
    schema: 'mahlstick/schema/measure-2.json',
    version: 2,
    file,
    errors,
    ...(plan.title ? { title: plan.title.value } : {}),
    canvas: canvasPart(plan, measures),
    divisions: plan.divisions.map(({ system, crossings }) => ({
      system,
      crossings: crossings.map(({ name, at }) => ({ name, at: pointOf(at) })),
    })),
    ...(focus ? { focus } : {}),
    objects: plan.objects.map((object, index) => objectPart(plan, measures, object, index)),
    values: valuesPart(plan, measures),
    colours: coloursPart(plan, measures),
    ...designPart(plan, measures),
  };
}

function canvasPart({ canvas }: Plan, { proportion }: Measures): Part<'canvas'> {
  const { width, height, diagonal, unit, millimetresPerUnit, stock, support, medium, ground } = canvas;
  return {
    width: round(width),
    height: round(height),
    diagonal: round(diagonal),
    unit,
    millimetresPerUnit,
    ...(stock === undefined ? {} : { stock }),
    proportion: proportionPart(proportion),
    ...(support === undefined ? {} : { support }),
    ...(medium === undefined ? {} : { medium }),
    ground: {
      colour: toHex(ground.colour),
      munsellValue: round(ground.value),
      step: ground.step,
      ...(ground.role ? { role: ground.role } : {}),
    },
  };
}

function focusPart({ focus, objects }: Plan, measures: Measures): MeasureDocument['focus'] {
  if (!focus || !measures.focus) return undefined;
  const { nearest, fromCentre, dominants } = measures.focus;
  return {
    at: pointOf(focus.at),
    ...(nearest
      ? {
          nearestCrossing: {
            system: nearest.system,
            name: nearest.crossing.name,
            at: pointOf(nearest.crossing.at),
            distance: round(nearest.distance),
            distanceShare: round(nearest.distanceShare),
          },
        }
      : {}),
    fromCentre: round(fromCentre),
    dominants: dominants.map(({ object, holds, distanceShare }) => ({
      object: objects[object]?.name ?? '',
      holds,
      distanceShare: distanceShare === undefined ? null : round(distanceShare),
    })),
  };
}

function objectPart(
  plan: Plan,
  measures: Measures,
  object: Plan['objects'][number],
  index: number,
): Part<'objects'>[number] {
  const measured = measures.objects[index];
  const { name, role, plane, step, value, painted, colour } = object;
  const colourName = colour?.named === undefined ? undefined : plan.colours[colour.named]?.name;
  return {
    name,
    ...(role ? { role } : {}),
    plane,
    ...(step === undefined ? {} : { step }),
    ...(value === undefined ? {} : { munsellValue: round(value) }),
    ...(painted ? { colour: toHex(painted) } : {}),
    ...(colourName === undefined ? {} : { colourName }),
    ...(colour?.role ? { colourRole: colour.role } : {}),
    share: round(measured?.share ?? 0),
    hiddenShare: round(measured?.hiddenShare ?? 0),
    offCanvasShare: round(measured?.offCanvasShare ?? 0),
    coveredBy: (measured?.coveredBy ?? []).map((other) => plan.objects[other]?.name ?? ''),
  };
}

function valuesPart(plan: Plan, { values }: Measures): Part<'values'> {
  return {
    steps: values.steps.map(({ step, value, share }) => ({
      step,
      munsellValue: round(value),
      share: round(share),
    })),
    groups: values.groups.map(({ name, from, to, share, objects }) => ({
      name,
      from,
      to,
      share: round(share),
      objects: carriers(plan, objects),
    })),
    budget: budgetPart(values.budget),
    bareShare: round(values.bareShare),
    unplannedShare: round(values.unplannedShare),
    ...(values.mean === undefined ? {} : { munsellMean: round(values.mean) }),
    ...(values.key === undefined ? {} : { key: values.key }),
    ...(values.range === undefined
      ? {}
      : { range: { from: round(values.range.from), to: round(values.range.to) } }),
  };
}

function coloursPart(plan: Plan, { colours }: Measures): Part<'colours'> {
  return {
    roles: colours.roles.map(({ role, share, objects }) => ({
      role,
      share: round(share),
      objects: carriers(plan, objects),
    })),
    named: plan.colours.map(({ name, colour, role }, index) => ({
      name,
      colour: toHex(colour),
      ...(role ? { role } : {}),
      share: round(colours.colours[index]?.share ?? 0),
    })),
    budget: budgetPart(colours.budget),
    noRoleShare: round(colours.noRoleShare),
    bareShare: round(colours.bareShare),
  };
}

function carriers(plan: Plan, objects: readonly { readonly object: number; readonly share: number }[]) {
  return objects.map(({ object, share }) => ({
    object: plan.objects[object]?.name ?? '',
    share: round(share),
  }));
}

function budgetPart(budget: Measures['values']['budget']): Part<'values'>['budget'] {
  return budget.map(({ name, share, target, difference, tolerance, within }) => ({
    name,
    share: round(share),
    target: round(target),
    difference: round(difference),
    tolerance: round(tolerance),
    within,
  }));
}
