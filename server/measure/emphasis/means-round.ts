import type { Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { VisibleAreas } from '../areas/areas.js';
import { type BorderStretch, GROUND } from '../borders/borders.js';
import type { Centre } from './centre.js';
import { type FieldGrid, REACH, fieldGrid, middleOf } from './grid.js';
import { labelMap } from '../areas/label-map.js';
import { type Memory, sameInputs } from '../memory.js';

const DETAIL = { fine: 1, some: 0.5, little: 0 } as const;
/** Parts of the diagonal. */
const RING = { from: REACH, to: 0.2 } as const;
const ROUNDING = 1e-9;

/** A part of the picture in which one area is seen. */
export interface SeenPart {
  /** Index of the object, or `GROUND`. */
  readonly area: number;
  readonly share: number;
}

/** Mean detail by area, at the focal point and elsewhere. */
export function detailRound(
  { objects }: Plan,
  seenThere: readonly SeenPart[],
  shares: readonly number[],
): { readonly there: number; readonly elsewhere: number } {
  const detailOf = (area: number) => DETAIL[objects[area]?.detail ?? 'little'];
  const share = seenThere.reduce((sum, part) => sum + part.share, 0);
  const inside = seenThere.reduce((sum, part) => sum + part.share * detailOf(part.area), 0);
  const all = shares.reduce((sum, part, object) => sum + part * detailOf(object), 0);
  return { there: ratio(inside, share), elsewhere: Math.max(0, ratio(all - inside, 1 - share)) };
}

/** What is seen within 8 % of the diagonal of the focal point, parts of the picture, by the map of labels. */
export function seenRound(plan: Plan, areas: VisibleAreas, memory: Memory): readonly SeenPart[] {
  const { canvas } = plan;
  const at = plan.focus?.at ?? { x: 0, y: 0 };
  const map = labelMap(plan, areas, memory);
  return memory.recall('seen round focus', '', [map, at.x, at.y, canvas.diagonal], () => {
    // Counted from `GROUND` up.
    const counts = new Int32Array(plan.objects.length - GROUND);
    const { columns, rows, labels } = map;
    for (let row = 0; row < rows; row++) {
      const down = ((row + 0.5) / rows) * canvas.height - at.y;
      const across = Math.sqrt((REACH * canvas.diagonal) ** 2 - down ** 2);
      if (!(across > 0)) continue;
      const column = (x: number) => Math.ceil((x / canvas.width) * columns - 0.5);
      const ofRow = labels[row] as Int32Array;
      const to = Math.min(columns, column(at.x + across));
      for (let cell = Math.max(0, column(at.x - across)); cell < to; cell++) {
        const place = (ofRow[cell] as number) - GROUND;
        counts[place] = (counts[place] as number) + 1;
      }
    }
    const parts: SeenPart[] = [];
    counts.forEach((count, place) => {
      if (count > 0) parts.push({ area: place + GROUND, share: count / (columns * rows) });
    });
    return parts.sort((one, other) => other.share - one.share || one.area - other.area);
  });
}

/** What each stretch of a border of others than the object at the focal point adds, in order. */
interface Bustle {
  readonly all: readonly number[];
  /** In the ring round the focal point. */
  readonly ring: readonly number[];
}

/** What was found of lists of stretches with one focal point and what lies there. */
export type KeptBustle = WeakMap<readonly BorderStretch[], Bustle>;

/**
 * How busy the ring round the focal point is with borders of others than the object there, and the whole picture.
 *
 * @param lists the stretches of all borders
 */
export function bustleRound(
  { focus, canvas }: Plan,
  lists: readonly (readonly BorderStretch[])[],
  centre: Centre,
  kept: KeptBustle = new WeakMap(),
): { readonly there: number; readonly elsewhere: number } {
  const { diagonal } = canvas;
  const grid = fieldGrid(canvas);
  const at = focus?.at ?? { x: 0, y: 0 };
  let [ring, all] = [0, 0];
  for (const stretches of lists) {
    let bustle = kept.get(stretches);
    if (!bustle) {
      bustle = bustleOf(stretches, at, diagonal, centre);
      kept.set(stretches, bustle);
    }
    // One by one, so that rounding is the same whatever was kept.
    for (const amount of bustle.all) all += amount;
    for (const amount of bustle.ring) ring += amount;
  }
  const area = (canvas.width * canvas.height) / diagonal ** 2;
  const cells = cellsInRing(grid, at, diagonal);
  return { there: ratio(ring, (area * cells) / (grid.columns * grid.rows)), elsewhere: ratio(all, area) };
}

function bustleOf(stretches: readonly BorderStretch[], at: Point, diagonal: number, centre: Centre): Bustle {
  const all: number[] = [];
  const ring: number[] = [];
  for (const stretch of stretches) {
    if (stretch.pull === 0 || centre.has(stretch.front) || centre.has(stretch.behind)) continue;
    const amount = (stretch.length * stretch.pull) / diagonal;
    all.push(amount);
    if (isInRing(apart(stretch.at, at) / diagonal)) ring.push(amount);
  }
  return { all, ring };
}

let lately: { readonly inputs: readonly number[]; readonly cells: number } | undefined;

/** How many cells have their middle in the ring round a place; the last count is kept. */
function cellsInRing(grid: FieldGrid, at: Point, diagonal: number): number {
  const { columns, rows, cellWidth, cellHeight } = grid;
  const inputs = [columns, rows, cellWidth, cellHeight, at.x, at.y, diagonal];
  if (lately && sameInputs(lately.inputs, inputs)) return lately.cells;
  let cells = 0;
  for (let cell = 0; cell < columns * rows; cell++) {
    if (isInRing(apart(middleOf(grid, cell), at) / diagonal)) cells++;
  }
  lately = { inputs, cells };
  return cells;
}

/** Whether a distance from the focal point, in diagonals, lies in the ring that isolation looks at. */
export function isInRing(away: number): boolean {
  return away > RING.from + ROUNDING && away <= RING.to + ROUNDING;
}

/** The distance of two places by a plain root, many times quicker than the careful one. */
export function apart(one: Point, other: Point): number {
  const dx = one.x - other.x;
  const dy = one.y - other.y;
  return Math.sqrt(dx * dx + dy * dy);
}

/** What part something is of a whole; 0 of nothing. */
export function ratio(part: number, whole: number): number {
  return whole > ROUNDING ? part / whole : 0;
}
