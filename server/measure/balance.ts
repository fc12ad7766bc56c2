/**
 * How the picture hangs on its vertical middle, as a steelyard balances (Poore 1903). Visual weight is a heuristic:
 * visible share x (difference of Munsell value from the picture's mean + a tenth of the Munsell chroma).
 */
export interface BalanceMeasure {
  /** Every object that has weight, heaviest first. */
  readonly weights: readonly ObjectWeight[];
  /** Of the bare ground. */
  readonly ground: number;
  readonly total: number;
  /** Where the centre of weight lies, right of the middle counted positive, as a part of the width; missing when nothing weighs. */
  readonly offset?: number;
  /** The same as a place from the left edge, canvas units. */
  readonly centre?: number;
}

export interface ObjectWeight {
  readonly object: number;
  readonly weight: number;
  /** Distance of its centre of visible area from the vertical middle, part of the width, right positive. */
  readonly arm: number;
  /** Weight x arm. */
  readonly moment: number;
}
