import type { Plane } from '../../../grammar/index.js';
import type { Plan, PlanObject } from '../../plan/plan.js';

/** What is seen of one plane. */
export interface PlaneMeasure {
  readonly plane: Plane;
  /** Part of the picture. */
  readonly share: number;
  /** Area-weighted mean Munsell value of what has one. */
  readonly value?: number;
  /** Area-weighted mean Munsell chroma as painted, of what has a colour; a grey counts as 0. */
  readonly chroma?: number;
}

const FARTHEST_FIRST: readonly Plane[] = ['background', 'middle', 'foreground'];

/**
 * The planes that something is seen of, the farthest first; `shares` are the visible shares in the order of
 * `plan.objects`. Bare ground lies in no plane.
 */
export function measurePlanes(plan: Plan, shares: readonly number[]): readonly PlaneMeasure[] {
  return FARTHEST_FIRST.flatMap((plane): PlaneMeasure[] => {
    const seen = plan.objects
      .filter((object) => object.plane === plane)
      .map((object) => ({ object, share: shares[object.index] ?? 0 }))
      .filter(({ share }) => share > 0);
    if (seen.length === 0) return [];
    const value = mean(seen, (object) => object.value);
    const chroma = mean(seen, (object) => object.chroma?.reached);
    return [
      {
        plane,
        share: seen.reduce((sum, { share }) => sum + share, 0),
        ...(value === undefined ? {} : { value }),
        ...(chroma === undefined ? {} : { chroma }),
      },
    ];
  });
}

/** Weighted by area; nothing where none has the figure. */
function mean(
  seen: readonly { readonly object: PlanObject; readonly share: number }[],
  figure: (object: PlanObject) => number | undefined,
): number | undefined {
  let weight = 0;
  let sum = 0;
  for (const { object, share } of seen) {
    const one = figure(object);
    if (one === undefined) continue;
    weight += share;
    sum += share * one;
  }
  return weight > 0 ? sum / weight : undefined;
}
