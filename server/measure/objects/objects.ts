import type { Plan } from '../../plan/plan.js';
import type { VisibleAreas } from '../areas/areas.js';
import { inBillionths } from '../areas/place-order.js';
import type { ObjectMeasure } from '../measures.js';

/** The measured areas in the order of `plan.objects`; shares are parts of the canvas or of the shape, as named. */
export function measureObjects(plan: Plan, areas: VisibleAreas): readonly ObjectMeasure[] {
  const measures: ObjectMeasure[] = plan.objects.map(() => ({
    share: 0,
    hiddenShare: 0,
    offCanvasShare: 0,
    coveredBy: [],
    mostCovering: [],
  }));
  plan.coveringOrder.forEach((object, position) => {
    const layer = areas.layers[position];
    if (!layer) return;
    const { share, hiddenShare, offCanvasShare } = layer;
    let all: readonly number[] | undefined;
    let first: readonly number[] | undefined;
    measures[object] = {
      share,
      hiddenShare,
      offCanvasShare,
      get coveredBy() {
        return (all ??= objectsOf(layer.coveredBy));
      },
      get mostCovering() {
        return (first ??= objectsOf(layer.mostCovering));
      },
    };
  });
  return measures;

  function objectsOf(covers: readonly { readonly index: number }[]): readonly number[] {
    return covers.flatMap(({ index }) => plan.coveringOrder[index] ?? []);
  }
}

export interface ObjectShare {
  readonly object: number;
  readonly share: number;
}

/** The visible objects that `belongs` picks, largest share first. */
export function largestFirst(
  shares: readonly number[],
  belongs: (object: number) => boolean,
): readonly ObjectShare[] {
  const visible: ObjectShare[] = [];
  shares.forEach((share, object) => {
    if (share > 0 && belongs(object)) visible.push({ object, share });
  });
  return visible.sort((a, b) => inBillionths(b.share) - inBillionths(a.share));
}

export function totalShare(objects: readonly ObjectShare[]): number {
  return objects.reduce((sum, { share }) => sum + share, 0);
}
