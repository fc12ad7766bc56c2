import type { ColourRole } from '../../grammar/index.js';
import type { BudgetEntry } from '../plan/plan.js';
import type { VisibleAreas } from './areas/areas.js';
import type { BalanceMeasure } from './objects/balance.js';
import type { BorderMeasure } from './borders/borders.js';
import type { EmphasisMeasure } from './emphasis/emphasis.js';
import type { FocusMeasure } from './emphasis/at-focus.js';
import type { EyePathMeasure } from './eye-path/eye-path.js';
import type { HueMeasure } from './hues/hues.js';
import type { NotanMeasure } from './notan/notan.js';
import type { PaletteMeasure } from './mixing/mixing.js';
import type { PlaneMeasure } from './values/planes.js';
import type { ProportionMeasure } from './proportion.js';
import type { RecordMeasure } from './photograph/record.js';
import type { ScheduleMeasure } from './sittings/schedule.js';
import type { SpacingMeasure } from './objects/spacing.js';
import type { TangentMeasure } from './objects/tangents.js';
import type { SketchMeasure } from './transfer/sketch.js';
import type { ValueSpread } from './values/spread.js';

/** Everything measured on a plan. Shares are parts of the whole canvas: 0.3 is 30 %. */
export interface Measures {
  /** `areas.layers[i]` belongs to the object `plan.coveringOrder[i]`. */
  readonly areas: VisibleAreas;
  readonly borders: BorderMeasure;
  readonly emphasis: EmphasisMeasure;
  /** In the order of `plan.objects`. */
  readonly objects: readonly ObjectMeasure[];
  readonly values: ValueMeasure;
  readonly colours: ColourMeasure;
  readonly hues: HueMeasure;
  /** Those that something is seen of, the farthest first. */
  readonly planes: readonly PlaneMeasure[];
  readonly notan: NotanMeasure;
  readonly proportion: ProportionMeasure;
  /** For every object, in the order of `plan.objects`, the objects that lie on it; `wholeOf` puts them together. */
  readonly parts: readonly (readonly number[])[];
  readonly balance: BalanceMeasure;
  readonly spacing: SpacingMeasure;
  readonly tangents: TangentMeasure;
  readonly eyePath: EyePathMeasure;
  readonly focus?: FocusMeasure;
  /** Missing without a palette. */
  readonly palette?: PaletteMeasure;
  /** Missing without a sitting. */
  readonly schedule?: ScheduleMeasure;
  /** Missing without a sketch. */
  readonly sketch?: SketchMeasure;
  /** Missing where no sitting names a photograph. */
  readonly record?: RecordMeasure;
}

export interface ObjectMeasure {
  /** Visible part of the canvas. */
  readonly share: number;
  /** Part of the shape on the canvas that others cover. */
  readonly hiddenShare: number;
  /** Part of the shape that lies off the canvas. */
  readonly offCanvasShare: number;
  /** Indices of the objects that cover it, the most covering first. Worked out when it is first read. */
  readonly coveredBy: readonly number[];
  /** Up to three of `coveredBy`, those that cover most, for much less work. */
  readonly mostCovering: readonly number[];
}

export interface BudgetMeasure extends BudgetEntry {
  readonly share: number;
  /** `share - target` */
  readonly difference: number;
  readonly tolerance: number;
  readonly within: boolean;
}

export interface ValueMeasure extends ValueSpread {
  /** Index 0 is step 1, the darkest. Fractional steps count to the nearest. */
  readonly steps: readonly { readonly step: number; readonly value: number; readonly share: number }[];
  readonly groups: readonly {
    readonly name: string;
    readonly key: string;
    readonly from: number;
    readonly to: number;
    readonly share: number;
    /** The objects in it, largest visible share first. */
    readonly objects: readonly { readonly object: number; readonly share: number }[];
  }[];
  readonly budget: readonly BudgetMeasure[];
  /** Bare ground is counted at the step nearest to the ground's value, and told apart here. */
  readonly bareShare: number;
  /** Visible objects that have neither value nor colour. */
  readonly unplannedShare: number;
}

export interface ColourMeasure {
  readonly roles: readonly {
    readonly role: ColourRole;
    readonly share: number;
    readonly objects: readonly { readonly object: number; readonly share: number }[];
  }[];
  /** In the order of `plan.colours`. */
  readonly colours: readonly { readonly share: number }[];
  readonly budget: readonly BudgetMeasure[];
  /** Visible objects whose colour has no role, or that have no colour. */
  readonly noRoleShare: number;
  /** Bare ground without a role. */
  readonly bareShare: number;
}
