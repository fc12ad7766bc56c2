import type { Node } from '../../../grammar/index.js';
import { buildOutline } from '../../plan/build-outline.js';
import type { Outline } from '../../plan/geometry/outline.js';
import { type Box, boxCentre, boxHeight, boxWidth, type Point } from '../../plan/geometry/point.js';
import { type PlaceSurroundings, spotOf } from '../../plan/places.js';
import type { PlanObject } from '../../plan/plan.js';
import { every } from '../../plan/select.js';
import type { OutlineInput } from '../../plan/shapes.js';
import type { Frame } from './handles.js';
import { firstCopyOf, flatnessOf } from './outline-points.js';

/**
 * The frame of an object that is made larger and smaller by it. None where points are taken hold of instead, of a line
 * without width, and of a part of a file that is turned or repeated: how the part lies in its file is not at hand here.
 */
export function frameOf(
  { node: { children }, outline }: PlanObject,
  surroundings: PlaceSurroundings,
): Frame | undefined {
  const forms = every(children, 'shape').map(({ statement }) => statement.shape.form);
  if (outline.path.length === 0 || forms.some((form) => form === 'outline' || form === 'smooth'))
    return undefined;
  const isPlain = turnOf(children) === 0 && every(children, 'repeat').length === 0;
  if (!isPlain && forms.includes('file')) return undefined;
  const frame = isPlain ? framed(outline.box) : firstFrame(children, outline, surroundings);
  if (frame.width === 0 || frame.height === 0) return undefined;
  return isEven(children) ? { ...frame, isEven: true } : frame;
}

/**
 * From the middle of an object's frame to the place that it is set down by, if it were so many times as wide and high.
 * @param across how many times as wide, before it is turned
 */
export function setDownFrom(
  { node: { children } }: PlanObject,
  { width, height, turn }: Frame,
  surroundings: PlaceSurroundings,
  across = 1,
  down = 1,
): Point {
  const by = every(children, 'at').at(-1)?.statement.by?.choice ?? 'centre';
  if (turn === 0) {
    const [x, y] = [(width * across) / 2, (height * down) / 2];
    return spotOf({ left: -x, top: -y, right: x, bottom: y }, by);
  }
  const { shapes, mirror, sizing } = firstCopyOf(children, surroundings).input;
  const input: OutlineInput = {
    shapes,
    ...(mirror ? { mirror } : {}),
    sizing: [...sizing, { by: 'factor', across, down }],
    turn: 0,
  };
  const flatness = flatnessOf(surroundings);
  const middle = boxCentre(buildOutline(input, flatness).outline.box);
  const spot = spotOf(buildOutline({ ...input, turn }, flatness).outline.box, by);
  return { x: spot.x - middle.x, y: spot.y - middle.y };
}

const known = new WeakMap<Outline, Frame>();

/** Of the first copy. An outline that is the same was arranged in the same way. */
function firstFrame(children: readonly Node[], outline: Outline, surroundings: PlaceSurroundings): Frame {
  const kept = known.get(outline);
  if (kept) return kept;
  const flatness = flatnessOf(surroundings);
  const { at, ...input } = firstCopyOf(children, surroundings).input;
  const level = framed(buildOutline({ ...input, turn: 0 }, flatness).outline.box);
  const turned = buildOutline(input, flatness).outline.box;
  const from = at && spotOf(turned, at.by);
  const middle = at && from ? sum(level.middle, at.point, from) : level.middle;
  const frame: Frame = { ...level, middle, turn: input.turn };
  known.set(outline, frame);
  return frame;
}

function sum(place: Point, to: Point, from: Point): Point {
  return { x: place.x + to.x - from.x, y: place.y + to.y - from.y };
}

function framed(box: Box): Frame {
  const { x, y } = boxCentre(box);
  return { middle: { x, y }, width: boxWidth(box), height: boxHeight(box), turn: 0 };
}

function turnOf(children: readonly Node[]): number {
  return every(children, 'turn').at(-1)?.statement.degrees.value ?? 0;
}

/** Whether one length says how large it is. */
function isEven(children: readonly Node[]): boolean {
  if (every(children, 'resize').length > 0) return false;
  const size = children.findLast(
    ({ statement }) => statement.kind === 'size' || statement.kind === 'size along',
  );
  if (size) return size.statement.kind === 'size along';
  const [shape, ...others] = every(children, 'shape');
  return others.length === 0 && shape?.statement.shape.form === 'circle';
}
