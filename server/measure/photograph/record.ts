import type { ColourRole } from '../../../grammar/index.js';
import type { Lab } from '../../plan/colour/colour.js';
import type { Point } from '../../plan/geometry/point.js';
import type { BudgetMeasure } from '../measures.js';
import type { SquaredPicture } from './photographs.js';

/** What the photographs of the sittings tell: one entry for each sitting that names a photograph, in the order of the text. */
export interface RecordMeasure {
  readonly sittings: readonly SittingRecord[];
}

/** `sitting` is an index into `plan.sittings`. */
export type SittingRecord = { readonly sitting: number } & (
  | { readonly is: 'on its way' }
  | { readonly is: 'unreadable'; readonly reason: string }
  | { readonly is: 'measured'; readonly picture: SquaredPicture; readonly figures: RecordFigures }
);

/** What a photograph shows, against the plan and the photograph before. Shares are parts of the canvas. */
export interface RecordFigures {
  /** Index 0 is step 1, the darkest. */
  readonly steps: readonly { readonly step: number; readonly share: number }[];
  readonly groups: readonly {
    readonly name: string;
    readonly key: string;
    readonly from: number;
    readonly to: number;
    readonly share: number;
  }[];
  readonly valueBudget: readonly BudgetMeasure[];
  /** The share that is nearest in colour to what has the role; none where the plan gives no roles. */
  readonly roles: readonly { readonly role: ColourRole; readonly share: number }[];
  readonly colourBudget: readonly BudgetMeasure[];
  /** Munsell values. */
  readonly key: number;
  readonly range: { readonly darkest: number; readonly lightest: number };
  /** Those that enough is seen of to be measured, in the order of `plan.objects`. */
  readonly objects: readonly RecordObject[];
  /** The place of strongest emphasis, canvas units; `fromFocus` is a part of the diagonal. */
  readonly emphasis?: { readonly at: Point; readonly fromFocus?: number };
  /** Against the photograph before it; missing for the first. */
  readonly change?: RecordChange;
  /** What the plan has at each pixel of the photograph. Worked out when it is first read. */
  readonly planned: PlannedPicture;
  /** Photograph less plan, in steps of the scale, a number a pixel: below nought it is darker. Worked out when it is first read. */
  readonly valueDifference: Float32Array;
  /** CIEDE2000 from plan to photograph, a number a pixel. Worked out when it is first read. */
  readonly colourDifference: Float32Array;
}

export interface RecordObject {
  /** Index into `plan.objects`. */
  readonly object: number;
  readonly share: number;
  /** Mean over its visible shape, averaged in linear light. */
  readonly colour: Lab;
  readonly value: number;
  /** On the plan's scale, fractions allowed. */
  readonly step: number;
  /** It has been worked on in this sitting or one before, or no sitting up to here says what it works on. */
  readonly worked: boolean;
  /** Missing where the plan gives it neither value nor colour. */
  readonly against?: {
    readonly step: number;
    /** Missing where the plan gives it no colour. */
    readonly colour?: Lab;
    /** Photograph less plan: below nought it is darker. */
    readonly stepsOff: number;
    /** CIEDE2000 of the mean colours; missing as `colour` is. */
    readonly difference?: number;
  };
  /** How it stood in the photograph before; `nearer` says what became of it. */
  readonly since?: {
    readonly stepsOff: number;
    readonly difference?: number;
    readonly went: 'nearer' | 'away' | 'neither';
  };
}

export interface RecordChange {
  /** Index into `plan.sittings` of the one it is compared with. */
  readonly since: number;
  /** Mean CIEDE2000 over the canvas. */
  readonly mean: number;
  /** Mean CIEDE2000 over the visible shape of each object, the most changed first. */
  readonly objects: readonly { readonly object: number; readonly difference: number }[];
  /** Bare ground, if any is seen. */
  readonly bare?: number;
}

/** The plan at the size of a squared-up photograph. */
export interface PlannedPicture {
  readonly width: number;
  readonly height: number;
  /** Index into `plan.objects` of what is seen at each pixel, row by row; -1 for bare ground. */
  readonly objects: Int16Array;
  /** CIELAB under D65 as planned, three numbers a pixel; NaN where the plan gives neither value nor colour. */
  readonly lab: Float32Array;
}
