import { type Reason, marked, reasonOf } from '../../grammar/index.js';
import { mirror, type Matrix, rotate, scale, translate } from './geometry/matrix.js';
import {
  ellipse,
  EMPTY_OUTLINE,
  join,
  type Outline,
  polygon,
  rectangle,
  smooth,
  transform,
} from './geometry/outline.js';
import { withOneMore } from './geometry/one-more.js';
import { outlineOfPathData } from './geometry/path-data.js';
import { boxCentre, boxHeight, boxWidth } from './geometry/point.js';
import { partOfSvg } from './geometry/svg-file.js';
import { isTangled } from './geometry/tangle.js';
import { spotOf } from './places.js';
import type { OutlineInput, Repetition, ShapeInput, Sizing } from './shapes.js';

export interface BuiltOutline {
  readonly outline: Outline;
  /** Shapes that could not be read; `shape` counts within the input. */
  readonly faults: readonly { readonly shape: number; readonly reason: Reason }[];
  /** It has too many points to be repeated so often, and is drawn once. */
  readonly overRepeated: boolean;
}

/** Points of one repeated outline: what can be drawn and measured while somebody types. */
export const MOST_REPEATED_POINTS = 200_000;

/**
 * The outline of an object: its shapes joined, then mirrored, sized, turned, placed and repeated, always in that
 * order, each about the middle of what there is so far. Canvas units; `tolerance` is how far the flattened outline
 * may stand off the curve.
 */
export function buildOutline(input: OutlineInput, tolerance: number): BuiltOutline {
  const faults: { shape: number; reason: Reason }[] = [];
  let parts: Outline[] | undefined;
  for (let shape = 0; shape < input.shapes.length; shape++) {
    const read = shapeOutline(input.shapes[shape] as ShapeInput, tolerance);
    if (!read.ok) faults.push({ shape, reason: read.reason });
    else if (!isTangled(read.outline.rings)) parts = withOneMore(parts, read.outline);
    else faults.push({ shape, reason: reasonOf(marked('it crosses itself too often to be measured')) });
  }
  const joined = (parts?.length === 1 ? parts[0] : join(parts ?? [])) ?? EMPTY_OUTLINE;
  const { repeat } = input;
  const overRepeated = repeat !== undefined && pointsOf(joined) * repeat.times > MOST_REPEATED_POINTS;
  const outline = arrange(joined, input, overRepeated ? undefined : repeat, tolerance);
  return { outline, faults, overRepeated };
}

/** The points of a flattened outline. */
export function pointsOf({ rings }: Pick<Outline, 'rings'>): number {
  let points = 0;
  for (const ring of rings) points += ring.length / 2;
  return points;
}

type ShapeReading =
  { readonly ok: true; readonly outline: Outline } | { readonly ok: false; readonly reason: Reason };

function shapeOutline(shape: ShapeInput, tolerance: number): ShapeReading {
  switch (shape.form) {
    case 'rectangle':
      return { ok: true, outline: rectangle(shape.from, shape.to) };
    case 'ellipse':
      return { ok: true, outline: ellipse(shape.centre, shape.radiusX, shape.radiusY, tolerance) };
    case 'outline':
      return { ok: true, outline: polygon(shape.points) };
    case 'smooth':
      return { ok: true, outline: smooth(shape.points, tolerance) };
    case 'path':
      return outlineOfPathData(shape.data, tolerance);
    case 'part':
      return partOfSvg(shape.content, shape.part, tolerance);
  }
}

function arrange(
  outline: Outline,
  input: OutlineInput,
  repeat: Repetition | undefined,
  tolerance: number,
): Outline {
  if (outline.path.length === 0) return outline;
  let placed = outline;
  if (input.mirror) placed = transform(placed, mirror(input.mirror, boxCentre(placed.box)));
  for (const sizing of input.sizing) {
    const matrix = sizingMatrix(placed, sizing);
    if (matrix) placed = transform(placed, matrix, tolerance);
  }
  if (input.turn !== 0) placed = transform(placed, rotate(input.turn, boxCentre(placed.box)));
  if (input.at) {
    const from = spotOf(placed.box, input.at.by);
    placed = transform(placed, translate(input.at.point.x - from.x, input.at.point.y - from.y));
  }
  return repeat ? repeated(placed, repeat, tolerance) : placed;
}

/** `undefined` where there is nothing to scale: a shape without width can't be given one. */
function sizingMatrix({ box }: Outline, sizing: Sizing): Matrix | undefined {
  const centre = boxCentre(box);
  const width = boxWidth(box);
  const height = boxHeight(box);
  switch (sizing.by) {
    case 'factor':
      return scale(sizing.across, sizing.down, centre);
    case 'width':
      return width > 0 ? scale(sizing.length / width, sizing.length / width, centre) : undefined;
    case 'height':
      return height > 0 ? scale(sizing.length / height, sizing.length / height, centre) : undefined;
    case 'extent':
      return width > 0 && height > 0
        ? scale(sizing.width / width, sizing.height / height, centre)
        : undefined;
  }
}

function repeated(
  outline: Outline,
  { times, every, turning, resized }: Repetition,
  tolerance: number,
): Outline {
  const centre = boxCentre(outline.box);
  const copies = Array.from({ length: times }, (_, copy) => {
    if (copy === 0) return outline;
    const turned = turning === 0 ? outline : transform(outline, rotate(turning * copy, centre));
    const factor = resized ** copy;
    const sized = factor === 1 ? turned : transform(turned, scale(factor, factor, centre), tolerance);
    return transform(sized, translate(every.x * copy, every.y * copy));
  });
  return join(copies);
}
