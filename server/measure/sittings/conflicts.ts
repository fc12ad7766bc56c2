import { monthsOn, type TakenDays } from './days.js';
import { isDryingOil } from './layers.js';
import type { Coat, ObjectSchedule } from './schedule.js';
import { VARNISH_AFTER_MONTHS } from './working-back.js';

/** Places where a layer meets one that is not ready for it. */
export interface LayerConflict {
  readonly kind: ConflictKind;
  /** Index into `plan.objects`. */
  readonly object: number;
  /** Indices into `plan.sittings`. */
  readonly below: number;
  readonly above: number;
  /** Days that are missing, for those that wait. */
  readonly missing?: number;
  /** The first day on which the upper layer can be laid, past the days that are taken, for those that wait. */
  readonly from?: number;
  /** Fat below and above, for the lean one. */
  readonly fat?: readonly [below: number, above: number];
  /** Days of a thin film below and above, for the faster one. */
  readonly thinFilmDays?: readonly [below: number, above: number];
}

export type ConflictKind =
  'not dry' | 'leaner over fatter' | 'glaze over wet' | 'varnish too soon' | 'faster over slower';

/** Shares of fat that are told apart. */
const ALIKE = 1e-9;

/** What of the layers comes too soon or in the wrong order, and for each sitting the day from which on nothing does. */
export interface LayerOrder {
  /** In the order of time. */
  readonly conflicts: readonly LayerConflict[];
  /** By index into `plan.sittings`: when all that it goes over is ready for it; missing where it goes over nothing. */
  readonly readyFrom: ReadonlyMap<number, number>;
}

export function layerOrder(objects: readonly ObjectSchedule[], taken: TakenDays): LayerOrder {
  const readyFrom = new Map<number, number>();
  const conflicts = objects
    .flatMap(({ coats }, object) =>
      conflictsOf(coats, readyFrom).map(({ below, above, from, ...rest }) => ({
        day: above.day ?? Infinity,
        conflict: {
          ...rest,
          object,
          below: below.sitting,
          above: above.sitting,
          ...(from === undefined ? {} : { from: taken.nextFree(from), missing: from - (above.day ?? from) }),
        },
      })),
    )
    .sort((one, other) => (one.day === other.day ? 0 : one.day - other.day))
    .map(({ conflict }) => conflict);
  return { conflicts, readyFrom };
}

interface Meeting extends Pick<LayerConflict, 'kind' | 'fat' | 'thinFilmDays'> {
  readonly below: Coat;
  readonly above: Coat;
  /** When the layer below is ready. */
  readonly from?: number;
}

/** A coat and the day on which another may go over it. */
interface Ready {
  readonly coat: Coat;
  readonly from: number;
}

/** A layer of which it is not known yet when it is dry hides what lies below it, so that nothing is guessed. */
function conflictsOf(coats: readonly Coat[], readyFrom: Map<number, number>): readonly Meeting[] {
  const found: Meeting[] = [];
  /** The last that leaves paint, dated or not; the last dated. */
  let under: Coat | undefined;
  let dated: Ready | undefined;
  /** Of all that are dated so far, the one that is dry last, and the oil that a varnish waits for. */
  let driest: Ready | undefined;
  let lastOil: Coat | undefined;
  let isKnown = true;
  for (const above of coats) {
    const { varnish } = above.laid;
    const allBelow = later(isKnown ? driest : undefined, varnish === 'final' ? cured(lastOil) : undefined);
    const waitsFor = varnish === undefined ? dated : allBelow;
    if (waitsFor) {
      readyFrom.set(above.sitting, Math.max(waitsFor.from, readyFrom.get(above.sitting) ?? -Infinity));
    }
    const waits = waitsFor && waiting(waitsFor, above);
    if (waits) found.push(waits);
    if (under && above.layer !== 'varnish') found.push(...inWrongOrder(under, above));
    if (above.layer !== 'varnish') under = above;
    if (above.day === undefined) continue;
    isKnown &&= above.dryOn !== undefined;
    dated = above.dryOn === undefined ? undefined : { coat: above, from: above.dryOn };
    driest = later(dated, driest);
    if (above.layer !== 'varnish' && isDryingOil(above.laid.binder)) lastOil = above;
  }
  return found;
}

function cured(oil: Coat | undefined): Ready | undefined {
  return oil?.day === undefined ? undefined : { coat: oil, from: monthsOn(oil.day, VARNISH_AFTER_MONTHS) };
}

function later(one: Ready | undefined, other: Ready | undefined): Ready | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return other.from > one.from ? other : one;
}

function waiting({ coat: below, from }: Ready, above: Coat): Meeting | undefined {
  if (above.day === undefined || above.day >= from) return undefined;
  return { kind: kindOf(above), below, above, from };
}

function kindOf({ layer }: Coat): ConflictKind {
  if (layer === 'varnish') return 'varnish too soon';
  return layer === 'glaze' ? 'glaze over wet' : 'not dry';
}

/**
 * Fat over lean and slow over fast are rules of drying oils, which go on moving for long after they are dry to the
 * touch. A toned ground, rubbed on thin and lean, has nothing in it to move: any paint goes over it. Common practice,
 * no source.
 */
function inWrongOrder(below: Coat, above: Coat): readonly Meeting[] {
  if (!isDryingOil(below.laid.binder) || !isDryingOil(above.laid.binder)) return [];
  const { thinFilmDays: slow } = below;
  const { thinFilmDays: fast } = above;
  return [
    ...(above.fat < below.fat - ALIKE
      ? [{ kind: 'leaner over fatter' as const, below, above, fat: [below.fat, above.fat] as const }]
      : []),
    ...(below.layer !== 'imprimatura' && slow !== undefined && fast !== undefined && fast < slow
      ? [{ kind: 'faster over slower' as const, below, above, thinFilmDays: [slow, fast] as const }]
      : []),
  ];
}
