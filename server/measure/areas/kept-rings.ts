import { type Ring, boxOfRings } from '../../plan/geometry/outline.js';
import { signedArea } from '../../plan/geometry/path.js';
import type { Box } from '../../plan/geometry/point.js';

const boxes = new WeakMap<Ring, Box>();
const areas = new WeakMap<Ring, number>();

/** The box round a ring, kept as long as it. */
export function boxOfRing(ring: Ring): Box {
  let box = boxes.get(ring);
  if (!box) {
    box = boxOfRings([ring]);
    boxes.set(ring, box);
  }
  return box;
}

/** The signed area of a ring, kept as long as it. */
export function areaOfRing(ring: Ring): number {
  let area = areas.get(ring);
  if (area === undefined) {
    area = signedArea(ring);
    areas.set(ring, area);
  }
  return area;
}
