import type { BorderStretch } from '../borders/borders.js';
import { type FieldGrid, PASSAGE, REACH, counted, isSameGrid } from './grid.js';

/**
 * At which cells stretches are gathered, and how much of each counts there whatever it weighs: as runs of cells along
 * the rows. A cell is told by its place in rows that are one longer than the grid is wide, so that there is a place
 * behind each last cell too.
 */
export interface Footprints {
  /** The first run of each stretch, and behind the last stretch the number of all runs. */
  readonly starts: Uint32Array;
  /** The first place of each run. */
  readonly from: Uint16Array;
  /** The place behind each run. */
  readonly to: Uint16Array;
  /** The part of its stretch that counts in each run. */
  readonly counts: Float64Array;
}

/** What the runs are written to until it is known how many there are. */
let room: Omit<Footprints, 'starts'> = roomFor(1 << 12);

function roomFor(runs: number): Omit<Footprints, 'starts'> {
  return { from: new Uint16Array(runs), to: new Uint16Array(runs), counts: new Float64Array(runs) };
}

function largerRoom(runs: number): Omit<Footprints, 'starts'> {
  const larger = roomFor(2 * runs);
  larger.from.set(room.from);
  larger.to.set(room.to);
  larger.counts.set(room.counts);
  return larger;
}

/** The work grows with stretches x rows reached. */
export function footprintsOf(
  stretches: readonly BorderStretch[],
  { columns, rows, cellWidth, cellHeight }: FieldGrid,
  diagonal: number,
): Footprints {
  const outer = (REACH + PASSAGE / 2) * diagonal;
  const inner = (REACH - PASSAGE / 2) * diagonal;
  const starts = new Uint32Array(stretches.length + 1);
  let runs = 0;
  for (let index = 0; index < stretches.length; index++) {
    const { x, y } = (stretches[index] as BorderStretch).at;
    const firstRow = Math.max(0, Math.floor((y - outer) / cellHeight));
    const lastRow = Math.min(rows - 1, Math.floor((y + outer) / cellHeight));
    const most = runs + (lastRow - firstRow + 1) * (columns + 1);
    if (most > room.counts.length) room = largerRoom(most);
    const { from, to, counts } = room;
    for (let row = firstRow; row <= lastRow; row++) {
      const down = (row + 0.5) * cellHeight - y;
      if (Math.abs(down) >= outer) continue;
      const widest = Math.sqrt(outer * outer - down * down);
      const first = Math.max(0, columnAt(x - widest, cellWidth));
      const end = Math.min(columns, columnAt(x + widest, cellWidth));
      let [wholeFirst, wholeEnd] = [end, end];
      if (Math.abs(down) < inner) {
        const whole = Math.sqrt(inner * inner - down * down);
        wholeFirst = Math.min(end, Math.max(first, columnAt(x - whole, cellWidth)));
        wholeEnd = Math.max(wholeFirst, Math.min(end, columnAt(x + whole, cellWidth)));
      }
      const start = row * (columns + 1);
      if (wholeFirst < wholeEnd) {
        from[runs] = start + wholeFirst;
        to[runs] = start + wholeEnd;
        counts[runs++] = 1;
      }
      for (let cell = first; cell < end; cell++) {
        if (cell === wholeFirst) cell = wholeEnd;
        if (cell >= end) break;
        const across = (cell + 0.5) * cellWidth - x;
        from[runs] = start + cell;
        to[runs] = start + cell + 1;
        counts[runs++] = counted(Math.sqrt(across * across + down * down), diagonal);
      }
    }
    starts[index + 1] = runs;
  }
  const { from, to, counts } = room;
  return { starts, from: from.slice(0, runs), to: to.slice(0, runs), counts: counts.slice(0, runs) };
}

/** The first column whose middle lies no farther left than a place. */
function columnAt(x: number, cellWidth: number): number {
  return Math.ceil(x / cellWidth - 0.5);
}

interface Kept {
  readonly footprints: Footprints;
  readonly grid: FieldGrid;
  readonly diagonal: number;
}

/** Runs that are kept, twelve bytes each: those of all stretches of a plan of a hundred objects. */
const MOST_RUNS = 400_000;

/** The oldest first. */
const kept = new Map<readonly BorderStretch[], Kept>();
let runsKept = 0;

/**
 * `footprintsOf`, kept for a while: the same stretches are gathered by what they weigh in several ways, and in each
 * trial of a remedy.
 *
 * @param before other stretches, of which they are taken over where each lies where it lay
 */
export function keptFootprints(
  stretches: readonly BorderStretch[],
  grid: FieldGrid,
  diagonal: number,
  before?: readonly BorderStretch[],
): Footprints {
  const known = knownFootprints(stretches, grid, diagonal);
  if (known) return known;
  const earlier = before && lieAlike(stretches, before) && knownFootprints(before, grid, diagonal);
  const footprints = earlier || footprintsOf(stretches, grid, diagonal);
  if (earlier) forget(before);
  forget(stretches);
  runsKept += footprints.counts.length;
  kept.set(stretches, { footprints, grid, diagonal });
  for (const oldest of kept.keys()) {
    if (runsKept <= MOST_RUNS) break;
    forget(oldest);
  }
  return footprints;
}

function knownFootprints(
  stretches: readonly BorderStretch[],
  grid: FieldGrid,
  diagonal: number,
): Footprints | undefined {
  const known = kept.get(stretches);
  return known?.diagonal === diagonal && isSameGrid(known.grid, grid) ? known.footprints : undefined;
}

function forget(stretches: readonly BorderStretch[]): void {
  runsKept -= kept.get(stretches)?.footprints.counts.length ?? 0;
  kept.delete(stretches);
}

function lieAlike(stretches: readonly BorderStretch[], others: readonly BorderStretch[]): boolean {
  return (
    stretches.length === others.length &&
    stretches.every(({ at }, index) => {
      const other = (others[index] as BorderStretch).at;
      return at.x === other.x && at.y === other.y;
    })
  );
}
