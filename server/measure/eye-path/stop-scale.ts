import type { Measures } from '../measures.js';

/** What the emphasis of the stops is told as a part of. */
export interface StopScale {
  readonly of: 'focal point' | 'strongest stop';
  /** Nought when nothing draws the eye anywhere on the path. */
  readonly strength: number;
}

/** That of the focal point, else that of the strongest stop. */
export function stopScale({ emphasis, eyePath }: Measures): StopScale {
  const strength = emphasis.focal?.strength ?? 0;
  if (strength > 0) return { of: 'focal point', strength };
  return { of: 'strongest stop', strength: Math.max(0, ...eyePath.stops.map((stop) => stop.strength)) };
}
