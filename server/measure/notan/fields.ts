import { boxCentre, type Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import type { CanvasSize, VisibleAreas } from '../areas/areas.js';
import type { LabelMap } from '../areas/label-map.js';
import { type RingPiece, ringPieces } from '../areas/ring-pieces.js';
import { GROUND, type MeetingAreas } from '../borders/borders.js';
import { isLine } from '../borders/sides.js';
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

/** Two fields that lie beside each other, by their indices. */
interface Contact {
  readonly one: number;
  readonly other: number;
}

export interface FieldMap {
  readonly fields: readonly Field[];
  /** Those that touch along more than a hair. */
  readonly contacts: readonly Contact[];
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
  const { fields, byArea } = exactFields(plan, areas);
  const { width, height } = plan.canvas;
  return {
    fields,
    contacts: contactsOf(fields.length, byArea, meetings, Math.max(width, height)),
    places: new Places(new FieldCells(plan.canvas, map, byArea), plan.canvas, last?.places),
  };
}

type FieldsByArea = ReadonlyMap<number, AreaFields>;

function exactFields(
  { canvas, coveringOrder }: Plan,
  areas: VisibleAreas,
): { readonly fields: readonly Field[]; readonly byArea: FieldsByArea } {
  const fields: Field[] = [];
  const byArea = new Map<number, AreaFields>();
  const add = (area: number, pieces: readonly RingPiece[]): void => {
    byArea.set(area, { first: fields.length, pieces });
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

/** The fields that touch along more than a hair; `long` is the long side of the canvas. */
function contactsOf(
  count: number,
  byArea: FieldsByArea,
  { seen, meetings }: MeetingAreas,
  long: number,
): readonly Contact[] {
  const places = new Map<number, number>();
  const pairs: number[] = [];
  const lengths: number[] = [];
  const borders = new Float64Array(count);
  const firsts = seen.map(({ area }) => byArea.get(area)?.first ?? 0);
  const piecesOf = seen.map(({ sides }) => sides.pieces);
  let [last, place] = [-1, -1];
  for (const [front, { met, sidesBehind }] of meetings.entries()) {
    const first = firsts[front] as number;
    const pieces = piecesOf[front] as Int32Array;
    for (let piece = 0; piece < sidesBehind.length; piece++) {
      const at = 4 * piece;
      const behind = met[at + 3] as number;
      const one = first + (pieces[met[at] as number] as number);
      const other =
        (firsts[behind] as number) +
        ((piecesOf[behind] as Int32Array)[sidesBehind[piece] as number] as number);
      const length = (met[at + 2] as number) - (met[at + 1] as number);
      const pair = Math.min(one, other) * count + Math.max(one, other);
      // Pieces of one border mostly follow each other.
      if (pair !== last) {
        place = places.get(pair) ?? pairs.length;
        if (place === pairs.length) {
          places.set(pair, place);
          pairs.push(pair);
          lengths.push(0);
        }
        last = pair;
      }
      lengths[place] = (lengths[place] as number) + length;
      borders[one] = (borders[one] as number) + length;
      borders[other] = (borders[other] as number) + length;
    }
  }
  const contacts: Contact[] = [];
  pairs.forEach((pair, index) => {
    const one = Math.floor(pair / count);
    const other = pair % count;
    const border = Math.min(borders[one] as number, borders[other] as number);
    const least = Math.min(HAIR * long, border * PART_OF_BORDER);
    if ((lengths[index] as number) + ROUNDING * long >= least) contacts.push({ one, other });
  });
  return contacts;
}
