import type { Ring } from '../../plan/geometry/outline.js';
import type { Point } from '../../plan/geometry/point.js';
import { overlap, sameBox } from './boxes.js';
import { type Leader, type NamePlace, type Room, hangsOn, placeFor } from './name-place.js';
import { changedCells, ownerAt, regionOf, sameExtent } from './region.js';
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

/** The names that have found a place, and what is to be known of it for the next version of the picture. */
export interface PlacedNames {
  readonly placed: readonly Placed[];
  readonly tried: readonly Tried[];
  readonly room: Room;
}

/** One of the names wanted, and where it stands, if anywhere. */
interface Tried {
  readonly wanted: Wanted;
  readonly isSeen: boolean;
  readonly placed?: Placed;
  /** While nothing changes within it the name stays. */
  readonly hangsOn: Box;
}

/**
 * Where names can stand: on the thing itself, as near to its middle as there is room; otherwise beside it with a
 * leader. Earlier names choose first. A name that finds no place is left out, and so is one of a thing that is
 * not seen.
 *
 * @param last of the version before: a place is looked for only where something near it has changed
 */
export function placeNames(wanted: readonly Wanted[], room: Room, last?: PlacedNames): PlacedNames {
  const changed = last && changedSince(last.room, room);
  const taken: Box[] = [...room.kept];
  const placed: Placed[] = [];
  const tried: Tried[] = [];
  let inVain = 0;
  for (const [index, one] of wanted.entries()) {
    if (placed.length >= MOST_NAMES) break;
    const before = last?.tried[index];
    const stays =
      before !== undefined &&
      changed !== undefined &&
      isSame(before.wanted, one) &&
      sameExtent(last?.room.map.extents[one.owner], room.map.extents[one.owner]) &&
      !changed.some((box) => overlap(box, before.hangsOn));
    const now = stays ? before : tryName(one, index, taken, room);
    tried.push(now);
    if (!stays) changed?.push(...changedBoxes(before?.placed?.box, now.placed?.box));
    if (now.placed !== undefined) {
      inVain = 0;
      taken.push(now.placed.box);
      placed.push(now.placed);
    } else if (now.isSeen && ++inVain >= MOST_IN_VAIN) break;
  }
  return { placed, tried, room };
}

function tryName(wanted: Wanted, index: number, taken: readonly Box[], room: Room): Tried {
  const { text: whole, owner, rings, before, bold } = wanted;
  const region = regionOf(room.map, owner);
  const heart = region?.heart ?? middleOf(rings);
  if (heart === undefined) return { wanted, isSeen: false, hangsOn: NOWHERE };
  const text = fitted(whole, room.size, LONGEST_NAME_EMS * room.size);
  const extent = {
    width: textWidth(text, room.size) * (bold ? BOLD_WIDTH : 1) + before,
    height: 1.1 * room.size,
  };
  const thing = { owner, region, heart, extent };
  const place = placeFor(thing, taken, room);
  const tried = { wanted, isSeen: true, hangsOn: hangsOn(thing, place, room) };
  return place === undefined ? tried : { ...tried, placed: placedAt(place, index, text, before, room) };
}

const NOWHERE: Box = { x: 0, y: 0, width: 0, height: 0 };

function placedAt(
  { box, leader }: NamePlace,
  index: number,
  text: string,
  before: number,
  { map, size }: Room,
): Placed {
  return {
    index,
    text,
    x: box.x + before,
    y: box.y + 0.5 * box.height + 0.35 * size,
    box,
    on: ownerAt(map, { x: box.x + box.width / 2, y: box.y + box.height / 2 }),
    ...(leader === undefined ? {} : { leader }),
  };
}

function isSame(one: Wanted, other: Wanted): boolean {
  return (
    one.text === other.text &&
    one.owner === other.owner &&
    one.rings === other.rings &&
    one.before === other.before &&
    one.bold === other.bold
  );
}

/** Where two rooms differ; undefined for two that have too little in common. */
function changedSince(last: Room, room: Room): Box[] | undefined {
  const cells = changedCells(last.map, room.map);
  const isAlike =
    cells !== undefined &&
    last.size === room.size &&
    sameBox(last.picture, room.picture) &&
    last.kept.length === room.kept.length &&
    last.spared.length === room.spared.length;
  if (!isAlike) return undefined;
  const clear = [...room.kept, ...room.spared];
  return [
    ...cells,
    ...[...last.kept, ...last.spared].flatMap((box, index) => changedBoxes(box, clear[index])),
  ];
}

function changedBoxes(before: Box | undefined, after: Box | undefined): readonly Box[] {
  if (before && after && sameBox(before, after)) return [];
  return [before ?? [], after ?? []].flat();
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
