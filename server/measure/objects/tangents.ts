import type { Side } from '../../../grammar/index.js';
import type { Outline, Ring } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Canvas, Plan } from '../../plan/plan.js';
import type { SeenAreas } from '../areas/areas.js';
import { partsOf } from '../areas/parts.js';
import { inSteps } from '../areas/place-order.js';
import type { Corner } from '../eye-path/eye-path.js';
import { type Carried, carried } from '../carried.js';
import { keptOfObjects, keptOrder } from '../kept-lists.js';
import type { Memory } from '../memory.js';
import { type CornerKind, cornerMeetings } from '../tangency/canvas-corner.js';
import { edgeMeetings } from '../tangency/canvas-edge.js';
import { notMeant, notOfSeveral } from './meant-touches.js';
import { TANGENT_REACH, nearTo } from './near-touches.js';
import { type Beside, type Seen, isLost, neighboursOf, seenOf } from './seen-outlines.js';
import { type ToldTouches, toldTouches } from './told-touches.js';

export { TANGENT_REACH, TOUCHING } from './near-touches.js';

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
  /**
   * Whether they stay as near for a third of the smaller one across, with a gap between them, or only come near at a
   * place.
   */
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

/** Part of the diagonal: how far from a corner is looked, whatever the limit of a rule. */
export const CORNER_REACH = 0.005;
/**
 * Near tangents of what is seen. Two outlines make one when they lie apart, or one in front lies wholly on the other
 * (a head below the line of the horizon, a plum on a plate), and they come nearer than the reach, at a place or over a
 * long stretch. Not meant are shapes that cross or lie over each other's border, parts that lie on a thing, borders
 * that are one line, as a table against a wall, two grounds, and even gaps: those all round a thing, between parts of
 * one thing, or between three things or more, as between boards. A lost outline comes near nothing. Pairs are kept as
 * long as their outlines and what is seen of them.
 *
 * @param only looks at these objects alone, with all others
 */
export function measureTangents(plan: Plan, areas: SeenAreas, only?: ReadonlySet<number>): TangentMeasure {
  if (!only) return foundTangents(plan, areas, partsOf(plan)).measure;
  const { canvas } = plan;
  const seen = seenOf(plan, areas);
  const near = nearTo(only, neighboursOf(seen, TANGENT_REACH * canvas.diagonal), canvas);
  const endsOfAll = (some: readonly Seen[]) => carried(some, undefined, (one) => endsOf(one, canvas));
  const asked = endsOfAll(seen.filter(({ object }) => only.has(object)));
  return {
    touches: near.touches
      .filter(notMeant(canvas, () => partsOf(plan), near.gapsOf))
      .sort((one, other) => inSteps(one.gap, canvas.diagonal) - inSteps(other.gap, canvas.diagonal)),
    edges: edgesOf(asked).filter(notOfSeveral(canvas, () => edgesOf(endsOfAll(seen)))),
    corners: cornersOf(asked, plan),
  };
}

/** All near tangents, kept in the memory as long as all that they hang on; only round what changed is looked anew. */
export function keptTangents(
  plan: Plan,
  areas: SeenAreas,
  parts: readonly (readonly number[])[],
  memory: Memory,
): TangentMeasure {
  const { width, height } = plan.canvas;
  const inputs = [
    areas,
    parts,
    width,
    height,
    keptOrder(plan, memory),
    keptOfObjects('outlines', plan, memory, ({ outline }) => outline),
    keptOfObjects('planes', plan, memory, ({ plane }) => plane),
    keptOfObjects('lost outlines', plan, memory, isLost),
  ];
  return memory.recall('tangents', '', inputs, (last: FoundTangents | undefined) =>
    foundTangents(plan, areas, parts, last),
  ).measure;
}

/** Near tangents with all that was looked at. */
interface FoundTangents {
  readonly canvas: Canvas;
  readonly seen: readonly Seen[];
  readonly besides: readonly Beside[];
  readonly told: ToldTouches;
  readonly ends: Carried<Seen, Ends>;
  readonly measure: TangentMeasure;
}

function foundTangents(
  plan: Plan,
  areas: SeenAreas,
  parts: readonly (readonly number[])[],
  last?: FoundTangents,
): FoundTangents {
  const { canvas } = plan;
  const isAlike = last?.canvas.width === canvas.width && last.canvas.height === canvas.height;
  const earlier = isAlike ? last : undefined;
  const seen = seenOf(plan, areas, earlier?.seen);
  const besides = neighboursOf(seen, TANGENT_REACH * canvas.diagonal, earlier?.besides);
  const told = toldTouches(besides, canvas, parts, earlier?.told);
  const ends = carried(seen, earlier?.ends, (one) => endsOf(one, canvas));
  const edges = edgesOf(ends);
  const measure = {
    touches: told.told.map(({ touch }) => touch),
    edges: edges.filter(notOfSeveral(canvas, () => edges)),
    corners: cornersOf(ends, plan),
  };
  return { canvas, seen, besides, told, ends, measure };
}

function edgesOf({ things, results }: Carried<Seen, Ends>): readonly EdgeTouch[] {
  const touches: EdgeTouch[] = [];
  results.forEach(({ edges }, index) => {
    for (const edge of edges) touches.push({ object: (things[index] as Seen).object, ...edge });
  });
  return touches;
}

function cornersOf({ things, results }: Carried<Seen, Ends>, { objects }: Plan): readonly CornerFill[] {
  const fills: CornerFill[] = [];
  results.forEach(({ corners }, index) => {
    for (const corner of corners) {
      const { object } = things[index] as Seen;
      if (corner.kind === 'run into' || objects[object]?.plane !== 'background')
        fills.push({ object, ...corner });
    }
  });
  return fills;
}

interface Ends {
  readonly edges: readonly Omit<EdgeTouch, 'object'>[];
  readonly corners: readonly Omit<CornerFill, 'object'>[];
}

interface KeptEnds extends Ends {
  readonly visible: readonly Ring[];
  readonly width: number;
  readonly height: number;
}

const knownEnds = new WeakMap<Outline, KeptEnds>();

/** How an outline ends at the edges and corners of the canvas, kept as long as it and what is seen of it. */
function endsOf({ outline, layer: { visible } }: Seen, canvas: Canvas): Ends {
  const { width, height, diagonal } = canvas;
  const kept = knownEnds.get(outline);
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
  knownEnds.set(outline, found);
  return found;
}
