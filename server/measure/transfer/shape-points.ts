import type { Point } from '../../plan/geometry/point.js';

/** What a place of a shape is to the painter who looks for it. */
export type PlaceKind =
  'corner' | 'centre' | 'end of an axis' | 'leftmost' | 'topmost' | 'rightmost' | 'lowest' | 'on the curve';

export interface ShapePoint {
  readonly at: Point;
  readonly kind: PlaceKind;
}
