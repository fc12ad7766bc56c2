import { spokenNow } from '../../../grammar/index.js';
import { sameInputs } from '../../measure/memory.js';
import { type Outline, pathData } from '../../plan/geometry/outline.js';
import type { PlanObject } from '../../plan/plan.js';
import { glazeKey } from './glaze-key.js';
import { hatchPath } from './hatch.js';
import { pathMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { type Reading, glazedPaintOf, isUnplanned } from '../views/reading.js';
import type { Hex, Mark, PathMark, Stroke } from '../scene.js';
import { percent } from '../captions/words.js';
import { capitalised, inWords } from '../../plan/problems.js';

export interface ShapeStyle {
  readonly fill: Hex;
  readonly stroke?: Stroke;
  /** Ink of the hatching when nothing is planned for the object. */
  readonly hatch: Hex;
  /** What is seen through its glaze, which lies over the body colour as a shape of its own. */
  readonly glaze?: Hex | undefined;
}

const DECIMALS = 3;

const known = new WeakMap<Outline, string>();

/** Written once for each outline: one that an edit leaves alone stays the same object. */
function dataOf(outline: Outline): string {
  const data = known.get(outline) ?? pathData(outline, DECIMALS);
  known.set(outline, data);
  return data;
}

/**
 * The ground and the objects on it, from back to front, each as its whole outline: what is in front covers what is
 * behind, as on the canvas. An object without value and colour is hatched.
 */
export function shapeMarks(
  reading: Reading,
  ground: Hex,
  style: (object: PlanObject) => ShapeStyle,
): readonly Mark[] {
  const { plan, picture, subjects, layout } = reading;
  const groundMark = pathMark('ground', rectanglePath(picture), {
    fill: ground,
    subject: subjects.all['ground'] === undefined ? undefined : 'ground',
    tip: groundTip(reading),
  });
  const shapes = plan.coveringOrder.flatMap((index): Mark[] => {
    const object = plan.objects[index];
    const subject = subjects.objects[index];
    if (object === undefined || subject === undefined || object.outline.path.length === 0) return [];
    const { fill, stroke, hatch, glaze } = style(object);
    const shape = shapeMark(subject, object, fill, stroke, reading);
    if (glaze !== undefined) return [shape, { ...shape, key: glazeKey(subject), fill: glaze }];
    if (!isUnplanned(object)) return [shape];
    const lines = hatchPath(object.outline, 0.55 * layout.em, picture);
    if (lines === '') return [shape];
    return [shape, pathMark(`${subject}:hatch`, lines, { stroke: { ink: hatch, weight: 'hair' }, subject })];
  });
  return [groundMark, ...shapes];
}

const kept = new WeakMap<Outline, { readonly inputs: readonly unknown[]; readonly mark: PathMark }>();

/** Kept with the outline, as long as nothing that is seen or told of the object changes. */
function shapeMark(
  subject: string,
  object: PlanObject,
  fill: Hex,
  stroke: Stroke | undefined,
  reading: Reading,
): PathMark {
  const { outline } = object;
  const facts = factsOf(object, reading);
  const line = [stroke?.ink, stroke?.weight, stroke?.dash, stroke?.under];
  const inputs = [subject, fill, ...line, spokenNow(), ...facts];
  const last = kept.get(outline);
  if (last && sameInputs(last.inputs, inputs)) return last.mark;
  const mark = pathMark(subject, dataOf(outline), {
    fill,
    fillRule: outline.fillRule,
    stroke: stroke && roundAsOne(object, stroke),
    subject,
    tip: objectTip(object, reading),
  });
  kept.set(outline, { inputs, mark });
  return mark;
}

/** Shapes of one object that run into each other have one line round them all. */
function roundAsOne({ outline }: PlanObject, stroke: Stroke): Stroke {
  return outline.rings.length > 1 ? { ...stroke, under: true } : stroke;
}

function groundTip({ plan, measures }: Reading): string {
  return `Ground, bare on ${percent(measures.values.bareShare)} of the picture, step ${plan.canvas.ground.step}.`;
}

/** What `objectTip` tells of an object. */
type Facts = readonly [
  name: string,
  objectRole: PlanObject['role'],
  plane: PlanObject['plane'],
  seen: number,
  step: number | undefined,
  steps: number,
  colourName: string | undefined,
  colourRole: string | undefined,
  isGlazed: boolean,
  isUnplanned: boolean,
];

function factsOf(object: PlanObject, reading: Reading): Facts {
  const { plan, measures } = reading;
  const { name, role, plane, step, colour } = object;
  return [
    name,
    role,
    plane,
    measures.objects[object.index]?.share ?? 0,
    step,
    plan.scale.steps,
    colour?.named === undefined ? undefined : plan.colours[colour.named]?.name,
    colour?.role,
    glazedPaintOf(object, reading) !== undefined,
    isUnplanned(object),
  ];
}

/** One sentence on an object: what it is in the picture, how much of it is seen, its value and colour. */
export function objectTip(object: PlanObject, reading: Reading): string {
  const [name, role, plane, seen, step, steps, colour, colourRole, isGlazed, isBare] = factsOf(
    object,
    reading,
  );
  const facts = [
    ...(role === undefined ? [] : [role]),
    plane === 'middle' ? 'middle plane' : plane,
    seen > 0 ? `${percent(seen)} of the picture` : 'not seen',
    ...(step === undefined ? [] : [`step ${Number(step.toFixed(1))} of ${steps}`]),
    ...(colour === undefined ? [] : [colourRole === undefined ? colour : `${colour} (${colourRole})`]),
    ...(isGlazed ? ['glazed'] : []),
    ...(isBare ? ['no value or colour planned'] : []),
  ];
  return `${capitalised(name)}: ${inWords(facts)}.`;
}
