import type { Side } from '../../grammar/index.js';
import type { Point } from '../plan/geometry/point.js';

/** Stands for the bare ground where an area is named by the index of its object. */
export const GROUND = -1;

/** A short stretch of the border between two areas that are seen: it stands for one place. */
export interface BorderStretch {
  /** Its middle, canvas units. */
  readonly at: Point;
  /** Canvas units; at most half a percent of the diagonal. */
  readonly length: number;
  /** Direction of the border, radians, 0 to pi: which way along it is not told. */
  readonly direction: number;
  /** The area in front, by the index of its object. */
  readonly front: number;
  /** The area behind it, or `GROUND`. */
  readonly behind: number;
  /** Difference of Munsell value; 0 where one of the two has none. */
  readonly valueContrast: number;
  /** Distance in CIELAB a*, b*. */
  readonly colourContrast: number;
  /** Hard 1, firm 0.7, soft 0.35, lost 0.1. */
  readonly sharpness: number;
  /** Sharpness x (0.6 valueContrast / 10 + 0.4 colourContrast / 100): how much a unit of its length draws the eye. */
  readonly pull: number;
}

/** All of the border between two areas. */
export interface Border {
  readonly front: number;
  readonly behind: number;
  /** Canvas units. */
  readonly length: number;
  readonly sharpness: number;
  readonly valueContrast: number;
  readonly colourContrast: number;
  readonly pull: number;
}

export interface BorderMeasure {
  readonly stretches: readonly BorderStretch[];
  /** One for each pair that has a border, longest first. */
  readonly borders: readonly Border[];
  /** Where areas that are seen meet the edge of the canvas; canvas units. */
  readonly atEdge: readonly { readonly area: number; readonly side: Side; readonly length: number }[];
}
