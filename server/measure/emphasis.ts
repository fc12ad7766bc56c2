import type { Means } from '../../grammar/index.js';
import type { Point } from '../plan/geometry/point.js';

/**
 * How strongly places draw the eye. Heuristic: over every border between two visible areas, length x edge sharpness x
 * (0.6 dV / 10 + 0.4 dab / 100), gathered within 8 % of the diagonal, lengths in diagonals.
 */
export interface EmphasisMeasure {
  readonly field: EmphasisField;
  /** The places that are stronger than all round them, strongest first, each at least 8 % of the diagonal from the next. */
  readonly places: readonly StrongPlace[];
  /** Missing without a focal point on the canvas. */
  readonly focal?: FocalEmphasis;
  /** Strong places within 5 % of the diagonal from an edge of the canvas, strongest first. */
  readonly nearEdge: readonly StrongPlace[];
}

/** The strength at the middles of a grid of equal cells over the canvas. */
export interface EmphasisField {
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the upper left. */
  readonly strengths: readonly number[];
  readonly strongest: number;
}

export interface StrongPlace {
  readonly at: Point;
  readonly strength: number;
  /** The two areas whose border counts most there; `GROUND` for the bare ground. */
  readonly areas: readonly [number, number];
  /** From the nearest edge of the canvas, part of the diagonal. */
  readonly fromEdge: number;
}

export interface FocalEmphasis {
  /** The greatest strength within 8 % of the diagonal from the focal point. */
  readonly strength: number;
  readonly at: Point;
  /** 1 when no place elsewhere is stronger. */
  readonly rank: number;
  /** Places elsewhere that have at least nine tenths of its strength, strongest first. */
  readonly rivals: readonly StrongPlace[];
  /** All six, in the order of the trade's list. */
  readonly means: readonly MeansMeasure[];
}

/** Whether the focal point has one of the means by which a place wins the eye. */
export interface MeansMeasure {
  readonly means: Means;
  /** Where the plan says that it is to win by this; missing when it does not say so. */
  readonly stated: boolean;
  /** The figure at the focal point and the one it has to match or pass elsewhere; their meaning is the means' own. */
  readonly there: number;
  readonly elsewhere: number;
  readonly holds: boolean;
  /** The two figures as a painter reads them: `a contrast of 4.2 steps of value there, 6 at the strongest place elsewhere`. */
  readonly inWords: string;
}
