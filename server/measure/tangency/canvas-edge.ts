import type { Side } from '../../../grammar/index.js';
import type { Outline, Ring } from '../../plan/geometry/outline.js';
import { boxOfRings } from '../../plan/geometry/outline.js';
import { type Box, type Point, distance } from '../../plan/geometry/point.js';
import type { Canvas } from '../../plan/plan.js';
import { distanceToOutline } from '../areas/areas.js';
import { boxOfRing } from '../areas/kept-rings.js';

export type Size = Pick<Canvas, 'width' | 'height' | 'diagonal'>;

/** How an outline ends at an edge of the canvas. */
export interface EdgeMeeting {
  readonly side: Side;
  /** Canvas units, negative when it runs over the edge by so little. */
  readonly gap: number;
  readonly at: Point;
  /** Whether it keeps so far from the edge for a third of its extent along it. */
  readonly along: boolean;
}

/** A gap of exactly the reach is within it in spite of rounding; part of the reach. */
const ROUNDING = 1e-9;
/** Parts of the diagonal. */
const EXACTLY = 1e-6;
const AS_FAR = 0.0008;
const ON_WHAT_IS_SEEN = 1e-4;
/** What ends as far over more than this part of its extent along the edge keeps beside it, */
const LONG = 1 / 3;
/** and is bounded by it when it ends no farther in than this. */
const ON_THE_EDGE = 0.0005;

const SIDES: readonly Side[] = ['left', 'right', 'top', 'bottom'];
/** The side that faces each. */
export const OPPOSITE: Readonly<Record<Side, Side>> = {
  left: 'right',
  right: 'left',
  top: 'bottom',
  bottom: 'top',
};

/**
 * Edges of the canvas that a shape just reaches, misses or runs over by up to `reach` (canvas units), at a place that
 * is seen. Each ring is looked at by itself. One with a side on the edge, or all along just over it, is cut off by the
 * canvas, and one that keeps as far from two opposite edges has an even margin: both are meant, and not told; nor are
 * places in the corners.
 */
export function edgeMeetings(
  { rings }: Outline,
  visible: readonly Ring[],
  canvas: Size,
  reach: number,
): readonly EdgeMeeting[] {
  const boxes: Box[] = [];
  return rings.flatMap((ring) => {
    const meetings = SIDES.flatMap((side) => meetingAt(ring, side, canvas, reach) ?? []);
    return meetings.filter((meeting) => {
      if (isInCorner(meeting.at, canvas, reach)) return false;
      if (meetings.some((other) => isEvenMargin(meeting, other, canvas))) return false;
      if (boxes.length === 0) for (const seen of visible) boxes.push(boxOfRing(seen));
      const near = Math.max(0, meeting.gap) + ON_WHAT_IS_SEEN * canvas.diagonal;
      return isNear(visible, boxes, onCanvas(meeting.at, canvas), near);
    });
  });
}

/** Whether a border comes as near to a place; many rings are passed over by their boxes. */
function isNear(rings: readonly Ring[], boxes: readonly Box[], place: Point, near: number): boolean {
  // More than rounding can make of a distance.
  const most = 2 * near;
  for (let at = 0; at < rings.length; at++) {
    const { left, top, right, bottom } = boxes[at] as Box;
    if (left - place.x > most || place.x - right > most) continue;
    if (top - place.y > most || place.y - bottom > most) continue;
    if (distanceToOutline([rings[at] as Ring], place) <= near) return true;
  }
  return false;
}

function isEvenMargin(one: EdgeMeeting, other: EdgeMeeting, { diagonal }: Size): boolean {
  return (
    one.along &&
    other.along &&
    other.side === OPPOSITE[one.side] &&
    Math.abs(one.gap - other.gap) <= (AS_FAR + ROUNDING) * diagonal
  );
}

function meetingAt(ring: Ring, side: Side, canvas: Size, reach: number): EdgeMeeting | undefined {
  const inward = inwardFrom(side, canvas);
  let gap = Infinity;
  for (let i = 0; i + 1 < ring.length; i += 2) gap = Math.min(gap, inward(pointAt(ring, i)));
  if (Math.abs(gap) > reach * (1 + ROUNDING)) return undefined;
  const as = gap + AS_FAR * canvas.diagonal;
  let along = 0;
  let x = 0;
  let y = 0;
  let corners = 0;
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const [from, to] = [pointAt(ring, i), pointAt(ring, (i + 2) % ring.length)];
    const [low, high] = [inward(from), inward(to)].sort((one, other) => one - other) as [number, number];
    if (Math.max(Math.abs(low), Math.abs(high)) <= EXACTLY * canvas.diagonal && distance(from, to) > 0) {
      return undefined;
    }
    if (low > as) continue;
    along += distance(from, to) * (high > as ? (as - low) / (high - low) : 1);
    if (inward(from) > gap + EXACTLY * canvas.diagonal) continue;
    x += from.x;
    y += from.y;
    corners++;
  }
  const { left, top, right, bottom } = boxOfRings([ring]);
  const extent = side === 'left' || side === 'right' ? bottom - top : right - left;
  const isAlong = along > LONG * extent * (1 + ROUNDING);
  if (isAlong && gap <= (ON_THE_EDGE + ROUNDING) * canvas.diagonal) return undefined;
  return { side, gap, at: { x: x / corners, y: y / corners }, along: isAlong };
}

function pointAt(ring: Ring, index: number): Point {
  return { x: ring[index] as number, y: ring[index + 1] as number };
}

function inwardFrom(side: Side, { width, height }: Size): (point: Point) => number {
  switch (side) {
    case 'left':
      return ({ x }) => x;
    case 'right':
      return ({ x }) => width - x;
    case 'top':
      return ({ y }) => y;
    case 'bottom':
      return ({ y }) => height - y;
  }
}

function onCanvas({ x, y }: Point, { width, height }: Size): Point {
  return { x: Math.min(width, Math.max(0, x)), y: Math.min(height, Math.max(0, y)) };
}

function isInCorner({ x, y }: Point, { width, height }: Size, reach: number): boolean {
  const most = reach * (1 + ROUNDING);
  return Math.min(x, width - x) <= most && Math.min(y, height - y) <= most;
}
