import { boxCentre, type Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { CanvasSize, VisibleAreas } from '../areas/areas.js';
import type { LabelMap } from '../areas/label-map.js';
import { type RingPiece, ringPieces } from '../areas/ring-pieces.js';
import { GROUND, type MeetingAreas, type SeenArea } from '../borders/borders.js';
import type { Meetings } from '../borders/meeting.js';
import { type RingSides, type Sides, isLine } from '../borders/sides.js';
import { type Carried, carried } from '../carried.js';
import { type AreaFields, FieldCells } from './cells.js';
import { Places } from './places.js';

/** A part of the picture of one area that hangs together. */
interface Field {
  /** The index of its object, or `GROUND`. */
  readonly area: number;
  /** Part of the picture, exact; 0 for what rounding has left of an area, which is no more than a line. */
  readonly share: number;
  /** Of the box round it, canvas units. */
  readonly middle: Point;
}

export interface FieldMap {
  readonly fields: readonly Field[];
  /** From back to front, the ground first. */
  readonly areas: readonly AreaFields[];
  /** Of each area that is seen what it touches behind it. */
  readonly touched: Carried<Meetings, readonly Touch[]>;
  /** Two numbers for each two fields that touch along more than a hair: their indices. */
  readonly contacts: Int32Array;
  /** Looked for on the cells of the label map. */
  readonly places: Places;
}

/** Part of the long side along which two fields have to touch: less is a hair, which no brush paints. */
const HAIR = 3 / 1024;
/** Of a field so small that it has no more, this part of its border will do. */
const PART_OF_BORDER = 1 / 4;
/** Part of the long side by which a length falls short of another through rounding, and is as long. */
const ROUNDING = 1e-6;

/**
 * The fields of a picture and which of them touch, all from exact rings and borders. Only the cells, by which places
 * are looked for, come from the label map.
 *
 * @param last the fields of an earlier picture
 */
export function fieldMap(
  plan: Plan,
  areas: VisibleAreas,
  meetings: MeetingAreas,
  map: LabelMap,
  last: FieldMap | undefined,
): FieldMap {
  const { canvas } = plan;
  const { fields, byArea } = exactFields(plan, areas, last?.areas ?? []);
  const touched = carried(meetings.meetings, last?.touched, (own, place) =>
    touchesOf(own, meetings.seen[place]?.sides),
  );
  const long = Math.max(canvas.width, canvas.height);
  return {
    fields,
    areas: byArea,
    touched,
    contacts: contactsOf(fields.length, firstFields(meetings, byArea), meetings, touched.results, long),
    places: new Places(new FieldCells(canvas, map, byArea), canvas, last?.places),
  };
}

function exactFields(
  { canvas, coveringOrder }: Plan,
  areas: VisibleAreas,
  before: readonly AreaFields[],
): { readonly fields: readonly Field[]; readonly byArea: readonly AreaFields[] } {
  const fields: Field[] = [];
  const byArea: AreaFields[] = [];
  const add = (area: number, pieces: readonly RingPiece[]): void => {
    const first = fields.length;
    const earlier = before[byArea.length];
    const isSame = earlier?.pieces === pieces && earlier.area === area && earlier.first === first;
    byArea.push(isSame ? earlier : { area, first, pieces });
    for (const field of fieldsOf(area, pieces, canvas)) fields.push(field);
  };
  add(GROUND, ringPieces(areas.bare));
  coveringOrder.forEach((object, position) => {
    add(object, ringPieces(areas.layers[position]?.visible ?? []));
  });
  return { fields, byArea };
}

interface KeptFields extends CanvasSize {
  readonly area: number;
  readonly fields: readonly Field[];
}

const kept = new WeakMap<readonly RingPiece[], KeptFields>();

/** The fields of one area, kept as long as its pieces. */
function fieldsOf(area: number, pieces: readonly RingPiece[], canvas: CanvasSize): readonly Field[] {
  const { width, height } = canvas;
  const last = kept.get(pieces);
  if (last?.area === area && last.width === width && last.height === height) return last.fields;
  const fields = pieces.map(({ area: size, box, rings: [outer] }): Field => {
    const isSeen = outer !== undefined && !isLine(outer, canvas);
    return { area, share: isSeen ? size / (width * height) : 0, middle: boxCentre(box) };
  });
  // Kept for cells that rounding leaves to an area of nothing.
  if (pieces.length === 0) fields.push({ area, share: 0, middle: { x: 0, y: 0 } });
  kept.set(pieces, { area, width, height, fields });
  return fields;
}

/** Where a part of an area lies on a ring of another behind it. */
interface Touch {
  /** The part in front, as `ringPieces` counts those of its area. */
  readonly piece: number;
  /** The area behind, by its place among those that are seen. */
  readonly behind: number;
  readonly ring: RingSides;
  /** Canvas units. */
  length: number;
}

const NO_TOUCHES: readonly Touch[] = [];

/** What one area in front touches, part by part of it. */
function touchesOf({ met, ringsBehind }: Meetings, sides: Sides | undefined): readonly Touch[] {
  if (!sides || ringsBehind.length === 0) return NO_TOUCHES;
  const touches: Touch[] = [];
  let last: Touch | undefined;
  for (const [index, ring] of ringsBehind.entries()) {
    const at = 4 * index;
    const piece = sides.pieceOf[sides.ringOf[met[at] as number] as number] as number;
    const length = (met[at + 2] as number) - (met[at + 1] as number);
    // Pieces of one border mostly follow each other.
    if (last?.ring === ring && last.piece === piece) last.length += length;
    else touches.push((last = { piece, behind: met[at + 3] as number, ring, length }));
  }
  return touches.sort((one, other) => one.piece - other.piece);
}

/** Of each area that is seen the index of its first field. */
function firstFields({ seen }: MeetingAreas, byArea: readonly AreaFields[]): Int32Array {
  const firsts = new Int32Array(seen.length);
  let next = 0;
  seen.forEach(({ area }, place) => {
    // Both run from back to front.
    while (byArea[next]?.area !== area) next++;
    firsts[place] = byArea[next]?.first as number;
  });
  return firsts;
}

const piecesByRing = new WeakMap<Sides, ReadonlyMap<RingSides, number>>();

/** The part of an area that a ring of it bounds. */
function pieceOf(ring: RingSides, sides: Sides): number {
  const { rings, pieceOf: pieces } = sides;
  if (rings.length === 1) return 0;
  const known = piecesByRing.get(sides) ?? new Map(rings.map((own, index) => [own, pieces[index] as number]));
  piecesByRing.set(sides, known);
  return known.get(ring) ?? 0;
}

/**
 * The fields that touch along more than a hair.
 *
 * @param count of all fields
 * @param firsts the first field of each area that is seen
 * @param long the long side of the canvas
 */
function contactsOf(
  count: number,
  firsts: Int32Array,
  { seen }: MeetingAreas,
  touched: readonly (readonly Touch[])[],
  long: number,
): Int32Array {
  const most = touched.reduce((sum, touches) => sum + touches.length, 0);
  const pairs = new Int32Array(2 * most);
  const lengths = new Float64Array(most);
  const borders = new Float64Array(count);
  // Touches come part by part, so of all pairs with a field behind only the last may be the one of a touch.
  const lastWith = new Int32Array(count).fill(-1);
  let found = 0;
  touched.forEach((touches, front) => {
    for (const { piece, behind, ring, length } of touches) {
      const one = (firsts[front] as number) + piece;
      const other = (firsts[behind] as number) + pieceOf(ring, (seen[behind] as SeenArea).sides);
      let pair = lastWith[other] as number;
      if (pair < 0 || pairs[2 * pair] !== one) {
        pair = found++;
        pairs[2 * pair] = one;
        pairs[2 * pair + 1] = other;
        lastWith[other] = pair;
      }
      lengths[pair] = (lengths[pair] as number) + length;
      borders[one] = (borders[one] as number) + length;
      borders[other] = (borders[other] as number) + length;
    }
  });
  let told = 0;
  for (let pair = 0; pair < found; pair++) {
    const [one, other] = [pairs[2 * pair] as number, pairs[2 * pair + 1] as number];
    const border = Math.min(borders[one] as number, borders[other] as number);
    const least = Math.min(HAIR * long, border * PART_OF_BORDER);
    if ((lengths[pair] as number) + ROUNDING * long < least) continue;
    pairs[told++] = one;
    pairs[told++] = other;
  }
  return pairs.slice(0, told);
}
