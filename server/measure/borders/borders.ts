import type { Side } from '../../../grammar/index.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { CanvasSize, VisibleAreas } from '../areas/areas.js';
import { fromBack, type OfSeen } from '../areas/seen-from-back.js';
import { inSteps } from '../areas/place-order.js';
import { GROUND } from './ground.js';
import { type Meetings, meetingsOf } from './meeting.js';
import { type Sides, keptSides } from './sides.js';
import { stretchesByFront } from './stretches.js';
import { keptOrder } from '../kept-lists.js';
import type { Memory } from '../memory.js';
import { merged } from '../merged.js';

export { GROUND };

/** A short stretch of the border between two areas that are seen: it stands for one place. */
export interface BorderStretch {
  /** Its middle, canvas units. */
  readonly at: Point;
  /** Canvas units; at most half a percent of the diagonal, more only in a picture with endless borders. */
  readonly length: number;
  /** Direction of the border, radians, 0 to pi: which way along it is not told. */
  readonly direction: number;
  /** The area in front, by the index of its object. */
  readonly front: number;
  /** The area behind it, or `GROUND`. */
  readonly behind: number;
  /** Difference of Munsell value; 0 where one of the two has none. */
  readonly valueContrast: number;
  /** Distance in CIELAB a*, b*. */
  readonly colourContrast: number;
  /** Hard 1, firm 0.7, soft 0.35, lost 0.1. */
  readonly sharpness: number;
  /** Sharpness x (0.6 valueContrast / 10 + 0.4 colourContrast / 100): how much a unit of its length draws the eye. */
  readonly pull: number;
}

/** All of the border between two areas. */
export interface Border {
  readonly front: number;
  readonly behind: number;
  /** Canvas units. */
  readonly length: number;
  readonly sharpness: number;
  readonly valueContrast: number;
  readonly colourContrast: number;
  readonly pull: number;
}

export interface BorderMeasure {
  readonly stretches: readonly BorderStretch[];
  /** The same, by the area in front, from back to front; a list is the same one while nothing in it changes. */
  readonly byFront: readonly { readonly front: number; readonly stretches: readonly BorderStretch[] }[];
  /** One for each pair that has a border, longest first. */
  readonly borders: readonly Border[];
  /** Where areas that are seen meet the edge of the canvas; canvas units. */
  readonly atEdge: readonly { readonly area: number; readonly side: Side; readonly length: number }[];
}

const EDGES: readonly Side[] = ['left', 'top', 'right', 'bottom'];

/**
 * The areas that are seen, from back to front, and where each lies on others; `Meetings` tell areas by their place
 * here.
 */
export interface MeetingAreas {
  readonly canvas: CanvasSize;
  readonly seen: readonly SeenArea[];
  readonly meetings: readonly Meetings[];
}

/** An area that is seen; the same one as long as it is the same object at the same place, seen as before. */
export interface SeenArea extends OfSeen {
  readonly sides: Sides;
}

/** Who borders on whom among all that is seen, the bare ground too; asking twice costs nothing. */
export function meetingAreas(plan: Plan, areas: VisibleAreas, memory: Memory): MeetingAreas {
  const { width, height } = plan.canvas;
  const order = keptOrder(plan, memory);
  return memory.recall('meetings', '', [areas, width, height, order], (last: MeetingAreas | undefined) =>
    foundMeetings(order, areas, { width, height }, () => memory.count('sides'), last),
  );
}

function foundMeetings(
  order: readonly number[],
  areas: VisibleAreas,
  canvas: CanvasSize,
  worked: () => void,
  last: MeetingAreas | undefined,
): MeetingAreas {
  const isAlike = last?.canvas.width === canvas.width && last.canvas.height === canvas.height;
  const seen = fromBack(areas, order, isAlike ? last.seen : undefined, (area, visible): SeenArea => ({
    area,
    visible,
    sides: keptSides(visible, canvas, worked),
  }));
  if (last?.seen === seen) return last;
  const sides = seen.map((each) => each.sides);
  const earlier = isAlike
    ? { areas: last.seen.map((each) => each.sides), meetings: last.meetings }
    : undefined;
  return { canvas, seen, meetings: meetingsOf(sides, canvas, earlier) };
}

