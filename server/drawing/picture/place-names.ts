import type { Ring } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import { boxAround, grown, holdsPoint, isWithin, overlap } from './boxes.js';
import { type CellMap, type Region, holdsBox, ownerAt, regionOf } from './region.js';
import type { Box } from '../scene.js';
import { BOLD_WIDTH, fitted, textWidth } from '../captions/text-width.js';

/** More names than this hide the picture they explain. */
const MOST_NAMES = 40;
/** After so many in a row that found no place, the smaller ones will find none either. */
const MOST_IN_VAIN = 60;
const LONGEST_NAME_EMS = 11;

export interface Wanted {
  readonly text: string;
  /** Index of the thing named in the map of cells. */
  readonly owner: number;
  /** What is seen of it. */
  readonly rings: readonly Ring[];
  /** Room to leave before the text, for a sign. */
  readonly before: number;
  readonly bold: boolean;
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
  /** Index in the map of what the name stands on; undefined for bare ground. */
  readonly on: number | undefined;
  /** From the name to the thing, when the name does not stand on it. */
  readonly leader?: Leader;
}

export interface Leader {
  readonly from: Point;
  readonly to: Point;
}

export interface Room {
  readonly map: CellMap;
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
  let inVain = 0;
  for (const [index, { text: whole, owner, rings, before, bold }] of wanted.entries()) {
    if (placed.length >= MOST_NAMES) break;
    const region = regionOf(room.map, owner);
    const heart = region?.heart ?? middleOf(rings);
    if (heart === undefined) continue;
    const text = fitted(whole, room.size, LONGEST_NAME_EMS * room.size);
    const extent = {
      width: textWidth(text, room.size) * (bold ? BOLD_WIDTH : 1) + before,
      height: 1.1 * room.size,
    };
    const place = placeFor({ owner, region, heart, extent }, taken, room);
    if (place === undefined) {
      if (++inVain >= MOST_IN_VAIN) break;
      continue;
    }
    const { box, leader } = place;
    inVain = 0;
    taken.push(box);
    placed.push({
      index,
      text,
      x: box.x + before,
      y: box.y + 0.5 * box.height + 0.35 * room.size,
      box,
      on: ownerAt(room.map, { x: box.x + box.width / 2, y: box.y + box.height / 2 }),
      ...(leader === undefined ? {} : { leader }),
    });
  }
  return placed;
}

type Extent = Pick<Box, 'width' | 'height'>;

interface Thing {
  readonly owner: number;
  readonly region: Region | undefined;
  readonly heart: Point;
  readonly extent: Extent;
}

/** A short leader is better than a name across a lead, and that better than a long leader. */
function placeFor(
  thing: Thing,
  taken: readonly Box[],
  room: Room,
): { readonly box: Box; readonly leader?: Leader } | undefined {
  const { region, heart, extent } = thing;
  const clear = [...taken, ...room.spared];
  const onIt = (avoided: readonly Box[]) => region && standingOn(region, extent, avoided, room);
  const besideIt = (avoided: readonly Box[], most: number) => {
    const box = standingBeside(thing, avoided, most, room);
    if (box === undefined) return undefined;
    const leader = leaderTo(heart, box, room.size);
    return leader === undefined ? { box } : { box, leader };
  };
  const first = onIt(clear);
  if (first !== undefined) return { box: first };
  const near = besideIt(clear, SHORT_LEADER_COST);
  if (near !== undefined) return near;
  const across = onIt(taken);
  if (across !== undefined) return { box: across };
  return besideIt(clear, Infinity) ?? besideIt(taken, Infinity);
}

/** The place nearest to the middle of the thing, with as much air round it as there is. */
function standingOn(region: Region, extent: Extent, avoided: readonly Box[], room: Room): Box | undefined {
  const { map, extent: cells } = region;
  const { centre } = cells;
  if (extent.width > (cells.right - cells.left + 1) * map.cell) return undefined;
  for (const air of [0.55, 0.2, 0.02]) {
    let best: { readonly box: Box; readonly distance: number } | undefined;
    for (let row = cells.top; row <= cells.bottom; row++) {
      for (let column = cells.left; column <= cells.right; column++) {
        const x = (column + 0.5) * map.cell;
        const y = (row + 0.5) * map.cell;
        // A name may sit off the middle sideways sooner than up or down: lines of text are read along.
        const distance = Math.hypot(x - centre.x, 1.3 * (y - centre.y));
        if (best !== undefined && distance >= best.distance) continue;
        const box = boxAround({ x, y }, extent);
        if (!holdsBox(region, grown(box, air * room.size))) continue;
        const own = grown(box, 0.12 * room.size);
        if (avoided.some((other) => overlap(own, other))) continue;
        best = { box, distance };
      }
    }
    if (best !== undefined) return best.box;
  }
  return undefined;
}

const DIRECTIONS = 24;
const LONGEST_LEADER_EMS = 8;
const SHORT_LEADER_COST = 3.2;
/** What it costs a place, in ems of leader, that the name would cover a border, or part of the thing itself. */
const COST_OF_BORDER = 0.9;
const COST_OF_SELF = 2.5;

function standingBeside(
  { heart, owner, extent }: Thing,
  avoided: readonly Box[],
  most: number,
  room: Room,
): Box | undefined {
  let best: { readonly box: Box | undefined; readonly cost: number } = { box: undefined, cost: most };
  for (let reach = 1.4; reach <= LONGEST_LEADER_EMS && reach < best.cost; reach += 0.5) {
    for (let direction = 0; direction < DIRECTIONS; direction++) {
      const turn = direction % 2 === 0 ? direction / 2 : -(direction + 1) / 2;
      const angle = (2 * Math.PI * turn) / DIRECTIONS - Math.PI / 4;
      const box = boxAround(
        {
          x: heart.x + Math.cos(angle) * (reach * room.size + extent.width / 2),
          y: heart.y + Math.sin(angle) * (reach * room.size + extent.height / 2),
        },
        extent,
      );
      const nearest = reach + 0.02 * direction;
      if (nearest >= best.cost) continue;
      if (!isWithin(grown(box, 0.3 * room.size), room.picture)) continue;
      const own = grown(box, 0.15 * room.size);
      if (avoided.some((other) => overlap(own, other))) continue;
      const cost = nearest + disturbance(box, owner, room.map);
      if (cost < best.cost) best = { box, cost };
    }
  }
  return best.box;
}

/** Where under a name it is asked what it covers, as parts of its width and height. */
const ACROSS = [-0.03, 0.25, 0.5, 0.75, 1.03];
const DOWN = [0, 0.5, 1];

/** How much a name covers that had better be seen, from a few places under it. Asked of every place that is tried. */
function disturbance({ x, y, width, height }: Box, owner: number, map: CellMap): number {
  const owners: (number | undefined)[] = [];
  for (const across of ACROSS) {
    for (const down of DOWN) {
      const found = ownerAt(map, { x: x + across * width, y: y + down * height });
      if (!owners.includes(found)) owners.push(found);
    }
  }
  return COST_OF_BORDER * (owners.length - 1) + (owners.includes(owner) ? COST_OF_SELF : 0);
}

/** From the nearest place on the name's box to the thing; none when the name all but touches it. */
function leaderTo(heart: Point, box: Box, size: number): Leader | undefined {
  if (holdsPoint(box, heart)) return undefined;
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
