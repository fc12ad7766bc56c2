import type { Side } from '../../grammar/index.js';
import type { Point } from '../plan/geometry/point.js';

/** Places where outlines nearly or just meet, which joins what should lie apart. */
export interface TangentMeasure {
  /** Pairs that touch or nearly do, without crossing, nearest first. */
  readonly touches: readonly Touch[];
  /** Objects that end at, or just short of or beyond, an edge of the canvas. */
  readonly edges: readonly EdgeTouch[];
  /** Objects that fill a corner of the canvas exactly: a point of theirs lies in it. */
  readonly corners: readonly CornerFill[];
}

export interface Touch {
  readonly one: number;
  readonly other: number;
  /** Canvas units; 0 where they touch. */
  readonly gap: number;
  readonly shareOfDiagonal: number;
  /** Midway between them. */
  readonly at: Point;
  /** Which way `other` has to go to get clear of `one`, a vector of length 1. */
  readonly away: Point;
}

export interface EdgeTouch {
  readonly object: number;
  readonly side: Side;
  /** Canvas units, negative when it runs over the edge by so little. */
  readonly gap: number;
  readonly shareOfDiagonal: number;
  readonly at: Point;
}

export interface CornerFill {
  readonly object: number;
  readonly corner: 'upper left' | 'upper right' | 'lower left' | 'lower right';
  readonly at: Point;
}
