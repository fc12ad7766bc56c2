import type { Ring } from '../../plan/geometry/outline.js';
import { type Point, distance } from '../../plan/geometry/point.js';
import { distanceToStretch } from '../../plan/leads-simplify.js';
import type { Lead, Plan } from '../../plan/plan.js';
import { containsPoint, distanceToOutline, type VisibleAreas } from '../areas/areas.js';
import { isAtFocus } from '../emphasis/at-focus.js';

const ROUNDING = 1e-6;

/** What a lead is drawn to aim at. */
export type LeadAim = { readonly kind: 'focus' } | { readonly kind: 'object'; readonly object: number };

/** What the leads of a plan may aim at, with what is seen of it. */
export interface Aims {
  readonly focus?: Point;
  /** What is seen of each dominant object at the focal point. */
  readonly atFocus: readonly (readonly Ring[])[];
  /** Principal objects and stops of the path. */
  readonly targets: readonly { readonly object: number; readonly visible: readonly Ring[] }[];
  /** Canvas units by which a place may miss a shape through rounding and lie on it. */
  readonly slack: number;
  visible(object: number): readonly Ring[];
}

export function aimsOf({ objects, coveringOrder, path, focus, canvas }: Plan, areas: VisibleAreas): Aims {
  const seen = new Map(
    coveringOrder.map((object, position) => [object, areas.layers[position]?.visible ?? []]),
  );
  const visible = (object: number): readonly Ring[] => seen.get(object) ?? [];
  const stops = new Set(path?.value ?? []);
  const isTarget = ({ role, index }: Plan['objects'][number]): boolean =>
    role === 'dominant' || role === 'secondary' || stops.has(index);
  const at = focus?.at;
  return {
    ...(at ? { focus: at } : {}),
    atFocus: objects
      .filter(({ role }) => role === 'dominant')
      .map(({ index }) => visible(index))
      .filter((rings) => at && isAtFocus(distanceToShape(rings, at) / canvas.diagonal)),
    targets: objects.filter(isTarget).map(({ index }) => ({ object: index, visible: visible(index) })),
    slack: ROUNDING * canvas.diagonal,
    visible,
  };
}

/**
 * What a lead aims at: the focal point or an object that it names; for another place the principal object or stop that
 * is seen there, else the focal point. Missing when there is none.
 */
export function aimOf({ to }: Lead, { focus, targets, slack }: Aims): LeadAim | undefined {
  if (to.names === 'object') return { kind: 'object', object: to.object };
  const there =
    to.names === 'place'
      ? targets.find(({ visible }) => distanceToShape(visible, to.at) <= slack)
      : undefined;
  if (there) return { kind: 'object', object: there.object };
  return focus && { kind: 'focus' };
}

/**
 * How far a line passes what it aims at, canvas units: 0 when it runs into it, or into what is seen of a dominant
 * object at the focal point. Undefined for an object of which nothing is seen.
 *
 * @param miss how far the line passes from the focal point.
 */
export function passesBy(aim: LeadAim, line: readonly Point[], miss: number, aims: Aims): number | undefined {
  switch (aim.kind) {
    case 'focus':
      return aims.atFocus.some((rings) => distanceToLine(rings, line) <= aims.slack) ? 0 : miss;
    case 'object': {
      const rings = aims.visible(aim.object);
      return rings.length > 0 ? distanceToLine(rings, line) : undefined;
    }
  }
}

/** From a line to a shape: 0 where they meet, infinite for no shape. */
function distanceToLine(rings: readonly Ring[], line: readonly Point[]): number {
  let nearest = line.reduce((least, point) => Math.min(least, distanceToShape(rings, point)), Infinity);
  for (let i = 0; i + 1 < line.length && nearest > 0; i++) {
    const [from, to] = [line[i], line[i + 1]];
    if (!from || !to || distance(from, to) === 0) continue;
    for (const ring of rings) nearest = Math.min(nearest, ringToStretch(ring, from, to));
  }
  return nearest;
}

function distanceToShape(rings: readonly Ring[], point: Point): number {
  return containsPoint(rings, point) ? 0 : distanceToOutline(rings, point);
}

/** From the corners of a ring to a straight stretch; 0 when a side of the ring crosses it. */
function ringToStretch(ring: Ring, from: Point, to: Point): number {
  let nearest = Infinity;
  const count = ring.length / 2;
  const corner = (index: number): Point => ({ x: ring[2 * index] ?? NaN, y: ring[2 * index + 1] ?? NaN });
  for (let i = 0; i < count; i++) {
    const [here, next] = [corner(i), corner((i + 1) % count)];
    if (crosses(here, next, from, to)) return 0;
    nearest = Math.min(nearest, distanceToStretch(here, from, to));
  }
  return nearest;
}

function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}
