import type { Outline, Ring } from '../../plan/geometry/outline.js';
import type { Canvas } from '../../plan/plan.js';
import type { SeenLayer } from '../areas/areas.js';
import { type Segments, distanceTo, segmentsOf } from './segments.js';

/** Part of the diagonal within which a border counts as lying on another; the grid of the areas is far finer. */
const ON_IT = 1e-6;
/** Part of the diagonal; what is seen no broader than this on the whole, rounding has left. */
const SLIVER = 0.001;

const sides = new WeakMap<Outline, Segments>();
const borders = new WeakMap<readonly Ring[], { readonly outline: Outline; readonly border: Segments }>();

/** The sides of a whole outline, kept as long as it. */
export function sidesOf(outline: Outline): Segments {
  const kept = sides.get(outline) ?? segmentsOf(outline.rings);
  sides.set(outline, kept);
  return kept;
}

/**
 * What is seen of an object's own border: not where another covers it, whose border that is, and not where the canvas
 * ends. Kept as long as what is seen of it.
 */
export function seenBorder(
  outline: Outline,
  { visible, hiddenShare, offCanvasShare }: SeenLayer,
  canvas: Pick<Canvas, 'width' | 'height' | 'diagonal'>,
): Segments {
  const kept = borders.get(visible);
  if (kept?.outline === outline) return kept.border;
  const slack = ON_IT * canvas.diagonal;
  const whole = hiddenShare === 0 && offCanvasShare === 0;
  const pieces = visible.filter((ring) => breadthOf(ring) > SLIVER * canvas.diagonal);
  const border = segmentsOf(pieces, (ax, ay, bx, by) => {
    if (alongEdge(ax, bx, canvas.width, slack) || alongEdge(ay, by, canvas.height, slack)) return false;
    const middle = { x: (ax + bx) / 2, y: (ay + by) / 2 };
    return whole || distanceTo(sidesOf(outline), middle, slack) <= slack;
  });
  borders.set(visible, { outline, border });
  return border;
}

function alongEdge(from: number, to: number, end: number, slack: number): boolean {
  return [0, end].some((edge) => Math.abs(from - edge) <= slack && Math.abs(to - edge) <= slack);
}

/** How broad a ring is on the whole: a strip's width. */
function breadthOf(ring: Ring): number {
  let area = 0;
  let length = 0;
  for (let i = 0; i + 1 < ring.length; i += 2) {
    const next = (i + 2) % ring.length;
    const [ax, ay] = [ring[i] as number, ring[i + 1] as number];
    const [bx, by] = [ring[next] as number, ring[next + 1] as number];
    area += (ax * by - bx * ay) / 2;
    length += Math.hypot(bx - ax, by - ay);
  }
  return length > 0 ? (2 * Math.abs(area)) / length : 0;
}
