import type { Point } from '../../plan/geometry/point.js';
import { boxAround, grown, holdsPoint, isWithin, overlap, round } from './boxes.js';
import { type CellMap, type Region, holdsBox, ownerAt } from './region.js';
import type { Box } from '../scene.js';

/** From a name to what it names. */
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

type Extent = Pick<Box, 'width' | 'height'>;

/**
 * What is named: its index in the map of cells, the cells it is seen in, its middle, and the room that its name takes.
 */
export interface Thing {
  readonly owner: number;
  readonly region: Region | undefined;
  readonly heart: Point;
  readonly extent: Extent;
}

/** Where a name stands; with a leader where that is not on the thing. */
export interface NamePlace {
  readonly box: Box;
  readonly leader?: Leader;
  /** The first look, which goes no farther than the thing itself, has found it. */
  readonly isAtHome: boolean;
}

/** A short leader is better than a name across a lead, and that better than a long leader. */
export function placeFor(thing: Thing, taken: readonly Box[], room: Room): NamePlace | undefined {
  const { region, heart, extent } = thing;
  const clear = [...taken, ...room.spared];
  const onIt = (avoided: readonly Box[]) => region && standingOn(region, extent, avoided, room);
  const besideIt = (avoided: readonly Box[], most: number) => {
    const box = standingBeside(thing, avoided, most, room);
    if (box === undefined) return undefined;
    const leader = leaderTo(heart, box, room.size);
    return leader === undefined ? { box, isAtHome: false } : { box, leader, isAtHome: false };
  };
  const first = onIt(clear);
  if (first !== undefined) return { box: first, isAtHome: true };
  const near = besideIt(clear, SHORT_LEADER_COST);
  if (near !== undefined) return near;
  const across = onIt(taken);
  if (across !== undefined) return { box: across, isAtHome: false };
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

/** As parts of the size of the letters, more than is asked for round a name. */
const AIR = 1;

/**
 * What the place of a name hangs on: while nothing changes within this box, neither in the map of cells nor of what is
 * taken or spared, and the thing is seen in as many cells, `placeFor` gives the same.
 */
export function hangsOn({ region, heart, extent }: Thing, place: NamePlace | undefined, room: Room): Box {
  const { map, size } = room;
  const far = LONGEST_LEADER_EMS * size;
  const beside = boxAround(heart, {
    width: 2 * (far + 1.1 * extent.width),
    height: 2 * (far + 1.1 * extent.height),
  });
  if (!region) return grown(beside, AIR * size);
  const { left, top, right, bottom } = region.extent;
  const on = {
    x: left * map.cell,
    y: top * map.cell,
    width: (right - left + 1) * map.cell,
    height: (bottom - top + 1) * map.cell,
  };
  return grown(place?.isAtHome === true ? on : round(on, beside), AIR * size);
}
