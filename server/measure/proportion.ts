/** A proportion of the trade that the canvas has within 1 %. */
export interface NamedProportion {
  /** `golden`, `root 2`, `square`, `A4 (ISO 216)`, `figure 20`. */
  readonly name: string;
  readonly kind: 'simple' | 'golden' | 'root' | 'paper' | 'stock';
  /** Long side over short side. */
  readonly ratio: number;
  /** How far the canvas's own ratio is from it, part of it, signed. */
  readonly difference: number;
}

export interface ProportionMeasure {
  /** Long side over short side. */
  readonly ratio: number;
  /** Nearest first. */
  readonly named: readonly NamedProportion[];
}
