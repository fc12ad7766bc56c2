import type { CanvasSides } from './division.js';
import { type Point, between, distance } from './geometry/point.js';
import type { Division, DivisionLine } from './plan.js';

/** Part of the diagonal by which places may differ through rounding and be the same. */
const ROUNDING = 1e-9;

/**
 * All places inside the canvas where lines of one division meet, its named crossings first; canvas units. Uprights and
 * levels meet at named crossings only; sloping lines, as those of the armature, of reciprocals and of root rectangles,
 * meet at more places than have a name.
 */
export function meetingsOf(
  { lines, crossings }: Pick<Division, 'lines' | 'crossings'>,
  sides: CanvasSides,
): readonly Point[] {
  const slack = ROUNDING * Math.hypot(sides.width, sides.height);
  const sloping = lines.filter(({ from, to }) => from.x !== to.x && from.y !== to.y);
  const met = sloping.flatMap((one) => lines.flatMap((other) => meeting(one, other) ?? []));
  const places = crossings.map(({ at }) => at);
  for (const place of met) {
    const isNew = places.every((known) => distance(known, place) > slack);
    if (isNew && isInside(place, sides, slack)) places.push(place);
  }
  return places;
}

/** Where two lines cross or touch; none for two in one direction. */
function meeting(one: DivisionLine, other: DivisionLine): Point | undefined {
  const [ux, uy] = [one.to.x - one.from.x, one.to.y - one.from.y];
  const [vx, vy] = [other.to.x - other.from.x, other.to.y - other.from.y];
  const turn = ux * vy - uy * vx;
  if (Math.abs(turn) <= ROUNDING * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return undefined;
  const [wx, wy] = [other.from.x - one.from.x, other.from.y - one.from.y];
  const parts = [(wx * vy - wy * vx) / turn, (wx * uy - wy * ux) / turn] as const;
  const isOnBoth = parts.every((part) => part >= -ROUNDING && part <= 1 + ROUNDING);
  return isOnBoth ? between(one.from, one.to, parts[0]) : undefined;
}

function isInside({ x, y }: Point, { width, height }: CanvasSides, slack: number): boolean {
  return Math.min(x, width - x, y, height - y) > slack;
}
