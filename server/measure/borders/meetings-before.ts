import type { Meetings } from './meeting.js';
import { type RingSides, type Sides, markCells } from './sides.js';

/** Areas and what was found of them. */
export interface FoundMeetings {
  readonly areas: readonly Sides[];
  readonly meetings: readonly Meetings[];
}

/**
 * 1 for each area that is another than before, and for each with a side in a cell in which a ring has or had a side
 * that is not the same; 0 for the first, which lies behind all others and so in front of nothing.
 */
export function nearChanges(areas: readonly Sides[], before: readonly Sides[], count: number): Uint8Array {
  const changed = new Uint8Array(count);
  areas.forEach((area, index) => {
    const earlier = before[index];
    if (earlier && earlier !== area) markChanges(area, earlier, changed);
  });
  return Uint8Array.from(areas, (area, index) =>
    index > 0 && (area !== before[index] || passesMarked(area, changed)) ? 1 : 0,
  );
}

function markChanges(area: Sides, earlier: Sides, marked: Uint8Array): void {
  const places = new Map(earlier.rings.map((ring, place) => [ring, place]));
  const kept = new Set<RingSides>();
  let last = -1;
  for (const ring of area.rings) {
    const place = places.get(ring);
    // Sides of one cell are compared in the order of the rings.
    if (place === undefined || place < last) markCells(ring, marked);
    else {
      kept.add(ring);
      last = place;
    }
  }
  for (const ring of earlier.rings) if (!kept.has(ring)) markCells(ring, marked);
}

function passesMarked({ cells }: Sides, marked: Uint8Array): boolean {
  for (let i = 0; i < cells.length; i += 2) if (marked[cells[i] as number] === 1) return true;
  return false;
}
