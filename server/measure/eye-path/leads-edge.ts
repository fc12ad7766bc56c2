import type { Side } from '../../../grammar/index.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import type { Corner } from './eye-path.js';

type CanvasSize = Pick<Canvas, 'width' | 'height' | 'diagonal'>;

/** Part of the diagonal within which a line runs out at a corner. */
export const CORNER_REACH = 0.03;

/**
 * A direction that leans less than this towards an edge, as part of one, keeps beside it; lengths that differ by less
 * are one.
 */
const ROUNDING = 1e-9;

/** The corner of the canvas within `reach` (canvas units) of a place. */
export function cornerNear(place: Point, { width, height }: CanvasSize, reach: number): Corner | undefined {
  const corners: Readonly<Record<Corner, Point>> = {
    'upper left': { x: 0, y: 0 },
    'upper right': { x: width, y: 0 },
    'lower left': { x: 0, y: height },
    'lower right': { x: width, y: height },
  };
  const names = Object.keys(corners) as Corner[];
  const [nearest] = names.sort(
    (one, other) => distance(corners[one], place) - distance(corners[other], place),
  );
  return nearest && distance(corners[nearest], place) <= reach + ROUNDING * reach ? nearest : undefined;
}

/** The edge of the canvas within `reach` of a place on the canvas, or beyond which a place off it lies. */
export function edgeNear({ x, y }: Point, { width, height }: CanvasSize, reach: number): Side | undefined {
  const inwards = [
    ['left', x],
    ['right', width - x],
    ['top', y],
    ['bottom', height - y],
  ] as const;
  const [side, away] = leastOf(inwards, ROUNDING * reach);
  return away <= reach + ROUNDING * reach ? side : undefined;
}

/** The first of those whose figure is the least but for `slack`: of two edges as near always the upright one. */
function leastOf(
  sides: readonly [readonly [Side, number], ...(readonly [Side, number])[]],
  slack: number,
): readonly [Side, number] {
  const least = Math.min(...sides.map(([, figure]) => figure));
  return sides.find(([, figure]) => figure <= least + slack) ?? sides[0];
}

/**
 * Where a line from a place on the canvas leaves it; at which corner, when it does so within 3 % of the diagonal of
 * one.
 */
export function wayOut(
  from: Point,
  direction: Point,
  canvas: CanvasSize,
): { readonly at: Point; readonly side: Side; readonly corner?: Corner } | undefined {
  const { width, height, diagonal } = canvas;
  const slack = ROUNDING * diagonal;
  if (from.x < -slack || from.y < -slack || from.x > width + slack || from.y > height + slack)
    return undefined;
  const ways = [
    ['left', direction.x < -ROUNDING ? -from.x / direction.x : Infinity],
    ['right', direction.x > ROUNDING ? (width - from.x) / direction.x : Infinity],
    ['top', direction.y < -ROUNDING ? -from.y / direction.y : Infinity],
    ['bottom', direction.y > ROUNDING ? (height - from.y) / direction.y : Infinity],
  ] as const;
  const [side, along] = leastOf(ways, slack);
  if (!Number.isFinite(along)) return undefined;
  const run = Math.max(0, along);
  const at = { x: from.x + run * direction.x, y: from.y + run * direction.y };
  const corner = cornerNear(at, canvas, CORNER_REACH * diagonal);
  return { at, side, ...(corner ? { corner } : {}) };
}
