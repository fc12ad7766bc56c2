import type { Ring } from '../../plan/geometry/outline.js';
import { type Box, boxContains } from '../../plan/geometry/point.js';
import { ringsApart } from './apart.js';
import { containsPoint } from './areas.js';
import { sameInputs } from '../memory.js';
import { areaOfRing, boxOfRing } from './kept-rings.js';

/** A part of a visible area that hangs together: an outer ring with the holes in it. */
export interface RingPiece {
  readonly rings: readonly Ring[];
  readonly box: Box;
  /** Squared canvas units. */
  readonly area: number;
}

const known = new WeakMap<readonly Ring[], readonly RingPiece[]>();

/** By their outer ring, so that a part stays the same one as long as its rings. */
const parts = new WeakMap<Ring, RingPiece>();

/** The parts of a visible area, largest first; outer rings and holes run in opposite directions, as areas give them. */
export function ringPieces(rings: readonly Ring[]): readonly RingPiece[] {
  const pieces = known.get(rings) ?? piecesOf(rings);
  known.set(rings, pieces);
  return pieces;
}

function piecesOf(rings: readonly Ring[]): readonly RingPiece[] {
  const signed = ringsApart(rings)
    .map((ring) => ({ ring, area: areaOfRing(ring) }))
    .sort((a, b) => Math.abs(b.area) - Math.abs(a.area));
  // A hole is smaller than what it is a hole in, so the largest ring is an outer one.
  const outward = Math.sign(signed[0]?.area ?? 0);
  const outers = signed
    .filter(({ area }) => area * outward > 0)
    .map(({ ring, area }) => ({ rings: [ring], box: boxOfRing(ring), area: Math.abs(area) }));
  const smaller = outers.slice(1);
  for (const { ring, area } of signed) {
    if (area * outward >= 0) continue;
    // What lies in none of the smaller ones lies in the largest: that need not be asked of all the holes of a ground.
    const around =
      smaller.findLast(({ box, rings: [outer] }) => outer && isHoleIn(ring, outer, box)) ?? outers[0];
    around?.rings.push(ring);
    if (around) around.area += area * outward;
  }
  return outers.sort((a, b) => b.area - a.area).map(samePart);
}

/** The part that there was of the same rings, if there was one. */
function samePart(part: RingPiece): RingPiece {
  const [outer] = part.rings;
  if (!outer) return part;
  const before = parts.get(outer);
  if (before && sameInputs(before.rings, part.rings)) return before;
  parts.set(outer, part);
  return part;
}

/** A hole may touch the ring it lies in, so most of its corners decide. */
function isHoleIn(hole: Ring, outer: Ring, box: Box): boolean {
  if (!boxContains(box, boxOfRing(hole))) return false;
  let inside = 0;
  const corners = hole.length / 2;
  for (let corner = 0; corner < corners; corner++) {
    const point = { x: hole[2 * corner] as number, y: hole[2 * corner + 1] as number };
    if (containsPoint([outer], point)) inside++;
  }
  return inside > corners / 2;
}
