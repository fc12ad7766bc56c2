import { nameIn, type Node, type Place, placesIn, type Word } from '../../grammar/index.js';
import type { Location } from './plan.js';
import { locate } from './problems.js';

/** One thing a place refers to: an object by name, or the focal point when `name` is missing. */
export interface Dependency {
  readonly name?: Word;
  readonly asked: Location;
}

/** What the places under a node refer to, in the order of the text. */
export function dependenciesOf(nodes: readonly Node[]): readonly Dependency[] {
  return gather(nodes, undefined) ?? NONE;
}

function gather(nodes: readonly Node[], before: Dependency[] | undefined): Dependency[] | undefined {
  let found = before;
  for (const node of nodes) {
    for (const place of placesIn(node.statement)) {
      // Most places are numbers, of hundreds in an outline.
      if (place.base.kind === 'coordinates') continue;
      const one = dependency(place, node);
      if (one) (found ??= []).push(one);
    }
    if (node.children.length > 0) found = gather(node.children, found);
  }
  return found;
}

const NONE: readonly Dependency[] = [];

function dependency(place: Place, node: Node): Dependency | undefined {
  if (place.base.kind === 'focus') return { asked: locate(node, place) };
  const name = nameIn(place);
  return name && { name, asked: locate(node, name) };
}

/** An arrow of the graph: `to` is placed first. */
export interface Arrow {
  readonly to: number;
  readonly what: string;
  readonly asked: Location;
}

export interface Circle {
  /** Each arrow leads to what the next one starts from; the last leads back to where the first starts. */
  readonly arrows: readonly Arrow[];
}

/**
 * An order in which everything comes after what it refers to, and the circles that allow none. Runs without
 * recursion: a chain may be as long as the plan.
 */
export function inOrder(graph: readonly (readonly Arrow[])[]): {
  readonly order: readonly number[];
  readonly circles: readonly Circle[];
} {
  const order: number[] = [];
  const circles: Circle[] = [];
  const state: ('open' | 'done' | undefined)[] = [];
  const trail: { readonly at: number; next: number; readonly by?: Arrow }[] = [];
  for (let start = 0; start < graph.length; start++) {
    if (state[start]) continue;
    if (graph[start]?.length === 0) {
      state[start] = 'done';
      order.push(start);
      continue;
    }
    trail.push({ at: start, next: 0 });
    state[start] = 'open';
    for (let top = trail.at(-1); top; top = trail.at(-1)) {
      const arrow = graph[top.at]?.[top.next++];
      if (!arrow) {
        state[top.at] = 'done';
        order.push(top.at);
        trail.pop();
      } else if (state[arrow.to] === 'open') {
        const from = trail.findIndex(({ at }) => at === arrow.to);
        circles.push({ arrows: [...trail.slice(from + 1).flatMap(({ by }) => by ?? []), arrow] });
      } else if (!state[arrow.to]) {
        state[arrow.to] = 'open';
        trail.push({ at: arrow.to, next: 0, by: arrow });
      }
    }
  }
  return { order, circles };
}
