import { largestOf, smallestOf } from '../../plan/extremes.js';
import type { Outline, Ring } from '../../plan/geometry/outline.js';
import { type Point, between, distance } from '../../plan/geometry/point.js';
import { containsPoint, distanceToOutline } from '../areas/areas.js';
import type { Corner } from '../eye-path/eye-path.js';
import type { Size } from './canvas-edge.js';
import { nearestOn } from './segments.js';

/**
 * How an outline meets a corner of the canvas: its border runs into it, or it holds the corner and ends in one straight
 * line from edge to edge, or as an upright rectangle does.
 */
export type CornerKind = 'run into' | 'cut off' | 'filled';

export interface CornerMeeting {
  readonly corner: Corner;
  readonly kind: CornerKind;
  /** Canvas units from the corner to the outline, or by how much that is no straight line or no rectangle. */
  readonly gap: number;
  readonly at: Point;
}

interface CanvasCorner {
  readonly corner: Corner;
  readonly at: Point;
  /** To the right or the left, and down or up. */
  readonly inward: Point;
}

const ROUNDING = 1e-9;
/** Part of the diagonal. */
const EXACTLY = 1e-6;
const ON_WHAT_IS_SEEN = 1e-4;
/** How far round a corner is looked, part of the diagonal, and in which directions from the edge. */
const ROUND_A_CORNER = 0.015;
const DIRECTIONS = [10, 20, 30, 40, 50, 60, 70, 80].map((degrees) => (degrees * Math.PI) / 180);
/** What takes more than this part of an edge from its corner on is a ground. */
const MOST_OF_AN_EDGE = 0.7;
/** Where along each line of a border it is asked whether that is seen; at most of them it has to be. */
const PLACES = [1 / 6, 1 / 2, 5 / 6];

/**
 * Corners of the canvas that the border of a shape runs into, or that it holds and cuts off or fills exactly, to within
 * `reach` (canvas units), where that is seen. Other shapes that hold a whole corner, as grounds do, are none.
 */
export function cornerMeetings(
  outline: Outline,
  visible: readonly Ring[],
  canvas: Size,
  reach: number,
): readonly CornerMeeting[] {
  return cornersOf(canvas).flatMap((corner) => {
    const { at, inward } = corner;
    const round = DIRECTIONS.map((direction) => ({
      x: at.x + inward.x * ROUND_A_CORNER * canvas.diagonal * Math.cos(direction),
      y: at.y + inward.y * ROUND_A_CORNER * canvas.diagonal * Math.sin(direction),
    }));
    const inside = round.filter((point) => containsPoint(outline.rings, point, outline.fillRule));
    if (!inside.some((point) => containsPoint(visible, point))) return [];
    if (inside.length === round.length) return held(outline, visible, corner, canvas, reach);
    const gap = distanceToOutline(outline.rings, at);
    return isWithin(gap, reach) ? [{ corner: corner.corner, kind: 'run into', gap, at }] : [];
  });
}

function isWithin(gap: number, reach: number): boolean {
  return gap <= reach * (1 + ROUNDING);
}

/** A corner that a shape holds, as the ring whose border goes from the one of its edges to the other. */
function held(
  { rings }: Outline,
  visible: readonly Ring[],
  { corner, at, inward }: CanvasCorner,
  canvas: Size,
  reach: number,
): readonly CornerMeeting[] {
  return rings.flatMap((ring): readonly CornerMeeting[] => {
    const border = insideCanvas(ring, canvas);
    const ends = border.flat().filter((point) => isOnEdge(point, canvas));
    const across = ends.filter(({ y }) => Math.abs(y - at.y) <= EXACTLY * canvas.diagonal);
    const down = ends.filter(({ x }) => Math.abs(x - at.x) <= EXACTLY * canvas.diagonal);
    const [level, upright] = [across[0], down[0]];
    if (ends.length !== 2 || !level || !upright || level === upright) return [];
    const [wide, high] = [distance(level, at), distance(upright, at)];
    if (isGround(wide, canvas.width) || isGround(high, canvas.height)) return [];
    const angle = { x: at.x + inward.x * wide, y: at.y + inward.y * high };
    const meetings = [
      { kind: 'cut off', lines: [[level, upright]] },
      {
        kind: 'filled',
        lines: [
          [level, angle],
          [angle, upright],
        ],
      },
    ] as const;
    return meetings.flatMap(({ kind, lines }) => {
      const gap = largestOf([
        ...border.flat().map((point) => toNearest(point, lines)),
        ...lines.map(([, to]) => toNearest(to, border)),
      ]);
      const places = lines.flatMap(([from, to]) => PLACES.map((part) => between(from, to, part)));
      const near = gap + ON_WHAT_IS_SEEN * canvas.diagonal;
      const seen = places.filter((place) => distanceToOutline(visible, place) <= near);
      return isWithin(gap, reach) && seen.length > places.length / 2 ? [{ corner, kind, gap, at }] : [];
    });
  });
}

function isGround(length: number, edge: number): boolean {
  return length > MOST_OF_AN_EDGE * edge * (1 + ROUNDING);
}

type Line = readonly [Point, Point];

function toNearest(point: Point, lines: readonly Line[]): number {
  return smallestOf(lines.map(([from, to]) => distance(point, nearestOn(from, to, point))));
}

/** What of the sides of a ring lies on the canvas, but for what runs along its edges. */
function insideCanvas(ring: Ring, canvas: Size): readonly Line[] {
  const lines: Line[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const next = (i + 2) % ring.length;
    const from = { x: ring[i] as number, y: ring[i + 1] as number };
    const to = { x: ring[next] as number, y: ring[next + 1] as number };
    const line = cutToCanvas(from, to, canvas);
    if (line && !isOnEdge(between(line[0], line[1], 0.5), canvas)) lines.push(line);
  }
  return lines;
}

function cutToCanvas(from: Point, to: Point, { width, height, diagonal }: Size): Line | undefined {
  let [begin, end] = [0, 1];
  for (const [start, way, most] of [
    [from.x, to.x - from.x, width],
    [from.y, to.y - from.y, height],
  ] as const) {
    if (way === 0) {
      if (start < 0 || start > most) return undefined;
      continue;
    }
    const crossings = [-start / way, (most - start) / way] as const;
    begin = Math.max(begin, Math.min(...crossings));
    end = Math.min(end, Math.max(...crossings));
  }
  if ((end - begin) * distance(from, to) <= EXACTLY * diagonal) return undefined;
  return [between(from, to, begin), between(from, to, end)];
}

function isOnEdge({ x, y }: Point, { width, height, diagonal }: Size): boolean {
  return Math.min(...[x, y, width - x, height - y].map(Math.abs)) <= EXACTLY * diagonal;
}

function cornersOf({ width, height }: Size): readonly CanvasCorner[] {
  return [
    { corner: 'upper left', at: { x: 0, y: 0 }, inward: { x: 1, y: 1 } },
    { corner: 'upper right', at: { x: width, y: 0 }, inward: { x: -1, y: 1 } },
    { corner: 'lower left', at: { x: 0, y: height }, inward: { x: 1, y: -1 } },
    { corner: 'lower right', at: { x: width, y: height }, inward: { x: -1, y: -1 } },
  ];
}
