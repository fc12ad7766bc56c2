import { dependenciesOf } from '../../plan/dependencies.js';
import type { Outline } from '../../plan/geometry/outline.js';
import type { Plan } from '../../plan/plan.js';

interface Kept {
  readonly inputs: readonly unknown[];
  readonly result: unknown;
}

/** In a larger crowd a trial takes too long for one who types. */
const MOST_OBJECTS = 300;

const kept = new WeakMap<Outline, Map<string, Kept>>();

/**
 * The result of trying something on the picture, kept as long as the object's outline, and used again as long as
 * nothing else changes that a trial looks at: shapes, their order, roles, values, colours and what is placed by what.
 * So a finding that stands while other lines are typed costs nothing. Nothing is tried in a plan of more than 300 objects.
 */
export function remembered<Result>(
  plan: Plan,
  object: number,
  what: string,
  limit: number,
  work: () => Result | undefined,
): Result | undefined {
  const outline = plan.objects[object]?.outline;
  if (!outline || plan.objects.length > MOST_OBJECTS) return undefined;
  const ofOutline = kept.get(outline) ?? new Map<string, Kept>();
  kept.set(outline, ofOutline);
  const inputs = [...inputsOf(plan), limit];
  const known = ofOutline.get(what);
  if (known && same(known.inputs, inputs)) return known.result as Result | undefined;
  const result = work();
  ofOutline.set(what, { inputs, result });
  return result;
}

const inputs = new WeakMap<Plan, readonly unknown[]>();

function inputsOf(plan: Plan): readonly unknown[] {
  const { canvas, focus, objects, coveringOrder, scale } = plan;
  const known = inputs.get(plan) ?? [
    canvas.width,
    canvas.height,
    canvas.unit,
    canvas.ground.value,
    canvas.ground.colour.lab.join(' '),
    focus?.at.x,
    focus?.at.y,
    scale.steps,
    plan.valueBudget ? JSON.stringify(plan.valueBudget) : '',
    coveringOrder.join(' '),
    ...objects.flatMap(({ outline, role, value, painted, node }) => [
      outline,
      role,
      value,
      painted?.lab.join(' '),
      dependenciesOf(node.children)
        .map(({ name }) => name?.text ?? '')
        .join('\n'),
    ]),
  ];
  inputs.set(plan, known);
  return known;
}

function same(one: readonly unknown[], other: readonly unknown[]): boolean {
  return one.length === other.length && one.every((input, index) => Object.is(input, other[index]));
}
