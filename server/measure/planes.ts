import type { Plane } from '../../grammar/index.js';

/** What is seen of one plane. */
export interface PlaneMeasure {
  readonly plane: Plane;
  /** Part of the picture. */
  readonly share: number;
  /** Area-weighted mean Munsell value of what has one. */
  readonly value?: number;
  /** Area-weighted mean Munsell chroma as painted. */
  readonly chroma?: number;
}
