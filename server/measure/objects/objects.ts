import type { Plan } from '../../plan/plan.js';
import type { LayerAreas, VisibleAreas } from '../areas/areas.js';
import type { Cover } from '../areas/covers.js';
import { inBillionths } from '../areas/place-order.js';
import type { ObjectMeasure } from '../measures.js';
import { keptOrder } from '../kept-lists.js';
import type { Memory } from '../memory.js';

interface KeptMeasures {
  readonly order: readonly number[];
  readonly count: number;
  readonly layers: readonly LayerAreas[];
  readonly measures: readonly ObjectMeasure[];
}

/**
 * The measured areas in the order of `plan.objects`; shares are parts of the canvas or of the shape, as named. That of
 * one object is the same as long as its layer, in one order of covering.
 */
export function measureObjects(
  plan: Plan,
  { layers }: VisibleAreas,
  memory: Memory,
): readonly ObjectMeasure[] {
  const order = keptOrder(plan, memory);
  const count = plan.objects.length;
  return memory.recall('object measures', '', [order, count, layers], (last: KeptMeasures | undefined) => {
    const before = last?.order === order && last.count === count ? last : undefined;
    const measures = before?.measures.slice() ?? plan.objects.map(() => UNSEEN);
    order.forEach((object, position) => {
      const layer = layers[position];
      if (layer && layer !== before?.layers[position]) measures[object] = measureOf(layer, order);
    });
    return { order, count, layers, measures };
  }).measures;
}

const UNSEEN: ObjectMeasure = {
  share: 0,
  hiddenShare: 0,
  offCanvasShare: 0,
  coveredBy: [],
  mostCovering: [],
};

function measureOf(layer: LayerAreas, coveringOrder: readonly number[]): ObjectMeasure {
  const objectsOf = (covers: readonly Cover[]): readonly number[] =>
    covers.flatMap(({ index }) => coveringOrder[index] ?? []);
  let all: readonly number[] | undefined;
  let first: readonly number[] | undefined;
  return {
    share: layer.share,
    hiddenShare: layer.hiddenShare,
    offCanvasShare: layer.offCanvasShare,
    get coveredBy() {
      return (all ??= objectsOf(layer.coveredBy));
    },
    get mostCovering() {
      return (first ??= objectsOf(layer.mostCovering));
    },
  };
}

const shares = new WeakMap<readonly ObjectMeasure[], readonly number[]>();

/** The visible share of each object, parts of the canvas; the same list as long as the measures are the same. */
export function sharesOf(measures: readonly ObjectMeasure[]): readonly number[] {
  const known = shares.get(measures) ?? measures.map(({ share }) => share);
  shares.set(measures, known);
  return known;
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
  return allLargestFirst(shares).filter(({ object }) => belongs(object));
}

const sorted = new WeakMap<readonly number[], readonly ObjectShare[]>();

/** All visible objects, largest share first; kept as long as the list of their shares. */
export function allLargestFirst(shares: readonly number[]): readonly ObjectShare[] {
  const known = sorted.get(shares);
  if (known) return known;
  const visible = shares
    .map((share, object): ObjectShare => ({ object, share }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => inBillionths(b.share) - inBillionths(a.share));
  sorted.set(shares, visible);
  return visible;
}

export function totalShare(objects: readonly ObjectShare[]): number {
  return objects.reduce((sum, { share }) => sum + share, 0);
}
