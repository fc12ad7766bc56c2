import type { Side } from '../../../grammar/index.js';
import { pointsOf } from '../../plan/build-outline.js';
import type { Outline, Ring } from '../../plan/geometry/outline.js';
import { type Point, between, boxCentre, boxDiagonal, distance } from '../../plan/geometry/point.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import type { SeenAreas } from '../areas/areas.js';
import { centreOf } from './balance.js';
import type { Corner } from '../eye-path/eye-path.js';
import { runsAcross } from '../areas/parts.js';
import { type Memory, once } from '../memory.js';
import { inSteps } from '../areas/place-order.js';
import { AS_NEAR, notMeant, notOfSeveral } from './meant-touches.js';
import { type Beside, type Seen, isLost, neighboursOf, seenOf } from './seen-outlines.js';
import { type CornerKind, cornerMeetings } from '../tangency/canvas-corner.js';
import { edgeMeetings } from '../tangency/canvas-edge.js';
import { type Meeting, lengthOf, lengthWithin, meetingOf } from '../tangency/meeting.js';
import { MOST_SIDES, relationOf } from '../tangency/relation.js';
import { seenBorder, sidesOf } from '../tangency/seen-border.js';

/** Places where outlines nearly or just meet, which joins what should lie apart. */
export interface TangentMeasure {
  /** Pairs that touch or nearly do, without crossing, nearest first. */
  readonly touches: readonly Touch[];
  /** Objects that end at, or just short of or beyond, an edge of the canvas. */
  readonly edges: readonly EdgeTouch[];
  /** Objects whose border runs into a corner of the canvas, and those that cut one off or fill it exactly. */
  readonly corners: readonly CornerFill[];
}

export interface Touch {
  /** The one behind. */
  readonly one: number;
  readonly other: number;
  /** Canvas units; 0 where they touch. */
  readonly gap: number;
  readonly shareOfDiagonal: number;
  /** Midway between them. */
  readonly at: Point;
  /** Which way `other` has to go to get clear of `one`, a vector of length 1. */
  readonly away: Point;
  /** Whether `other` lies on `one` and comes near its border from within. */
  readonly within: boolean;
  /** Whether they stay as near for a third of the smaller one across, with a gap between them, or only come near at a place. */
  readonly along: boolean;
}

export interface EdgeTouch {
  readonly object: number;
  readonly side: Side;
  /** Canvas units, negative when it runs over the edge by so little. */
  readonly gap: number;
  /** Of the gap, never negative. */
  readonly shareOfDiagonal: number;
  readonly at: Point;
  /** Whether it keeps so far from the edge for a third of its extent along it, or only comes near at a place. */
  readonly along: boolean;
}

export interface CornerFill {
  readonly object: number;
  readonly corner: Corner;
  readonly kind: CornerKind;
  /** From the corner to the border, or by how much that is no straight line or no rectangle. */
  readonly shareOfDiagonal: number;
  readonly at: Point;
}

/** Parts of the diagonal: how far apart is looked, whatever the limit of a rule. */
export const TANGENT_REACH = 0.02;
export const CORNER_REACH = 0.005;
/** What reaches less far over another's border only touches it. */
export const TOUCHING = 0.0005;
/** So that what is just at a limit keeps it at any size of the canvas. */
const ROUNDING = 1e-9;
/** Borders that stay as near as they come, to `AS_NEAR`, over a third of the smaller's extent run along each other. */
const LONG = 1 / 3;
/** Where that is more than this part of the smaller's border, it is framed by the other or frames it. */
const ALL_ROUND = 0.6;
/** Borders that are one for longer than the second, within the first, were drawn to be one. Parts of the diagonal. */
const SAME_LINE = 1e-6;
const SHARED = 0.002;
/**
 * Near tangents of what is seen. Two outlines make one when they lie apart, or one in front lies wholly on the other
 * (a head below the line of the horizon, a plum on a plate), and they come nearer than the reach, at a place or over a
 * long stretch. Not meant are shapes that cross or lie over each other's border, parts that lie on a thing, borders
 * that are one line, as a table against a wall, two grounds, and even gaps: those all round a thing, between parts of
 * one thing, or between three things or more, as between boards. A lost outline comes near nothing. Pairs are kept as long as their outlines and what is
 * seen of them.
 *
 * @param only looks at these objects alone, with all others
 */
