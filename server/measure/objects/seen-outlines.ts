import Flatbush from 'flatbush';
import { type Outline, type Ring, boxOfRings } from '../../plan/geometry/outline.js';
import { type Box, boxDiagonal } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { SeenAreas, SeenLayer } from '../areas/areas.js';
import { inSteps } from '../areas/place-order.js';
import { widened } from '../tangency/segments.js';

/** An object in a crowd is looked at with so many of the smallest around it that are larger than itself. */
const MOST_NEIGHBOURS = 32;

/** An object of which something is seen. */
export interface Seen {
  readonly object: number;
  /** In the covering order. */
  readonly position: number;
  readonly outline: Outline;
  readonly layer: SeenLayer;
  readonly box: Box;
  /** Of its box, in steps that rounding does not change. */
  readonly size: number;
}

/** The one behind first. */
export type SeenPair = readonly [Seen, Seen];

const boxes = new WeakMap<readonly Ring[], Box>();

function boxOfSeen(rings: readonly Ring[]): Box {
  const box = boxes.get(rings) ?? boxOfRings(rings);
  boxes.set(rings, box);
  return box;
}

/** What is seen of all objects but those whose outlines are lost, in the covering order. */
export function seenOf(plan: Plan, areas: SeenAreas): readonly Seen[] {
  return plan.coveringOrder.flatMap((object, position) => {
    const layer = areas.layers[position];
    const planned = plan.objects[object];
    if (!layer || !planned || layer.share === 0 || isLost(planned)) return [];
    const { outline } = planned;
    const box = boxOfSeen(layer.visible);
    const size = inSteps(boxDiagonal(box), plan.canvas.diagonal);
    return { object, position, outline, layer, box, size };
  });
}

/** Whether nothing of an outline is to be seen. */
function isLost({ edges, edgesAgainst }: PlanObject): boolean {
  return edges === 'lost' && edgesAgainst.every((against) => against.edges === 'lost');
}

/** Pairs whose boxes come within a distance of each other, the one behind first. */
export function neighboursOf(seen: readonly Seen[], reach: number): readonly SeenPair[] {
  if (seen.length === 0) return [];
  const tree = new Flatbush(seen.length);
  for (const { box } of seen) tree.add(box.left, box.top, box.right, box.bottom);
  tree.finish();
  return seen.flatMap((here) => {
    const { left, top, right, bottom } = widened(here.box, reach);
    return tree
      .search(left, top, right, bottom)
      .flatMap((index) => seen[index] ?? [])
      .filter((there) => bySize(here, there) < 0)
      .sort(bySize)
      .slice(0, MOST_NEIGHBOURS)
      .map((there): SeenPair => (there.position < here.position ? [there, here] : [here, there]));
  });
}

function bySize(one: Seen, other: Seen): number {
  return one.size - other.size || one.position - other.position;
}

/** The pairs of which each object is one. */
export function pairsByObject(pairs: readonly SeenPair[]): ReadonlyMap<number, readonly SeenPair[]> {
  const beside = new Map<number, SeenPair[]>();
  for (const pair of pairs) {
    for (const { object } of pair) {
      const known = beside.get(object);
      if (known) known.push(pair);
      else beside.set(object, [pair]);
    }
  }
  return beside;
}
