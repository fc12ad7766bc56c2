import { dependenciesOf } from '../../plan/dependencies.js';
import type { Outline } from '../../plan/geometry/outline.js';
import type { Plan } from '../../plan/plan.js';
import { sameInputs } from '../../measure/memory.js';
import { triesWithin } from './trial-costs.js';

interface Kept {
  readonly inputs: readonly unknown[];
  readonly result: unknown;
}

/** In a larger crowd a trial takes too long for one who types. */
const MOST_OBJECTS = 300;

const kept = new WeakMap<Outline, Map<string, Kept>>();

/**
 * The result of trying something on the picture, kept as long as the object's outline, and used again as long as
 * nothing else changes that a trial looks at: shapes, their order, roles and what is placed by what. So a finding that
 * stands while other lines are typed costs nothing. Nothing is tried in a plan of more than 300 objects, nor with an
 * object for which one trial alone costs too much.
 */
export function remembered<Result>(
  plan: Plan,
  object: number,
  what: string,
  limit: number,
  work: () => Result | undefined,
): Result | undefined {
  return keptFor(plan, object, what, () => [...shapesOf(plan), limit], work);
}

/** The same for a trial that looks at values and colours too. */
export function rememberedAsPainted<Result>(
  plan: Plan,
  object: number,
  what: string,
  limit: number,
  work: () => Result | undefined,
): Result | undefined {
  return keptFor(plan, object, what, () => [...shapesOf(plan), ...paintOf(plan), limit], work);
}

function keptFor<Result>(
  plan: Plan,
  object: number,
  what: string,
  inputsOf: () => readonly unknown[],
  work: () => Result | undefined,
): Result | undefined {
  const outline = plan.objects[object]?.outline;
  if (!outline || plan.objects.length > MOST_OBJECTS) return undefined;
  const inputs = inputsOf();
  const ofOutline = kept.get(outline) ?? new Map<string, Kept>();
  kept.set(outline, ofOutline);
  const known = ofOutline.get(what);
  if (known && sameInputs(known.inputs, inputs)) return known.result as Result | undefined;
  const result = triesWithin(plan, object, 1) === 0 ? undefined : work();
  ofOutline.set(what, { inputs, result });
  return result;
}

const shapes = new WeakMap<Plan, readonly unknown[]>();

function shapesOf(plan: Plan): readonly unknown[] {
  const { canvas, focus, objects, coveringOrder } = plan;
  const known = shapes.get(plan) ?? [
    canvas.width,
    canvas.height,
    canvas.unit,
    focus?.at.x,
    focus?.at.y,
    coveringOrder.join(' '),
    ...objects.flatMap(({ outline, role, plane, node }) => [
      outline,
      role,
      plane,
      dependenciesOf(node.children)
        .map(({ name }) => name?.text ?? '')
        .join('\n'),
    ]),
  ];
  shapes.set(plan, known);
  return known;
}

function paintOf({ canvas, objects, scale, valueBudget }: Plan): readonly unknown[] {
  return [
    canvas.ground.value,
    canvas.ground.colour.lab.join(' '),
    scale.steps,
    valueBudget ? JSON.stringify(valueBudget) : '',
    ...objects.flatMap(({ value, painted }) => [value, painted?.lab.join(' ')]),
  ];
}