export function measureTangents(plan: Plan, areas: SeenAreas, only?: ReadonlySet<number>): TangentMeasure {
  const { canvas } = plan;
  const seen = seenOf(plan, areas);
  const asked = seen.filter(({ object }) => !only || only.has(object));
  const near = nearOnes(neighboursOf(seen, TANGENT_REACH * canvas.diagonal), canvas, !only);
  const edgesOf = ({ object, outline, layer }: Seen): readonly EdgeTouch[] =>
    endsOf(outline, layer.visible, canvas).edges.map((edge) => ({ object, ...edge }));
  return {
    touches: near
      .touches(only)
      .filter(notMeant(plan, near.touchesOf))
      .sort((one, other) => inSteps(one.gap, canvas.diagonal) - inSteps(other.gap, canvas.diagonal)),
    edges: asked.flatMap(edgesOf).filter(notOfSeveral(canvas, () => seen.flatMap(edgesOf))),
    corners: asked.flatMap(({ object, outline, layer }) =>
      endsOf(outline, layer.visible, canvas)
        .corners.filter(({ kind }) => kind === 'run into' || plan.objects[object]?.plane !== 'background')
        .map((corner) => ({ object, ...corner })),
    ),
  };
}

/** All near tangents, kept in the memory as long as all that they hang on. */
export function keptTangents(plan: Plan, areas: SeenAreas, memory: Memory): TangentMeasure {
  const { canvas, coveringOrder, objects } = plan;
  const inputs: unknown[] = [areas, canvas.width, canvas.height, ...coveringOrder];
  for (const object of objects) inputs.push(object.outline, object.plane, object.role, isLost(object));
  return memory.recall('tangents', '', inputs, () => measureTangents(plan, areas));
}

/** All that comes near each other, whatever the painter meant. */
interface NearOnes {
  /** All, or those of some objects with all others. */
  readonly touches: (only?: ReadonlySet<number>) => readonly Touch[];
  /** Those of one object. */
  readonly touchesOf: (object: number) => readonly Touch[];
}

/** @param keeps what is found is kept for the next version of the plan */
function nearOnes(besides: readonly Beside[], canvas: Canvas, keeps: boolean): NearOnes {
  const known: (readonly Touch[])[] = [];
  const touchesAt = (index: number): readonly Touch[] => {
    const beside = besides[index];
    return (known[index] ??= beside ? touchesBeside(beside, canvas, keeps) : []);
  };
  const byObject = once(() => {
    const places = new Map<number, number[]>();
    besides.forEach(({ here, others }, index) => {
      for (const { object } of [here, ...others]) {
        const own = places.get(object);
        if (own) own.push(index);
        else places.set(object, [index]);
      }
    });
    return places;
  });
  const isOf = ({ one, other }: Touch, objects: ReadonlySet<number>): boolean =>
    objects.has(one) || objects.has(other);
  return {
    touches: (only) => {
      if (!only) return besides.flatMap((_, index) => touchesAt(index));
      return besides.flatMap(({ here, others }, index) => {
        const isAsked = only.has(here.object) || others.some(({ object }) => only.has(object));
        return isAsked ? touchesAt(index).filter((touch) => isOf(touch, only)) : [];
      });
    },
    touchesOf: (object) =>
      (byObject().get(object) ?? []).flatMap((index) =>
        touchesAt(index).filter(({ one, other }) => one === object || other === object),
      ),
  };
}

type FoundTouch = Omit<Touch, 'one' | 'other'>;

/** What an outline was found to come near, with all that it hangs on. */
interface KeptTouches {
  readonly visible: readonly Ring[];
  readonly diagonal: number;
  readonly others: readonly KeptOther[];
}

interface KeptOther {
  readonly outline: Outline;
  readonly visible: readonly Ring[];
  readonly isBehind: boolean;
  readonly found: FoundTouch | undefined;
}

const keptTouches = new WeakMap<Outline, KeptTouches>();

function touchesBeside({ here, others }: Beside, canvas: Canvas, keeps: boolean): readonly Touch[] {
  const { diagonal } = canvas;
  const { visible } = here.layer;
  const last = keptTouches.get(here.outline);
  const usable = last?.visible === visible && last.diagonal === diagonal ? last.others : [];
  const now = others.map((there, index): KeptOther => {
    const isSame = (other: KeptOther | undefined): boolean =>
      other?.outline === there.outline &&
      other.visible === there.layer.visible &&
      other.isBehind === there.position < here.position;
    const kept = isSame(usable[index]) ? usable[index] : usable.find(isSame);
    if (kept) return kept;
    const isBehind = there.position < here.position;
    return {
      outline: there.outline,
      visible: there.layer.visible,
      isBehind,
      found: isBehind ? touchBetween(there, here, canvas) : touchBetween(here, there, canvas),
    };
  });
  if (keeps) keptTouches.set(here.outline, { visible, diagonal, others: now });
  return now.flatMap(({ found, isBehind }, index) => {
    const there = others[index];
    if (!found || !there) return [];
    const [one, other] = isBehind ? [there, here] : [here, there];
    return { one: one.object, other: other.object, ...found };
  });
}

