import type { Comparison } from '../../findings/comparison/compare.js';
import { onLater, type Frame } from '../../measure/comparison/frame.js';
import type { ObjectPair } from '../../measure/comparison/pairs.js';
import { type Outline, pathData, transform } from '../../plan/geometry/outline.js';
import { boxCentre, distance, type Point } from '../../plan/geometry/point.js';
import { pathMark } from '../marks.js';
import { circlePath, linePath, polygonPath } from '../path-data.js';
import type { Mark, Stroke } from '../scene.js';
import type { Subjects } from '../views/reading.js';

const DECIMALS = 3;
/** Lines that are to be read over any colour have a broad one of the paper's colour under them. */
const UNDER: Stroke = { ink: 'mount', weight: 'bold' };
const WAS: Stroke = { ink: 'ink', weight: 'medium', dash: 'dashed' };
const IS: Stroke = { ink: 'ink', weight: 'medium' };

/**
 * What lies over the later picture: where things were, dashed, with an arrow to where they are; what is new, drawn
 * round.
 */
export function laterMarks(
  { earlier, later, objects, frame }: Comparison,
  subjects: Subjects,
  em: number,
): readonly Mark[] {
  const moved = objects.pairs.flatMap((pair): readonly Mark[] => {
    const [before, now] = [earlier.plan.objects[pair.earlier], later.plan.objects[pair.later]];
    if (before === undefined || now === undefined || !isOtherOutline(pair)) return [];
    const was = transform(before.outline, frame.matrix);
    const subject = subjects.objects[pair.later];
    const tip = `Where ${before.name} was`;
    return [
      ...outlineMarks(`was:${now.key}`, was, WAS, subject, tip),
      ...arrowMarks(`way:${now.key}`, boxCentre(was.box), boxCentre(now.outline.box), em, subject),
    ];
  });
  const come = objects.come.flatMap((index): readonly Mark[] => {
    const object = later.plan.objects[index];
    return object === undefined
      ? []
      : outlineMarks(
          `new:${object.key}`,
          object.outline,
          IS,
          subjects.objects[index],
          `${object.name} is new`,
        );
  });
  return [...come, ...moved, ...focusMarks(earlier.plan.focus?.at, later.plan.focus?.at, frame, em)];
}

/** What lies over the earlier picture: what is gone from it, dashed. */
export function earlierMarks({ earlier, objects }: Comparison, subjects: Subjects): readonly Mark[] {
  return objects.gone.flatMap((index) => {
    const object = earlier.plan.objects[index];
    return object === undefined
      ? []
      : outlineMarks(
          `gone:${object.key}`,
          object.outline,
          WAS,
          subjects.objects[index],
          `${object.name} is gone`,
        );
  });
}

function isOtherOutline({ outline: { move, turn, scale, isReshaped } }: ObjectPair): boolean {
  return isReshaped || move !== undefined || turn !== undefined || scale !== undefined;
}

function outlineMarks(
  key: string,
  outline: Outline,
  stroke: Stroke,
  subject: string | undefined,
  tip: string,
): readonly Mark[] {
  const d = pathData(outline, DECIMALS);
  if (d === '') return [];
  return [
    pathMark(`${key}:under`, d, { stroke: UNDER, subject }),
    pathMark(key, d, { stroke, subject, tip }),
  ];
}

function focusMarks(
  before: Point | undefined,
  now: Point | undefined,
  frame: Frame,
  em: number,
): readonly Mark[] {
  if (before === undefined || now === undefined) return [];
  const was = onLater(frame, before);
  const ring = circlePath(was, 0.8 * em);
  const way = arrowMarks('way of the focus', was, now, em, 'focus');
  return way.length === 0
    ? []
    : [
        pathMark('was:focus:under', ring, { stroke: UNDER, subject: 'focus' }),
        pathMark('was:focus', ring, { stroke: WAS, subject: 'focus', tip: 'Where the focal point was' }),
        ...way,
      ];
}

/** None over a way so short that its head would hide it. */
function arrowMarks(
  key: string,
  from: Point,
  to: Point,
  em: number,
  subject: string | undefined,
): readonly Mark[] {
  const long = distance(from, to);
  const head = Math.min(0.9 * em, 0.6 * long);
  if (long < 0.7 * em) return [];
  const [across, down] = [(to.x - from.x) / long, (to.y - from.y) / long];
  const neck = { x: to.x - head * across, y: to.y - head * down };
  const side = 0.45 * head;
  const point = polygonPath([
    to,
    { x: neck.x - side * down, y: neck.y + side * across },
    { x: neck.x + side * down, y: neck.y - side * across },
  ]);
  const line = linePath([from, neck]);
  return [
    pathMark(`${key}:under`, line, { stroke: UNDER, subject }),
    pathMark(`${key}:line`, line, { stroke: IS, subject }),
    pathMark(`${key}:head`, point, { fill: 'ink', stroke: { ink: 'mount', weight: 'fine' }, subject }),
  ];
}
