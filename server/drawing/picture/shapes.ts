import { type Outline, pathData } from '../../plan/geometry/outline.js';
import type { PlanObject } from '../../plan/plan.js';
import { glazeKey } from './glaze-key.js';
import { hatchPath } from './hatch.js';
import { pathMark } from '../marks.js';
import { rectanglePath } from '../path-data.js';
import { type Reading, glazedPaintOf, isUnplanned } from '../views/reading.js';
import type { Hex, Mark, Stroke } from '../scene.js';
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
    const d = dataOf(object.outline);
    const shape = pathMark(subject, d, {
      fill,
      fillRule: object.outline.fillRule,
      stroke: stroke && roundAsOne(object, stroke),
      subject,
      tip: objectTip(object, reading),
    });
    if (glaze !== undefined) return [shape, { ...shape, key: glazeKey(subject), fill: glaze }];
    if (!isUnplanned(object)) return [shape];
    const lines = hatchPath(object.outline, 0.55 * layout.em, picture);
    if (lines === '') return [shape];
    return [shape, pathMark(`${subject}:hatch`, lines, { stroke: { ink: hatch, weight: 'hair' }, subject })];
  });
  return [groundMark, ...shapes];
}

/** Shapes of one object that run into each other have one line round them all. */
function roundAsOne({ outline }: PlanObject, stroke: Stroke): Stroke {
  return outline.rings.length > 1 ? { ...stroke, under: true } : stroke;
}

function groundTip({ plan, measures }: Reading): string {
  return `Ground, bare on ${percent(measures.values.bareShare)} of the picture, step ${plan.canvas.ground.step}.`;
}

/** One sentence on an object: what it is in the picture, how much of it is seen, its value and colour. */
export function objectTip(object: PlanObject, reading: Reading): string {
  const { plan, measures } = reading;
  const seen = measures.objects[object.index]?.share ?? 0;
  const named = object.colour?.named === undefined ? undefined : plan.colours[object.colour.named];
  const role = object.colour?.role;
  const facts = [
    ...(object.role === undefined ? [] : [object.role]),
    object.plane === 'middle' ? 'middle plane' : object.plane,
    seen > 0 ? `${percent(seen)} of the picture` : 'not seen',
    ...(object.step === undefined ? [] : [`step ${Number(object.step.toFixed(1))} of ${plan.scale.steps}`]),
    ...(named === undefined ? [] : [role === undefined ? named.name : `${named.name} (${role})`]),
    ...(glazedPaintOf(object, reading) === undefined ? [] : ['glazed']),
    ...(isUnplanned(object) ? ['no value or colour planned'] : []),
  ];
  return `${capitalised(object.name)}: ${inWords(facts)}.`;
}