function touchBetween(one: Seen, other: Seen, canvas: Canvas): FoundTouch | undefined {
  const relation = relationOf(one.outline, other.outline, TOUCHING * canvas.diagonal);
  if (relation === 'crossing' || relation === 'first in second') return undefined;
  const within = relation === 'second in first';
  const grounds = [one, other].every(({ outline }) => runsAcross(outline.box, canvas));
  if (within && runsAcross(other.outline.box, canvas)) return undefined;
  if (Math.max(pointsOf(one.outline), pointsOf(other.outline)) > MOST_SIDES) return undefined;
  const borders = [one, other].map(({ outline, layer }) => seenBorder(outline, layer, canvas));
  const [border, otherBorder] = borders;
  if (!border || !otherBorder) return undefined;
  const middle = { x: canvas.width / 2, y: canvas.height / 2 };
  const meeting = meetingOf(border, otherBorder, TANGENT_REACH * canvas.diagonal, middle);
  if (!meeting) return undefined;
  const nearest = meeting.gap + AS_NEAR * canvas.diagonal;
  const oneIsSmaller = one.size < other.size;
  const [smaller, larger] = oneIsSmaller ? [border, otherBorder] : [otherBorder, border];
  const extent = boxDiagonal(oneIsSmaller ? one.box : other.box);
  const beside = lengthWithin(smaller, larger, nearest);
  const along = beside > LONG * extent;
  if (along) {
    if (meeting.gap <= (TOUCHING + ROUNDING) * canvas.diagonal || grounds) return undefined;
    if (beside > ALL_ROUND * lengthOf(smaller)) return undefined;
  }
  if (meeting.gap <= SAME_LINE * canvas.diagonal) {
    // Against the whole outline behind: where both run along one line, the front one hides that of the other.
    const shared = lengthWithin(otherBorder, sidesOf(one.outline), SAME_LINE * canvas.diagonal);
    if (shared > SHARED * canvas.diagonal) return undefined;
  }
  return {
    gap: meeting.gap,
    shareOfDiagonal: meeting.gap / canvas.diagonal,
    at: between(meeting.on, meeting.onOther, 0.5),
    away: directionOf(meeting, other, canvas),
    within,
    along,
  };
}

/** Where they touch there is no way from one to the other: then towards the middle of what is seen of the other. */
function directionOf({ on, onOther, gap }: Meeting, other: Seen, canvas: Canvas): Point {
  const apart = gap > TOUCHING * canvas.diagonal;
  const from = apart ? on : between(on, onOther, 0.5);
  const to = apart ? onOther : (centreOf(other.layer.visible) ?? boxCentre(other.box));
  const length = distance(from, to);
  return length > 0 ? { x: (to.x - from.x) / length, y: (to.y - from.y) / length } : { x: 0, y: 1 };
}

interface KeptEnds {
  readonly visible: readonly Ring[];
  readonly width: number;
  readonly height: number;
  readonly edges: readonly Omit<EdgeTouch, 'object'>[];
  readonly corners: readonly Omit<CornerFill, 'object'>[];
}

const ends = new WeakMap<Outline, KeptEnds>();

/** How an outline ends at the edges and corners of the canvas, kept as long as it and what is seen of it. */
function endsOf(outline: Outline, visible: readonly Ring[], canvas: Canvas): KeptEnds {
  const { width, height, diagonal } = canvas;
  const kept = ends.get(outline);
  if (kept?.visible === visible && kept.width === width && kept.height === height) return kept;
  const found: KeptEnds = {
    visible,
    width,
    height,
    edges: edgeMeetings(outline, visible, canvas, TANGENT_REACH * diagonal).map((edge) => ({
      ...edge,
      shareOfDiagonal: Math.abs(edge.gap) / diagonal,
    })),
    corners: cornerMeetings(outline, visible, canvas, CORNER_REACH * diagonal).map(({ gap, ...meeting }) => ({
      ...meeting,
      shareOfDiagonal: gap / diagonal,
    })),
  };
  ends.set(outline, found);
  return found;
}
