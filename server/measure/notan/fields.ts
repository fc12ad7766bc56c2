import { boxCentre, type Point } from '../../plan/geometry/point.js';
import type { Plan } from '../../plan/plan.js';
import { containsPoint, type VisibleAreas } from '../areas/areas.js';
import { GROUND } from '../borders/borders.js';
import type { LabelMap } from '../areas/label-map.js';
import { type RingPiece, ringPieces } from './rings.js';
import { eachMeeting, joinedRuns, runAt, runsOf } from './runs.js';

/** A part of the picture of one area that hangs together. */
export interface Field {
  /** The index of its object, or `GROUND`. */
  readonly area: number;
  /** Part of the picture, exact. */
  readonly share: number;
  /** Of the box round it, canvas units. */
  readonly middle: Point;
}

/** Two fields that lie beside each other, by their indices. */
export interface Contact {
  readonly one: number;
  readonly other: number;
}

export interface FieldMap {
  readonly fields: readonly Field[];
  /** Those that touch along more than a hair. */
  readonly contacts: readonly Contact[];
  readonly columns: number;
  readonly rows: number;
  /** The cells row by row, as runs of one field: where each begins, the number of all cells behind the last. */
  readonly runs: { readonly starts: Int32Array; readonly fields: Int32Array };
}

/** Cells along which two fields have to touch: less is a hair, which no brush paints. */
const HAIR_CELLS = 3;
/** Of a field so small that it has no more, this part of its border will do. */
const PART_OF_BORDER = 1 / 4;

/**
 * The fields of a picture and which of them touch. What hangs together within one area, and how large it is, is taken
 * from its exact rings; which fields touch, and for how long, from the label map.
 */
export function fieldMap(plan: Plan, areas: VisibleAreas, map: LabelMap): FieldMap {
  const { columns, rows } = map;
  const { fields, byArea } = exactFields(plan, areas);
  const runs = runsOf(map);
  const parts = joinedRuns(runs);
  const fieldOfRun = new Int32Array(runs.labels.length);
  for (let run = 0; run < fieldOfRun.length; run++) {
    const first = parts[run] as number;
    fieldOfRun[run] =
      first === run
        ? fieldAt(byArea.get(runs.labels[run] as number), middleOf(runs.starts[run] as number, plan, map))
        : (fieldOfRun[first] as number);
  }
  const contacts = new Contacts(fields.length);
  eachMeeting(runs, (one, other, cells) => {
    contacts.add(fieldOfRun[one] as number, fieldOfRun[other] as number, cells);
  });
  for (const { first, pieces } of byArea.values()) {
    pieces.forEach((_, piece) => {
      const middle = fields[first + piece]?.middle;
      if (!middle || contacts.touchesAny(first + piece)) return;
      // Too small for a cell: it lies in what is seen there.
      const column = cellAt(middle.x / plan.canvas.width, columns);
      const row = cellAt(middle.y / plan.canvas.height, rows);
      contacts.add(first + piece, fieldOfRun[runAt(runs, row * columns + column)] as number, HAIR_CELLS);
    });
  }
  return {
    fields,
    contacts: contacts.list(),
    columns,
    rows,
    runs: { starts: runs.starts, fields: fieldOfRun },
  };
}

/** The fields of one area: `pieces[i]` is the field `first + i`. */
interface AreaFields {
  readonly first: number;
  readonly pieces: readonly RingPiece[];
}

function exactFields(
  { canvas, coveringOrder }: Plan,
  areas: VisibleAreas,
): { readonly fields: readonly Field[]; readonly byArea: ReadonlyMap<number, AreaFields> } {
  const canvasArea = canvas.width * canvas.height;
  const fields: Field[] = [];
  const byArea = new Map<number, AreaFields>();
  const add = (area: number, pieces: readonly RingPiece[]): void => {
    byArea.set(area, { first: fields.length, pieces });
    for (const piece of pieces) {
      fields.push({ area, share: piece.area / canvasArea, middle: boxCentre(piece.box) });
    }
    // Kept for cells that rounding leaves to an area of nothing.
    if (pieces.length === 0) fields.push({ area, share: 0, middle: { x: 0, y: 0 } });
  };
  add(GROUND, ringPieces(areas.bare));
  coveringOrder.forEach((object, position) => {
    add(object, ringPieces(areas.layers[position]?.visible ?? []));
  });
  return { fields, byArea };
}

/** The field of an area that holds a place; the largest when rounding puts the place outside of all. */
function fieldAt(area: AreaFields | undefined, { x, y }: Point): number {
  if (!area) return 0;
  if (area.pieces.length < 2) return area.first;
  const found = area.pieces.findIndex(
    ({ box, rings }) =>
      x >= box.left && x <= box.right && y >= box.top && y <= box.bottom && containsPoint(rings, { x, y }),
  );
  return area.first + Math.max(0, found);
}

function cellAt(part: number, cells: number): number {
  return Math.min(cells - 1, Math.max(0, Math.floor(part * cells)));
}

function middleOf(cell: number, { canvas }: Plan, { columns, rows }: LabelMap): Point {
  return {
    x: (((cell % columns) + 0.5) / columns) * canvas.width,
    y: ((Math.floor(cell / columns) + 0.5) / rows) * canvas.height,
  };
}

/** How long fields touch, in sides of cells. */
class Contacts {
  readonly #lengths = new Map<number, number>();
  readonly #borders: Float64Array;
  readonly #count: number;

  constructor(fields: number) {
    this.#count = fields;
    this.#borders = new Float64Array(fields);
  }

  add(one: number, other: number, cells: number): void {
    if (one === other) return;
    const pair = Math.min(one, other) * this.#count + Math.max(one, other);
    this.#lengths.set(pair, (this.#lengths.get(pair) ?? 0) + cells);
    for (const field of [one, other]) this.#borders[field] = (this.#borders[field] ?? 0) + cells;
  }

  touchesAny(field: number): boolean {
    return (this.#borders[field] ?? 0) > 0;
  }

  /** Those that are more than a hair. */
  list(): readonly Contact[] {
    return [...this.#lengths].flatMap(([pair, cells]) => {
      const one = Math.floor(pair / this.#count);
      const other = pair % this.#count;
      const border = Math.min(this.#borders[one] ?? 0, this.#borders[other] ?? 0);
      return cells >= Math.min(HAIR_CELLS, border * PART_OF_BORDER) ? { one, other } : [];
    });
  }
}
