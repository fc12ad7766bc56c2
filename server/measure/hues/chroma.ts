import { largestOf } from '../../plan/extremes.js';
import type { Ring } from '../../plan/geometry/outline.js';
import type { Plan } from '../../plan/plan.js';
import { containsPoint, distanceToOutline, type VisibleAreas } from '../areas/areas.js';
import { inBillionths } from '../areas/place-order.js';
import { GROUND } from '../borders/borders.js';
import type { SeenHue } from './roles.js';
import type { Memory } from '../memory.js';

/** A chroma that is seen. */
export interface SeenChroma {
  /** Index of the object, or `GROUND`. */
  readonly area: number;
  /** Munsell chroma as painted. */
  readonly chroma: number;
  /** From the focal point to what is seen of it, part of the diagonal; missing without a focal point. */
  readonly fromFocus?: number;
}

/** Less of the picture than this is a speck: an accent of the brush, not an area of the plan. */
const LEAST_SHARE = 0.002;

/** Chromas that a notation writes alike can't be told apart. */
const SAME_CHROMA = 0.05;

/**
 * What has a colour and is seen of 0.2 % of the picture or more, strongest chroma first, greys last; those as strong as
 * the strongest of all by the nearness to the focal point, so that one colour used twice speaks for the place nearer to
 * it.
 */
export function seenChromas(
  plan: Plan,
  areas: VisibleAreas,
  seen: readonly SeenHue[],
  memory: Memory,
): readonly SeenChroma[] {
  const positions = new Int32Array(plan.objects.length);
  plan.coveringOrder.forEach((object, position) => {
    positions[object] = position;
  });
  const visibleOf = (area: number): readonly Ring[] =>
    (area === GROUND ? areas.bare : areas.layers[positions[area] as number]?.visible) ?? [];
  const chromas = seen
    .filter(({ share }) => share >= LEAST_SHARE)
    .map(({ area, hue }): SeenChroma => {
      const fromFocus = fromFocusOf(plan, area, visibleOf(area), memory);
      return { area, chroma: hue.chroma, ...(fromFocus === undefined ? {} : { fromFocus }) };
    });
  const most = largestOf(chromas.map(({ chroma }) => chroma));
  const rank = ({ chroma }: SeenChroma): number => (chroma >= most - SAME_CHROMA ? most : chroma);
  return chromas.sort(
    (one, other) =>
      rank(other) - rank(one) || inBillionths(one.fromFocus ?? 0) - inBillionths(other.fromFocus ?? 0),
  );
}

function fromFocusOf(
  { focus, canvas, objects }: Plan,
  area: number,
  rings: readonly Ring[],
  memory: Memory,
): number | undefined {
  if (!focus) return undefined;
  const { x, y } = focus.at;
  const subject = area === GROUND ? 'ground from focus' : 'object from focus';
  return memory.recall(subject, objects[area]?.key ?? '', [rings, x, y, canvas.diagonal], () =>
    containsPoint(rings, focus.at) ? 0 : distanceToOutline(rings, focus.at) / canvas.diagonal,
  );
}
