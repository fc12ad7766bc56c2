import type { Ring } from '../plan/geometry/outline.js';
import type { Point } from '../plan/geometry/point.js';
import { type CellGrid, type Region, holdsBox, regionOf } from './region.js';
import type { Box } from './scene.js';
import { fitted, textWidth } from './text-width.js';

/** More names than this hide the picture they explain. */
const MOST_NAMES = 60;
const LONGEST_NAME_EMS = 11;

export interface Wanted {
  readonly text: string;
  /** What is seen of the thing named. */
  readonly rings: readonly Ring[];
  /** Room to leave before the text, for a sign. */
  readonly before?: number;
}

export interface Placed {
  /** Index into what was wanted. */
  readonly index: number;
  readonly text: string;
  /** Left end and base line. */
  readonly x: number;
  readonly y: number;
  /** Everything that the name covers. */
  readonly box: Box;
  /** From the name to the thing, when the name does not stand on it. */
  readonly leader?: { readonly from: Point; readonly to: Point };
}

export interface Room {
  readonly grid: CellGrid;
  readonly picture: Box;
  readonly size: number;
  /** Never to be covered. */
  readonly kept: readonly Box[];
  /** To be covered only when there is no other place. */
  readonly spared: readonly Box[];
}

/**
 * Where names can stand: on the thing itself, as near to its middle as there is room; otherwise beside it with a
 * leader. Earlier names choose first. A name that finds no place is left out, and so is one of a thing that is
 * not seen.
 */
export function placeNames(wanted: readonly Wanted[], room: Room): readonly Placed[] {
  const taken: Box[] = [...room.kept];
  const placed: Placed[] = [];
  for (const [index, name] of wanted.entries()) {
    if (placed.length >= MOST_NAMES) break;
    const region = regionOf(name.rings, room.grid);
    const text = fitted(name.text, room.size, LONGEST_NAME_EMS * room.size);
    const before = name.before ?? 0;
    const extent = { width: textWidth(text, room.size) + before, height: 1.1 * room.size };
    const heart = region?.heart ?? middleOf(name.rings);
    if (heart === undefined) continue;
    const box = (region && onIt(region, extent, taken, room)) ?? besideIt(heart, extent, taken, room);
    if (box === undefined) continue;
    taken.push(box);
    const baseline = { x: box.x + before, y: box.y + 0.5 * box.height + 0.35 * room.size };
    const inside = region !== undefined && contains(box, heart) ? undefined : leaderTo(heart, box, room.size);
    const stands = region !== undefined && holdsBox(region, box);
    placed.push({ index, text, ...baseline, box, ...(stands || !inside ? {} : { leader: inside }) });
  }
  return placed;
}

type Extent = Pick<Box, 'width' | 'height'>;

function onIt(region: Region, extent: Extent, taken: readonly Box[], room: Room): Box | undefined {
  const { grid, centre } = region;
  for (const air of [0.55, 0.2, 0.02]) {
    for (const avoided of [[...taken, ...room.spared], taken]) {
      let best: { readonly box: Box; readonly distance: number } | undefined;
      for (let row = 0; row < grid.rows; row++) {
        for (let column = 0; column < grid.columns; column++) {
          const x = (column + 0.5) * grid.cell;
          const y = (row + 0.5) * grid.cell;
          // A name may sit off the middle sideways sooner than up or down: lines of text are read along.
          const distance = Math.hypot(x - centre.x, 1.3 * (y - centre.y));
          if (best !== undefined && distance >= best.distance) continue;
          const box = boxAround({ x, y }, extent);
          if (!holdsBox(region, grown(box, air * room.size))) continue;
          if (avoided.some((other) => overlap(grown(box, 0.12 * room.size), other))) continue;
          best = { box, distance };
        }
      }
      if (best !== undefined) return best.box;
    }
  }
  return undefined;
}

const DIRECTIONS = 24;

function besideIt(heart: Point, extent: Extent, taken: readonly Box[], room: Room): Box | undefined {
  for (const avoided of [[...taken, ...room.spared], taken]) {
    let best: { readonly box: Box; readonly cost: number } | undefined;
    for (let reach = 1.6; reach <= 7; reach += 0.6) {
      for (let direction = 0; direction < DIRECTIONS; direction++) {
        const angle = (2 * Math.PI * direction) / DIRECTIONS - Math.PI / 3;
        const away = reach * room.size;
        const middle = {
          x: heart.x + Math.cos(angle) * (away + extent.width / 2),
          y: heart.y + Math.sin(angle) * (away + extent.height / 2),
        };
        const box = boxAround(middle, extent);
        const cost = reach + 0.01 * direction;
        if (best !== undefined && cost >= best.cost) continue;
        if (!within(grown(box, 0.3 * room.size), room.picture)) continue;
        if (avoided.some((other) => overlap(grown(box, 0.15 * room.size), other))) continue;
        best = { box, cost };
      }
      if (best !== undefined) return best.box;
    }
  }
  return undefined;
}

/** From the nearest place on the name's box to the thing. */
function leaderTo(
  heart: Point,
  box: Box,
  size: number,
): { readonly from: Point; readonly to: Point } | undefined {
  const air = grown(box, 0.12 * size);
  const from = {
    x: Math.min(air.x + air.width, Math.max(air.x, heart.x)),
    y: Math.min(air.y + air.height, Math.max(air.y, heart.y)),
  };
  return Math.hypot(from.x - heart.x, from.y - heart.y) < 0.3 * size ? undefined : { from, to: heart };
}

function middleOf(rings: readonly Ring[]): Point | undefined {
  const [ring] = rings;
  if (ring === undefined || ring.length < 2) return undefined;
  let x = 0;
  let y = 0;
  for (let i = 0; i + 1 < ring.length; i += 2) {
    x += ring[i] ?? 0;
    y += ring[i + 1] ?? 0;
  }
  return { x: (2 * x) / ring.length, y: (2 * y) / ring.length };
}

export function boxAround({ x, y }: Point, { width, height }: Extent): Box {
  return { x: x - width / 2, y: y - height / 2, width, height };
}

export function grown({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

function within(inner: Box, outer: Box): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

function contains(box: Box, { x, y }: Point): boolean {
  return x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;
}
