import Flatbush from 'flatbush';
import type { Ring } from './path.js';

type Quad = [number, number, number, number];

/** The work of cutting grows with the crossings; so many take about a second. */
export const MOST_CROSSINGS = 250_000;
/** Pairs of edges looked at before an outline is given up as a tangle. */
const MOST_PAIRS = 20_000_000;

/**
 * Whether outlines cross themselves or each other so often that they can't be cut while somebody waits: more than
 * `MOST_CROSSINGS` crossings, or so many edges beside each other that these can't be counted either.
 */
export function isTangled(rings: readonly Ring[]): boolean {
  let count = 0;
  for (const ring of rings) count += ring.length / 2;
  if ((count * (count - 1)) / 2 <= MOST_CROSSINGS) return false;
  const edges = edgesOf(rings, count);
  const index = new Flatbush(count);
  for (let edge = 0; edge < count; edge++) index.add(...boxOfEdge(edges, edge));
  index.finish();
  let crossings = 0;
  let pairs = 0;
  for (let edge = 0; edge < count; edge++) {
    index.search(...boxOfEdge(edges, edge), (other) => {
      if (other > edge) {
        pairs++;
        if (cross(edges, edge, other)) crossings++;
      }
      // None is gathered: the answer is in the counts.
      return false;
    });
    if (crossings > MOST_CROSSINGS || pairs > MOST_PAIRS) return true;
  }
  return false;
}

/** Four numbers an edge: from x, y to x, y. */
function edgesOf(rings: readonly Ring[], count: number): Float64Array {
  const edges = new Float64Array(4 * count);
  let at = 0;
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2, at += 4) {
      const next = (i + 2) % ring.length;
      edges[at] = ring[i] as number;
      edges[at + 1] = ring[i + 1] as number;
      edges[at + 2] = ring[next] as number;
      edges[at + 3] = ring[next + 1] as number;
    }
  }
  return edges;
}

function boxOfEdge(edges: Float64Array, edge: number): Quad {
  const [ax, ay, bx, by] = [0, 1, 2, 3].map((part) => edges[4 * edge + part] as number) as Quad;
  return [Math.min(ax, bx), Math.min(ay, by), Math.max(ax, bx), Math.max(ay, by)];
}

/** Whether two edges cross each other inside; those that only touch do not. Runs for millions of pairs. */
function cross(edges: Float64Array, one: number, other: number): boolean {
  return separates(edges, 4 * one, 4 * other) && separates(edges, 4 * other, 4 * one);
}

/** Whether the ends of the edge at `b` lie on different sides of the line through the edge at `a`. */
function separates(edges: Float64Array, a: number, b: number): boolean {
  const x = edges[a] as number;
  const y = edges[a + 1] as number;
  const dx = (edges[a + 2] as number) - x;
  const dy = (edges[a + 3] as number) - y;
  const first = dx * ((edges[b + 1] as number) - y) - dy * ((edges[b] as number) - x);
  const second = dx * ((edges[b + 3] as number) - y) - dy * ((edges[b + 2] as number) - x);
  return first * second < 0;
}