/**
 * The borders between all areas that are seen, exact up to a millionth of the diagonal, each told once: for the area
 * in front. Sides of shapes and the stretches of each area are kept in the memory.
 */
export function measureBorders(plan: Plan, areas: VisibleAreas, memory: Memory): BorderMeasure {
  const { canvas } = plan;
  const met = meetingAreas(plan, areas, memory);
  const byFront = stretchesByFront(plan, met, memory);
  return memory.recall(
    'borders',
    '',
    [met.seen, byFront, canvas.diagonal],
    (last: BorderMeasure | undefined) => ({
      stretches: together(byFront, last),
      byFront,
      borders: longestFirst(byFront, canvas.diagonal, last),
      atEdge: atEdgeOf(met),
    }),
  );
}

function atEdgeOf({ seen }: MeetingAreas): BorderMeasure['atEdge'] {
  const all: { readonly area: number; readonly side: Side; readonly length: number }[] = [];
  for (const { area, sides } of seen) {
    sides.atEdge.forEach((length, index) => {
      if (length > 0) all.push({ area, side: EDGES[index] as Side, length });
    });
  }
  return all;
}

const borders = new WeakMap<readonly BorderStretch[], readonly Border[]>();

/** The stretches of one area in front gathered by what lies behind, kept as long as these. */
function bordersOf(stretches: readonly BorderStretch[]): readonly Border[] {
  const known = borders.get(stretches) ?? gathered(stretches);
  borders.set(stretches, known);
  return known;
}

function gathered(stretches: readonly BorderStretch[]): readonly Border[] {
  const borders = new Map<number, Border>();
  for (const { front, behind, length, sharpness, valueContrast, colourContrast, pull } of stretches) {
    borders.set(behind, {
      front,
      behind,
      length: length + (borders.get(behind)?.length ?? 0),
      sharpness,
      valueContrast,
      colourContrast,
      pull,
    });
  }
  return [...borders.values()];
}

function together(
  byFront: BorderMeasure['byFront'],
  last: BorderMeasure | undefined,
): readonly BorderStretch[] {
  const isAlike =
    last?.byFront.length === byFront.length &&
    byFront.every(({ stretches }, index) => stretches.length === last.byFront[index]?.stretches.length);
  const all = isAlike ? last.stretches.slice() : [];
  let next = 0;
  byFront.forEach(({ stretches }, index) => {
    if (isAlike && stretches === last.byFront[index]?.stretches) next += stretches.length;
    else for (const stretch of stretches) all[next++] = stretch;
  });
  return all;
}

/** The borders of all areas; what there was before stays in its order. */
function longestFirst(
  byFront: BorderMeasure['byFront'],
  diagonal: number,
  last: BorderMeasure | undefined,
): readonly Border[] {
  const compare = (a: Border, b: Border): number =>
    inSteps(b.length, diagonal) - inSteps(a.length, diagonal) || b.front - a.front || b.behind - a.behind;
  const added = bordersBeside(byFront, last?.byFront ?? []);
  const gone = new Set(bordersBeside(last?.byFront ?? [], byFront));
  const stayed = last?.borders.filter((border) => !gone.has(border)) ?? [];
  return merged(stayed, added.sort(compare), compare);
}

/** The borders of those lists of stretches that are not at their places among others. */
function bordersBeside(byFront: BorderMeasure['byFront'], others: BorderMeasure['byFront']): Border[] {
  const beside: Border[] = [];
  byFront.forEach(({ stretches }, index) => {
    if (stretches !== others[index]?.stretches)
      for (const border of bordersOf(stretches)) beside.push(border);
  });
  return beside;
}
