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

/** An object with those larger than itself that it comes near. */
export interface Beside {
  readonly here: Seen;
  readonly others: readonly Seen[];
}

const boxes = new WeakMap<readonly Ring[], Box>();

/** Round what is seen of one area, kept as long as it is seen so. */
export function boxOfSeen(rings: readonly Ring[]): Box {
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
export function isLost({ edges, edgesAgainst }: PlanObject): boolean {
  return edges === 'lost' && edgesAgainst.every((against) => against.edges === 'lost');
}

/** What comes within a distance of each other, box to box, each pair once: with the smaller of the two. */
export function neighboursOf(seen: readonly Seen[], reach: number): readonly Beside[] {
  if (seen.length === 0) return [];
  const tree = new Flatbush(seen.length);
  for (const { box } of seen) tree.add(box.left, box.top, box.right, box.bottom);
  tree.finish();
  return seen.map((here) => {
    const { left, top, right, bottom } = widened(here.box, reach);
    const others = tree
      .search(left, top, right, bottom)
      .flatMap((index) => seen[index] ?? [])
      .filter((there) => bySize(here, there) < 0)
      .sort(bySize)
      .slice(0, MOST_NEIGHBOURS);
    return { here, others };
  });
}

function bySize(one: Seen, other: Seen): number {
  return one.size - other.size || one.position - other.position;
}
