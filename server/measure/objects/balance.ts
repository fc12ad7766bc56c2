import { toMunsell } from '../../plan/colour/munsell.js';
import type { Colour } from '../../plan/colour/colour.js';
import type { Ring } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import type { Plan, PlanObject } from '../../plan/plan.js';
import type { SeenAreas, SeenLayer } from '../areas/areas.js';
import { wholeOf } from '../areas/parts.js';
import { inBillionths } from '../areas/place-order.js';

/**
 * How the picture hangs on its vertical middle, as a steelyard balances (Poore 1903). Visual weight is a heuristic:
 * visible share x (difference of Munsell value from the picture's mean + a tenth of the Munsell chroma).
 */
export interface BalanceMeasure {
  /** Every object that has weight, heaviest first. */
  readonly weights: readonly ObjectWeight[];
  /** Dominant and secondary objects that have weight, each with what lies on it, heaviest first. */
  readonly principals: readonly { readonly object: number; readonly weight: number }[];
  /** Of the bare ground. */
  readonly ground: number;
  readonly total: number;
  /**
   * Where the centre of weight lies, right of the middle counted positive, as a part of the width; missing when nothing
   * weighs.
   */
  readonly offset?: number;
  /** The same as a place from the left edge, canvas units. */
  readonly centre?: number;
  /** What the weights follow from, in the order of `plan.objects`, to try what another value would do. */
  readonly laid: readonly Laid[];
  readonly laidGround: Laid;
}

export interface ObjectWeight {
  readonly object: number;
  readonly weight: number;
  /** Distance of its centre of visible area from the vertical middle, part of the width, right positive. */
  readonly arm: number;
  /** Weight x arm. */
  readonly moment: number;
}

/** An area as it is laid in: without a value it weighs nothing and takes no part in the mean. */
export interface Laid {
  /** Visible part of the canvas. */
  readonly share: number;
  /** Part of the width from the middle to the centre of its visible area, right positive. */
  readonly arm: number;
  /** Munsell value and chroma as painted. */
  readonly value?: number;
  readonly chroma: number;
}

/** Chroma that weighs as much as one step of Munsell value. */
const CHROMA_TO_A_VALUE = 10;

/** The balance of a plan; `parts` as `partsOf` gives them. */
export function measureBalance(
  plan: Plan,
  areas: SeenAreas,
  parts: readonly (readonly number[])[],
): BalanceMeasure {
  const { canvas } = plan;
  const laid: Laid[] = plan.objects.map(() => UNSEEN);
  plan.coveringOrder.forEach((object, position) => {
    const layer = areas.layers[position];
    const of = plan.objects[object];
    if (!layer || !of || layer.share === 0) return;
    laid[object] = laidIn(of, layer, canvas.width);
  });
  const laidGround = {
    share: areas.bareShare,
    arm: areas.bareShare > 0 ? armOf(areas.bare, canvas.width) : 0,
    ...asPainted(canvas.ground.value, canvas.ground.colour),
  };
  return hung(plan, laid, laidGround, parts);
}

const UNSEEN: Laid = { share: 0, arm: 0, chroma: 0 };

interface KeptLaid {
  readonly visible: readonly Ring[];
  readonly width: number;
  readonly laid: Laid;
}

const kept = new WeakMap<PlanObject, KeptLaid>();

/** Kept as long as the object and what is seen of it. */
function laidIn(object: PlanObject, { share, visible }: SeenLayer, width: number): Laid {
  const last = kept.get(object);
  if (last?.visible === visible && last.width === width && last.laid.share === share) return last.laid;
  const laid = { share, arm: armOf(visible, width), ...asPainted(object.value, object.painted) };
  kept.set(object, { visible, width, laid });
  return laid;
}

function armOf(rings: readonly Ring[], width: number): number {
  const centre = centreOf(rings);
  return centre ? centre.x / width - 0.5 : 0;
}

/** What an object weighs by when it is painted so. */
export function asPainted(
  value: number | undefined,
  colour: Colour | undefined,
): Pick<Laid, 'value' | 'chroma'> {
  return value === undefined ? { chroma: 0 } : { value, chroma: colour ? toMunsell(colour).chroma : 0 };
}

