import type { Side } from '../../grammar/index.js';
import type { Point } from '../plan/geometry/point.js';

export type Corner = 'upper left' | 'upper right' | 'lower left' | 'lower right';

/** Where the eye is led, and where it can leave. */
export interface EyePathMeasure {
  /** In the order of `plan.leads`. */
  readonly leads: readonly LeadMeasure[];
  /** Between the directions in which two leads arrive, degrees 0 to 180; each pair once. */
  readonly angles: readonly { readonly one: number; readonly other: number; readonly degrees: number }[];
  /** How many leads come in from each side; one from a corner counts at both. */
  readonly sides: Readonly<Record<Side, number>>;
  /** Strong borders that run out over the edge of the canvas with nothing to stop them, strongest first. */
  readonly exits: readonly Exit[];
  /** The stops of the path in their order. */
  readonly stops: readonly Stop[];
}

export interface LeadMeasure {
  readonly from:
    | { readonly kind: 'edge'; readonly side: Side }
    | { readonly kind: 'corner'; readonly corner: Corner }
    | { readonly kind: 'object'; readonly object: number }
    | { readonly kind: 'inside' };
  /** Canvas units along it. */
  readonly length: number;
  /** How far the line, carried on beyond its end, passes from the focal point, canvas units; missing without a focal point. */
  readonly miss?: number;
  /** Part of the diagonal. */
  readonly missShare?: number;
  /** The place on the line where it passes nearest. */
  readonly nearest?: Point;
  /** The way it goes where it ends: degrees, 0 to the right, 90 down. */
  readonly heading: number;
  /** Where it leaves the canvas when it is carried on and passes the focal point by. */
  readonly leaves?: { readonly at: Point; readonly side: Side; readonly corner?: Corner };
}

export interface Exit {
  readonly at: Point;
  readonly side: Side;
  readonly corner?: Corner;
  /** The areas on either side of the border; `GROUND` for the bare ground. */
  readonly areas: readonly [number, number];
  /** Pull of the border, as in `BorderStretch`. */
  readonly pull: number;
  /** How long it runs straight to the edge, canvas units. */
  readonly length: number;
}

export interface Stop {
  readonly object: number;
  /** The strongest place of its borders. */
  readonly at: Point;
  /** The emphasis there. */
  readonly strength: number;
}
