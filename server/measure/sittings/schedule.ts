import type { Layer } from '../../../grammar/index.js';
import type { Pigment } from '../../plan/materials/pigments.js';

/** The sittings in time. Days are counted from 1970-01-01, so that they can be subtracted; `isoOf` writes one. */
export interface ScheduleMeasure {
  /** In the order in which they come: by date, those of one day and those without one as the text has them. */
  readonly sittings: readonly ScheduledSitting[];
  /** In the order of `plan.objects`. */
  readonly objects: readonly ObjectSchedule[];
  /** Places where a layer meets one that is not ready for it, in the order of time. */
  readonly conflicts: readonly LayerConflict[];
  /** Indices into `plan.objects` of what is seen and never worked; empty while the plan has no sittings. */
  readonly neverWorked: readonly number[];
  readonly due?: DueMeasure;
  /** When the last layer anywhere is dry to the touch; missing without a dated sitting that leaves paint. */
  readonly dryOn?: number;
  /** The first day on which a final varnish is safe by common practice. */
  readonly varnishFrom?: number;
  /** False while mixtures that drying goes by are still being worked out. */
  readonly isSettled: boolean;
}

export interface ScheduledSitting {
  /** Index into `plan.sittings`. */
  readonly sitting: number;
  /** Day number; missing without a readable date. */
  readonly day?: number;
  readonly layer: Layer;
  /** Whether the plan states the layer; otherwise it is taken for body colour. */
  readonly layerStated: boolean;
  /** Share of added oil or medium, and whether the plan gives it as a figure, as lean or fat, or it is the layer's usual one. */
  readonly fat: number;
  readonly fatFrom: 'share' | 'body' | 'layer';
  /** Millimetres. */
  readonly film: number;
  readonly filmStated: boolean;
  /** What it works on, as indices into `plan.objects`. */
  readonly works: readonly number[];
  /** It works on nothing, or has nothing to do. */
  readonly isIdle: boolean;
  /** Index into `plan.away`: the painter has said that this day is taken. */
  readonly away?: number;
  /** When the last of what it lays is dry to the touch. */
  readonly dryOn?: number;
  /** The latest day on which it can be held with everything after it in order and the work ready on the due date. */
  readonly latest?: number;
  /** `latest` - `day`: days that it can still be put off; under 0 it comes too late. */
  readonly slack?: number;
}

export interface ObjectSchedule {
  /** In the order of time. */
  readonly coats: readonly Coat[];
}

/** One layer on one object. */
export interface Coat {
  /** Index into `plan.sittings`. */
  readonly sitting: number;
  readonly layer: Layer;
  readonly day?: number;
  readonly fat: number;
  /** Days until it is dry to the touch, whole, rounded up. */
  readonly days: number;
  readonly dryOn?: number;
  /** The paint that it waits for; missing when no palette says what is in it. */
  readonly slowest?: { readonly paint: number; readonly pigment?: Pigment; readonly days: number };
}

export interface LayerConflict {
  readonly kind:
    'not dry' | 'leaner over fatter' | 'glaze over wet' | 'varnish too soon' | 'faster over slower';
  readonly object: number;
  /** Indices into `plan.sittings`. */
  readonly below: number;
  readonly above: number;
  /** Days that are missing, for those that wait. */
  readonly missing?: number;
  /** The first day on which the upper layer can be laid, for those that wait. */
  readonly from?: number;
  /** Fat below and above, for the lean one. */
  readonly fat?: readonly [below: number, above: number];
}

export interface DueMeasure {
  readonly day: number;
  /** The latest day of the first sitting with everything in order after it. */
  readonly latestStart?: number;
  /** Days between the first sitting and `latestStart`; under 0 there is too little time. */
  readonly slack?: number;
  /** When the work is ready to leave: the last layer dry to the touch. */
  readonly readyOn?: number;
}