/** The balance of areas laid in so: `measureBalance` for what is only tried. */
export function hung(
  plan: Pick<Plan, 'objects' | 'canvas'>,
  laid: readonly Laid[],
  laidGround: Laid,
  parts: readonly (readonly number[])[],
): BalanceMeasure {
  const mean = meanValue([...laid, laidGround]);
  const each = laid.map((area, object): ObjectWeight => {
    const weight = weightOf(area, mean);
    return { object, weight, arm: area.arm, moment: weight * area.arm };
  });
  const weights = each.filter(({ weight }) => weight > 0).sort(heaviestFirst);
  const ground = weightOf(laidGround, mean);
  const total = weights.reduce((sum, { weight }) => sum + weight, ground);
  const moment = weights.reduce((sum, one) => sum + one.moment, ground * laidGround.arm);
  const offset = total > 0 ? moment / total : undefined;
  const principals = principalsBy(plan, parts, (object) => each[object]?.weight ?? 0);
  return {
    weights,
    principals,
    ground,
    total,
    ...(offset === undefined ? {} : { offset, centre: (offset + 0.5) * plan.canvas.width }),
    laid,
    laidGround,
  };
}

/** The principals of `hung` alone. */
export function principalsHung(
  plan: Pick<Plan, 'objects'>,
  laid: readonly Laid[],
  laidGround: Laid,
  parts: readonly (readonly number[])[],
): BalanceMeasure['principals'] {
  const mean = meanValue([...laid, laidGround]);
  return principalsBy(plan, parts, (object) => {
    const area = laid[object];
    return area ? weightOf(area, mean) : 0;
  });
}

function principalsBy(
  { objects }: Pick<Plan, 'objects'>,
  parts: readonly (readonly number[])[],
  weightOfObject: (object: number) => number,
): BalanceMeasure['principals'] {
  return objects
    .filter(({ role }) => role === 'dominant' || role === 'secondary')
    .map(({ index }) => ({
      object: index,
      weight: wholeOf(parts, index).reduce((sum, part) => sum + weightOfObject(part), 0),
    }))
    .filter(({ weight }) => weight > 0)
    .sort(heaviestFirst);
}

function heaviestFirst(one: { readonly weight: number }, other: { readonly weight: number }): number {
  return inBillionths(other.weight) - inBillionths(one.weight);
}

function weightOf({ share, value, chroma }: Laid, mean: number): number {
  return value === undefined ? 0 : share * (Math.abs(value - mean) + chroma / CHROMA_TO_A_VALUE);
}

function meanValue(laid: readonly Laid[]): number {
  let share = 0;
  let sum = 0;
  for (const area of laid) {
    if (area.value === undefined) continue;
    share += area.share;
    sum += area.share * area.value;
  }
  return share > 0 ? sum / share : 0;
}

const centres = new WeakMap<readonly Ring[], { readonly at: Point | undefined }>();

/**
 * Centre of area of rings that don't cross, with holes running against their outer rings, as `VisibleAreas` has
 * them; none without area. Kept as long as the rings.
 */
export function centreOf(rings: readonly Ring[]): Point | undefined {
  const kept = centres.get(rings) ?? { at: centreOfArea(rings) };
  centres.set(rings, kept);
  return kept.at;
}

function centreOfArea(rings: readonly Ring[]): Point | undefined {
  const [originX = 0, originY = 0] = rings[0] ?? [];
  let area = 0;
  let x = 0;
  let y = 0;
  for (const ring of rings) {
    for (let i = 0; i + 1 < ring.length; i += 2) {
      const next = (i + 2) % ring.length;
      const [ax, ay] = [(ring[i] as number) - originX, (ring[i + 1] as number) - originY];
      const [bx, by] = [(ring[next] as number) - originX, (ring[next + 1] as number) - originY];
      const cross = ax * by - bx * ay;
      area += cross;
      x += (ax + bx) * cross;
      y += (ay + by) * cross;
    }
  }
  return area === 0 ? undefined : { x: originX + x / (3 * area), y: originY + y / (3 * area) };
}
