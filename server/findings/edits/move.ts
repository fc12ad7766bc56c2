import type { Move, Node, Place, ShapeForm } from '../../../grammar/index.js';
import type { Axis } from '../../plan/lengths.js';
import { boxCentre } from '../../plan/geometry/point.js';
import type { Canvas, Plan, PlanObject } from '../../plan/plan.js';
import { locate } from '../../plan/problems.js';
import { every } from '../../plan/select.js';
import type { FixEdit } from '../finding.js';
import { addLine, decimalsOf, lengthWords, replace, rightBehind, type Rounding, rounded } from './edit.js';

/** How far, in canvas units. */
interface Way {
  readonly axis: Axis;
  readonly far: number;
}

const DIRECTIONS = {
  across: { backward: 'left', onward: 'right' },
  down: { backward: 'up', onward: 'down' },
} as const;

/**
 * The object moved by canvas units, `right` to the right and `down` downwards: its `at` says the new place, or the
 * places of its shape do, or it gets an `at` where its middle comes to lie. What is placed by the object moves with
 * it. Nothing when the text has no place for it: no shape, or a repeated one without a place of its own.
 *
 * @param rounding whether the written numbers may fall short of the distance; `onward` for what has to end beyond
 * a limit.
 */
export function moveEdit(
  plan: Pick<Plan, 'canvas'>,
  object: PlanObject,
  right: number,
  down: number,
  rounding: Rounding = 'nearest',
): readonly FixEdit[] | undefined {
  const { canvas } = plan;
  const { children } = object.node;
  if (object.outline.path.length === 0) return undefined;
  const ways = waysOf(right, down);
  const at = every(children, 'at').at(-1);
  if (at) return placeEdits(at.statement.place, at, ways, canvas, rounding);
  const shapes = every(children, 'shape');
  const [shape] = shapes;
  const own = shapes.length === 1 && shape ? placesOf(shape.statement.shape) : [];
  if (shape && own.length > 0) {
    return own.flatMap((place) => placeEdits(place, shape, ways, canvas, rounding));
  }
  if (every(children, 'repeat').length > 0) return undefined;
  const middle = boxCentre(object.outline.box);
  const decimals = decimalsOf(canvas.unit);
  const x = rounded(middle.x + right, right, decimals, rounding);
  const y = rounded(middle.y + down, down, decimals, rounding);
  return [addLine(object.node, 'at', `(${x}, ${y})`)];
}

/**
 * A place of the text moved by canvas units: its coordinates change; any other place keeps its words, with the way from
 * there behind them.
 */
export function movedPlace(
  place: Place,
  node: Pick<Node, 'line'>,
  right: number,
  down: number,
  canvas: Canvas,
): readonly FixEdit[] {
  return placeEdits(place, node, waysOf(right, down), canvas, 'nearest');
}

function waysOf(right: number, down: number): readonly Way[] {
  return [
    { axis: 'across' as const, far: right },
    { axis: 'down' as const, far: down },
  ].filter(({ far }) => far !== 0);
}

/** The object at a place in words, such as `focus`: instead of the place it has, or as its `at`. */
export function placeEdit(object: PlanObject, words: string): readonly FixEdit[] {
  const { children } = object.node;
  const at = every(children, 'at').at(-1);
  if (at) return [replace(locate(at, at.statement.place), words)];
  const [shape, ...others] = every(children, 'shape');
  const places = shape && others.length === 0 ? placesOf(shape.statement.shape) : [];
  const [own] = places;
  // Two places are the corners of a rectangle.
  if (shape && own && places.length === 1) return [replace(locate(shape, own), words)];
  return [addLine(object.node, 'at', words)];
}

/** The places by which a shape as a whole is placed; none for one that lies where its points are. */
function placesOf(shape: ShapeForm): readonly Place[] {
  switch (shape.form) {
    case 'rectangle corners':
      return [shape.from, shape.to].every(({ base }) => base.kind === 'coordinates')
        ? [shape.from, shape.to]
        : [];
    case 'rectangle':
    case 'ellipse':
    case 'circle':
      return shape.at ? [shape.at] : [];
    case 'outline':
    case 'smooth':
    case 'path':
    case 'file':
      return [];
  }
}

function placeEdits(
  { base, moves, ...span }: Place,
  node: Pick<Node, 'line'>,
  ways: readonly Way[],
  canvas: Canvas,
  rounding: Rounding,
): readonly FixEdit[] {
  if (base.kind === 'coordinates') {
    return ways.map(({ axis, far }) => {
      const length = axis === 'across' ? base.at.x : base.at.y;
      return replace(
        locate(node, length),
        lengthWords(length, canvas, axis, (old) => old + far, rounding),
      );
    });
  }
  const changed = ways.flatMap((way) => {
    const move = lastMove(moves, way.axis);
    return move ? replace(locate(node, move), moveWords(move, way, canvas, rounding)) : [];
  });
  const added = ways.filter(({ axis }) => !lastMove(moves, axis));
  if (added.length === 0) return changed;
  const words = added.map(({ axis, far }) => newMove(axis, far, canvas, rounding)).join('');
  if (words === '') return changed;
  return [...changed, replace(rightBehind(locate(node, span)), words)];
}

function lastMove(moves: readonly Move[], axis: Axis): Move | undefined {
  return moves.findLast(({ direction }) => axisOf(direction) === axis);
}

function axisOf(direction: Move['direction']): Axis {
  return direction === 'left' || direction === 'right' ? 'across' : 'down';
}

/** A move that goes further or less far, or turns round. */
function moveWords(
  { amount, direction }: Move,
  { axis, far }: Way,
  canvas: Canvas,
  rounding: Rounding,
): string {
  const { backward, onward } = DIRECTIONS[axis];
  const sign = direction === backward ? -1 : 1;
  // Read along the axis, so that rounding knows which way the object goes.
  const along = lengthWords(
    { ...amount, value: amount.value * sign },
    canvas,
    axis,
    (old) => old + far,
    rounding,
  );
  const turned = along.startsWith('-');
  return `${turned ? along.slice(1) : along} ${turned ? backward : onward}`;
}

/** Nothing for a way that is rounded to none. */
function newMove(axis: Axis, far: number, canvas: Canvas, rounding: Rounding): string {
  const { backward, onward } = DIRECTIONS[axis];
  const distance = Math.abs(far);
  const words = rounded(distance, distance, decimalsOf(canvas.unit), rounding);
  return words === '0' ? '' : `, ${words} ${canvas.unit} ${far < 0 ? backward : onward}`;
}
