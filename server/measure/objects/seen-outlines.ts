import Flatbush from 'flatbush';
import { type Outline, type Ring, boxOfRings } from '../../plan/geometry/outline.js';
import { type Box, boxDiagonal } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { SeenAreas, SeenLayer } from '../areas/areas.js';
import { boxesMeet } from '../areas/in-front.js';
import { inSteps } from '../areas/place-order.js';
import { once } from '../memory.js';
import { widened } from '../tangency/segments.js';

/** An object in a crowd is looked at with so many of the smallest around it that are larger than itself. */
export const MOST_NEIGHBOURS = 32;
/** With more changed boxes than this all neighbours are looked for anew. */
const MOST_CHANGED = 64;

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

/**
 * What is seen of all objects but those whose outlines are lost, in the covering order.
 *
 * @param last what was seen before on a canvas of this size: what is the same is taken over
 */
export function seenOf(plan: Plan, areas: SeenAreas, last: readonly Seen[] = []): readonly Seen[] {
  const seen: Seen[] = [];
  let next = 0;
  plan.coveringOrder.forEach((object, position) => {
    const layer = areas.layers[position];
    const planned = plan.objects[object];
    if (!layer || !planned || layer.share === 0 || isLost(planned)) return;
    const { outline } = planned;
    while (next < last.length && (last[next] as Seen).position < position) next++;
    const earlier = last[next];
    if (
      earlier?.position === position &&
      earlier.object === object &&
      earlier.outline === outline &&
      earlier.layer.visible === layer.visible
    ) {
      seen.push(earlier);
      return;
    }
    const box = boxOfSeen(layer.visible);
    const size = inSteps(boxDiagonal(box), plan.canvas.diagonal);
    seen.push({ object, position, outline, layer, box, size });
  });
  return seen;
}

/** Whether nothing of an outline is to be seen. */
export function isLost({ edges, edgesAgainst }: PlanObject): boolean {
  return edges === 'lost' && edgesAgainst.every((against) => against.edges === 'lost');
}

/**
 * What comes within a distance of each other, box to box, each pair once: with the smaller of the two.
 *
 * @param last what was found before for the same distance: it is taken over where nothing near is another
 */
export function neighboursOf(
  seen: readonly Seen[],
  reach: number,
  last: readonly Beside[] = [],
): readonly Beside[] {
  const tree = once(() => treeOf(seen));
  const changed = last.length === seen.length ? boxesChanged(seen, last) : undefined;
  return seen.map((here, index) => {
    const around = widened(here.box, reach);
    const earlier = last[index];
    if (changed && earlier?.here === here && !meetsAny(around, changed)) return earlier;
    const others: Seen[] = [];
    for (const found of tree().search(around.left, around.top, around.right, around.bottom)) {
      const there = seen[found];
      if (there && bySize(here, there) < 0) others.push(there);
    }
    return { here, others: others.sort(bySize).slice(0, MOST_NEIGHBOURS) };
  });
}

function treeOf(seen: readonly Seen[]): Flatbush {
  const tree = new Flatbush(seen.length);
  for (const { box } of seen) tree.add(box.left, box.top, box.right, box.bottom);
  tree.finish();
  return tree;
}

/**
 * The boxes of all that is another at its place than before, as it was and as it is; none known where they are many.
 */
function boxesChanged(seen: readonly Seen[], last: readonly Beside[]): readonly Box[] | undefined {
  const changed: Box[] = [];
  seen.forEach((here, index) => {
    const before = last[index]?.here;
    if (before !== here) changed.push(here.box, ...(before ? [before.box] : []));
  });
  return changed.length > MOST_CHANGED ? undefined : changed;
}

function meetsAny(box: Box, others: readonly Box[]): boolean {
  for (const other of others) if (boxesMeet(box, other)) return true;
  return false;
}

function bySize(one: Seen, other: Seen): number {
  return one.size - other.size || one.position - other.position;
}
