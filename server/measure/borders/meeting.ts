import type { CanvasSize } from '../areas/areas.js';
import { sameInputs } from '../memory.js';
import { type FoundMeetings, nearChanges } from './meetings-before.js';
import { type RingSides, SAME_PLACE, type Sides, cellOf, markCells, sortingGrid } from './sides.js';

/** Where the sides of one area lie on those of areas behind it; the same one no longer than these sides are. */
export interface Meetings {
  /**
   * Four numbers a piece: the side, where along it the piece begins and ends (canvas units), which area lies behind.
   */
  readonly met: readonly number[];
  /**
   * Of each piece the ring of the area behind: by itself and not by its number, which becomes another wherever one
   * before it comes or goes.
   */
  readonly ringsBehind: readonly RingSides[];
  /** The areas behind, each once. */
  readonly behind: readonly number[];
}

/**
 * Who borders on whom. `areas` run from back to front and partition the canvas, so a piece of border is a side of
 * one that lies on a side of another which runs the other way. Each piece is told once, for the area in front.
 * Compared are only sides that pass one cell of a grid.
 *
 * @param last what was found of other areas on a canvas of this size: it is taken over for those that no ring comes
 * near which is not the same at its place
 */
export function meetingsOf(
  areas: readonly Sides[],
  canvas: CanvasSize,
  last?: FoundMeetings,
): readonly Meetings[] {
  const same = SAME_PLACE * Math.hypot(canvas.width, canvas.height);
  const grid = sortingGrid(canvas);
  const count = grid.columns * grid.rows;
  const earlier = last?.areas.length === areas.length ? last : undefined;
  const touched = earlier && nearChanges(areas, earlier.areas, count);
  const found: (Found | undefined)[] = areas.map((_, area) =>
    !touched || touched[area] === 1 ? { met: [], ringsBehind: [], behind: [] } : undefined,
  );
  const { starts, areaOf, sideOf } = sorted(areas, count, touched);
  for (let cell = 0; cell + 1 < starts.length; cell++) {
    const end = starts[cell + 1] as number;
    for (let i = starts[cell] as number; i < end; i++) {
      const behind = areaOf[i] as number;
      for (let j = i + 1; j < end; j++) {
        const front = areaOf[j] as number;
        if (front !== behind && found[front]) {
          compare(cell, front, sideOf[j] as number, behind, sideOf[i] as number);
        }
      }
    }
  }
  return found.map((own, area) => {
    const known = earlier?.meetings[area];
    if (!own) return known ?? NO_MEETINGS;
    if (!known || !sameInputs(own.met, known.met)) return own;
    const isSame = areas[area] === earlier?.areas[area] && sameInputs(own.ringsBehind, known.ringsBehind);
    return isSame ? known : { ...own, met: known.met };
  });

  function compare(cell: number, front: number, side: number, behind: number, other: number): void {
    const { ends } = areas[front] as Sides;
    const { ends: others, rings, ringOf } = areas[behind] as Sides;
    const ax = ends[4 * side] as number;
    const ay = ends[4 * side + 1] as number;
    let ux = (ends[4 * side + 2] as number) - ax;
    let uy = (ends[4 * side + 3] as number) - ay;
    const length = Math.sqrt(ux * ux + uy * uy);
    ux /= length;
    uy /= length;
    const px = (others[4 * other] as number) - ax;
    const py = (others[4 * other + 1] as number) - ay;
    const qx = (others[4 * other + 2] as number) - ax;
    const qy = (others[4 * other + 3] as number) - ay;
    // Along the side, and off it: the other begins where this one ends.
    const to = ux * px + uy * py;
    const from = ux * qx + uy * qy;
    const begin = from > 0 ? from : 0;
    const end = to < length ? to : length;
    if (!(end - begin > same)) return;
    const offTo = ux * py - uy * px;
    const offFrom = ux * qy - uy * qx;
    const slope = (offTo - offFrom) / (to - from);
    if (Math.abs(offFrom + slope * (begin - from)) > same) return;
    if (Math.abs(offFrom + slope * (end - from)) > same) return;
    // Two long sides pass many cells together: the one with the middle of the piece tells it.
    const middle = (begin + end) / 2;
    if (cellOf(grid, ax + ux * middle, ay + uy * middle) !== cell) return;
    const own = found[front];
    if (!own) return;
    own.met.push(side, begin, end, behind);
    own.ringsBehind.push(rings[ringOf[other] as number] as RingSides);
    if (!own.behind.includes(behind)) own.behind.push(behind);
  }
}

interface Found extends Meetings {
  readonly met: number[];
  readonly ringsBehind: RingSides[];
  readonly behind: number[];
}

const NO_MEETINGS: Meetings = { met: [], ringsBehind: [], behind: [] };

/**
 * All sides by cell, within a cell by area from back to front.
 *
 * @param wanted 1 for each area whose cells are looked at; all are unless given
 */
function sorted(
  areas: readonly Sides[],
  count: number,
  wanted?: Uint8Array,
): { readonly starts: Int32Array; readonly areaOf: Int32Array; readonly sideOf: Int32Array } {
  const looked = new Uint8Array(count).fill(wanted ? 0 : 1);
  if (wanted) for (const [index, area] of areas.entries()) if (wanted[index] === 1) markCells(area, looked);
  const starts = new Int32Array(count + 1);
  for (const { cells } of areas) {
    for (let i = 0; i < cells.length; i += 2) {
      if (looked[cells[i] as number] === 0) continue;
      const next = (cells[i] as number) + 1;
      starts[next] = (starts[next] as number) + 1;
    }
  }
  for (let cell = 0; cell < count; cell++) {
    starts[cell + 1] = (starts[cell + 1] as number) + (starts[cell] as number);
  }
  const places = starts.slice(0, count);
  const total = starts[count] as number;
  const areaOf = new Int32Array(total);
  const sideOf = new Int32Array(total);
  areas.forEach(({ cells }, area) => {
    for (let i = 0; i < cells.length; i += 2) {
      const cell = cells[i] as number;
      if (looked[cell] === 0) continue;
      const place = places[cell] as number;
      places[cell] = place + 1;
      areaOf[place] = area;
      sideOf[place] = cells[i + 1] as number;
    }
  });
  return { starts, areaOf, sideOf };
}
