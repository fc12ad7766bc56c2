import type { ColourRole } from '../../../grammar/index.js';
import type { Lab } from '../../plan/colour/colour.js';
import type { Point } from '../../plan/geometry/point.js';
import type { BudgetMeasure } from '../measures.js';
import type { NoPhotograph, SquaredPicture } from './photographs.js';

/**
 * What the photographs of the sittings tell: one entry for each sitting that names a photograph, in the order of the
 * text. A photograph is measured against what the plan has standing on the canvas after its sitting (`standing.ts`): an
 * object that no sitting has painted yet is bare ground and is measured against nothing; after an underpainting only
 * its value counts; a glaze counts from the sitting that lays it. Where no sitting up to then says what it works on,
 * each is taken to have painted everything.
 */
export interface RecordMeasure {
  readonly sittings: readonly SittingRecord[];
}

/** `sitting` is an index into `plan.sittings`. */
export type SittingRecord = { readonly sitting: number } & (
  | { readonly is: 'on its way' }
  | { readonly is: 'unreadable'; readonly reason: NoPhotograph['reason'] }
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
  /** The share that is nearest in colour to something without a role. */
  readonly noRoleShare: number;
  readonly colourBudget: readonly BudgetMeasure[];
  /**
   * Whether all that is seen has been painted by then, so that shares can be held to the plan's: by value, and by
   * colour.
   */
  readonly isWhole: { readonly values: boolean; readonly colours: boolean };
  /** Mean Munsell value. */
  readonly key: number;
  /** Munsell values that 2 % of the canvas are under and 2 % above. */
  readonly range: { readonly darkest: number; readonly lightest: number };
  /** Those that enough is seen of to be measured, in the order of `plan.objects`. */
  readonly objects: readonly RecordObject[];
  /** Missing where nothing stands out at all. */
  readonly emphasis?: RecordEmphasis;
  /** What can't be trusted in the photograph, the gravest first. */
  readonly doubts: readonly Doubt[];
  /** Index into `plan.sittings` of the one whose photograph is before it in time; missing for the first. */
  readonly comparedWith?: number;
  /** Against the photograph before it in time; missing for the first. Worked out when it is first read. */
  readonly change?: RecordChange | undefined;
  /** What the plan has standing at each pixel of the photograph after the sitting. Worked out when it is first read. */
  readonly planned: PlannedPicture;
  /**
   * Photograph less plan, in steps of the scale, a number a pixel: below nought it is darker; NaN as in `planned`.
   * Worked out when it is first read.
   */
  readonly valueDifference: Float32Array;
  /**
   * CIEDE2000 from plan to photograph, a number a pixel; where only values count, of their lightness. Worked out when
   * it is first read.
   */
  readonly colourDifference: Float32Array;
}

export interface RecordObject {
  /** Index into `plan.objects`. */
  readonly object: number;
  /** Visible part of the canvas, by the plan. */
  readonly share: number;
  /** Mean over its visible shape without its rim, averaged in linear light. */
  readonly colour: Lab;
  readonly value: number;
  /** On the plan's scale, fractions allowed. */
  readonly step: number;
  /** A layer that makes it seen has been laid by then, in this sitting or one before. */
  readonly worked: boolean;
  /**
   * What is to stand there after the sitting; missing where it is not worked on yet, or the plan gives it neither
   * value nor colour.
   */
  readonly against?: {
    readonly step: number;
    /** Missing where the plan gives it no colour, and after an underpainting, which gives it a value only. */
    readonly colour?: Lab;
    /** Photograph less plan: below nought it is darker. */
    readonly stepsOff: number;
    /** CIEDE2000 of the mean colours; missing as `colour` is. */
    readonly difference?: number;
    /** The same with the lightness of both as planned: hue and chroma alone; missing as `colour` is. */
    readonly hueAndChroma?: number;
  };
  /**
   * How it stood in the photograph before, held to the same as now; missing as `against` is, and in the first
   * photograph.
   */
  readonly since?: {
    readonly stepsOff: number;
    readonly difference?: number;
    /** By a quarter of a step or two units of CIEDE2000 at least. */
    readonly went: 'nearer' | 'away' | 'neither';
  };
  /**
   * The role of the colour of the plan that its mean is nearest to; missing where that has none, or the plan gives no
   * roles.
   */
  readonly nearestRole?: ColourRole;
  /**
   * How its visible shape is shared out among the steps, index 0 the darkest, as parts of the canvas. Worked out when
   * it is first read.
   */
  readonly steps: readonly number[];
}

/** Where a photograph draws the eye most, by the contrasts of its pixels; see `strong-places.ts`. */
export interface RecordEmphasis {
  /** Canvas units. */
  readonly at: Point;
  /** From the focal point, part of the diagonal; this and `atFocus` are missing without a focal point. */
  readonly fromFocus?: number;
  /** The strongest within 8 % of the diagonal from the focal point, as a part of the strongest anywhere. */
  readonly atFocus?: number;
  /** The same of what is to stand there after the sitting, by the same method. Worked out when it is first read. */
  readonly planned?: RecordEmphasis | undefined;
}

/** What can't be trusted in a photograph. `isGrave` is what may mislead figures that are told of it. */
export type Doubt = { readonly isGrave: boolean } & (
  | { readonly about: 'burnt-out lights' | 'blocked darks'; readonly share: number }
  /** Glaring light on places that are to be dark; the object that has most of them. */
  | { readonly about: 'glare'; readonly share: number; readonly object?: number }
  /**
   * All that can be held to the plan is lighter or darker than it by about the same part, in stops, twice the light
   * each: below nought darker. So it is rather the exposure than the painting.
   */
  | { readonly about: 'exposure'; readonly stops: number }
  | { readonly about: 'grey patch'; readonly reason: string }
  /** By how much the light was coloured, which the grey patch took out. */
  | { readonly about: 'coloured light'; readonly cast: number }
  | { readonly about: 'no grey patch' | 'no profile' }
  /** Pixels of the photograph for one pixel across as it is measured. */
  | { readonly about: 'few pixels'; readonly sharpness: number }
  /** It has no corners, and other proportions than the canvas. Width over height. */
  | { readonly about: 'proportions'; readonly photograph: number; readonly canvas: number }
  | { readonly about: 'corners outside'; readonly corners: readonly number[] }
  /** ISO 8601 dates. */
  | { readonly about: 'taken earlier'; readonly taken: string; readonly sitting: string }
);

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
