import type { Ring } from '../../plan/geometry/outline.js';
import type { Box } from '../../plan/geometry/point.js';
import type { CanvasSize } from '../areas/areas.js';
import { keptCellRuns } from '../areas/cell-runs.js';
import type { LabelMap } from '../areas/label-map.js';
import type { RingPiece } from '../areas/ring-pieces.js';
import { GROUND } from '../borders/borders.js';
import { once, sameInputs } from '../memory.js';

/** The fields of one area: `pieces[i]` is the field `first + i`; one that has none has a field all the same. */
export interface AreaFields {
  /** The index of its object, or `GROUND`. */
  readonly area: number;
  readonly first: number;
  readonly pieces: readonly RingPiece[];
}

/** A rectangle of cells, all included. */
export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** How the cells of a picture have become those of another. */
export interface CellChanges {
  /** All that are of another field lie within. */
  readonly within: Extent;
  /** Which one a field has become, by its index before; nothing for one that is gone or another. */
  readonly fieldNow: (field: number) => number | undefined;
}

const NOWHERE: Extent = { left: Infinity, top: Infinity, right: -1, bottom: -1 };

function extentRound(one: Extent, other: Extent): Extent {
  return {
    left: Math.min(one.left, other.left),
    top: Math.min(one.top, other.top),
    right: Math.max(one.right, other.right),
    bottom: Math.max(one.bottom, other.bottom),
  };
}

/** A field that is not the largest of its area, and is laid over that one. */
interface Smaller {
  readonly field: number;
  readonly extent: Extent;
  readonly rings: readonly Ring[];
}

/**
 * The cells of a label map by their fields: the largest field of what is seen in each cell, then the smaller ones laid
 * over. Only the cells that are asked for are looked at, which are few: what is scattered is small.
 */
export class FieldCells {
  readonly columns: number;
  readonly rows: number;
  readonly #canvas: CanvasSize;
  /** From back to front. */
  readonly #areas: readonly AreaFields[];
  readonly #labels: LabelMap['labels'];
  /** By area, from the ground on: its largest field. */
  readonly #largest: () => Int32Array;
  readonly #smaller: () => readonly Smaller[];

  constructor(canvas: CanvasSize, map: LabelMap, areas: readonly AreaFields[]) {
    this.columns = map.columns;
    this.rows = map.rows;
    this.#canvas = canvas;
    this.#areas = areas;
    this.#labels = map.labels;
    this.#largest = once(() => largestFields(areas));
    this.#smaller = once(() => this.#smallerFields());
  }

  #smallerFields(): readonly Smaller[] {
    const smaller: Smaller[] = [];
    for (const { first, pieces } of this.#areas) {
      for (let index = 1; index < pieces.length; index++) {
        const { box, rings } = pieces[index] as RingPiece;
        smaller.push({ field: first + index, extent: this.#extentOf(box), rings });
      }
    }
    return smaller;
  }

  /** All cells of so many fields lie within; a cell more on each side, for what rounding may do. */
  extentOf(fields: readonly number[]): Extent {
    let extent = NOWHERE;
    for (const field of fields) {
      extent = extentRound(extent, this.#extentOfField(field));
    }
    return extent;
  }

  /** What rounding leaves of an area elsewhere, and cells that it was only given, do not tell where it lies. */
  #extentOfField(field: number): Extent {
    const { first, pieces } = this.#areas[placeWith(this.#areas, field)] as AreaFields;
    const piece = pieces[field - first];
    return piece ? this.#extentOf(piece.box) : NOWHERE;
  }

  /** The fields of the cells in a rectangle, row by row from its upper left. */
  fieldsIn({ left, top, right, bottom }: Extent): Int32Array {
    const largest = this.#largest();
    const grid = { ...this.#canvas, columns: this.columns, rows: this.rows };
    const wide = right - left + 1;
    const fields = new Int32Array(wide * (bottom - top + 1));
    for (let row = top, at = 0; row <= bottom; row++) {
      const labels = this.#labels[row] as Int32Array;
      for (let column = left; column <= right; column++, at++)
        fields[at] = largest[(labels[column] as number) - GROUND] as number;
    }
    for (const { field, extent, rings } of this.#smaller()) {
      if (extent.left > right || extent.right < left || extent.top > bottom || extent.bottom < top) continue;
      const runs = keptCellRuns(rings, grid);
      for (let run = 0; run + 1 < runs.length; run += 2) {
        const row = Math.floor((runs[run] as number) / this.columns);
        if (row < top || row > bottom) continue;
        const from = Math.max(left, (runs[run] as number) - row * this.columns);
        const to = Math.min(right + 1, (runs[run + 1] as number) - row * this.columns);
        if (from < to) fields.fill(field, (row - top) * wide + from - left, (row - top) * wide + to - left);
      }
    }
    return fields;
  }

  /** What has changed since an earlier picture; nothing where its cells can't be compared with these. */
  changesSince(earlier: FieldCells): CellChanges | undefined {
    const isAlike =
      sameInputs(
        [this.#canvas.width, this.#canvas.height, this.columns, this.rows],
        [earlier.#canvas.width, earlier.#canvas.height, earlier.columns, earlier.rows],
      ) &&
      this.#areas.length === earlier.#areas.length &&
      this.#areas.every(({ area }, place) => area === earlier.#areas[place]?.area);
    if (!isAlike) return undefined;
    let within = changedLabels(this.#labels, earlier.#labels);
    const stayed = new Map<number, number>();
    for (const [place, { first, pieces }] of this.#areas.entries()) {
      const before = earlier.#areas[place] as AreaFields;
      if (pieces === before.pieces) continue;
      const { kept, others } = smallerKept(pieces, before.pieces);
      for (const [piece, now] of kept) stayed.set(before.first + piece, first + now);
      for (const { box } of others) within = extentRound(within, this.#extentOf(box));
    }
    const fieldNow = (field: number): number | undefined => {
      const place = placeWith(earlier.#areas, field);
      const before = earlier.#areas[place] as AreaFields;
      const now = this.#areas[place] as AreaFields;
      if (field === before.first) return now.first;
      return now.pieces === before.pieces ? field - before.first + now.first : stayed.get(field);
    };
    return { within, fieldNow };
  }

  #extentOf({ left, top, right, bottom }: Box): Extent {
    const { width, height } = this.#canvas;
    const across = (x: number): number => Math.floor((x / width) * this.columns);
    const down = (y: number): number => Math.floor((y / height) * this.rows);
    return {
      left: Math.max(0, across(left) - 1),
      top: Math.max(0, down(top) - 1),
      right: Math.min(this.columns - 1, across(right) + 1),
      bottom: Math.min(this.rows - 1, down(bottom) + 1),
    };
  }
}

/** The place of the area that a field is of; they stand in the order of their fields. */
function placeWith(areas: readonly AreaFields[], field: number): number {
  let [first, behind] = [0, areas.length];
  while (behind - first > 1) {
    const middle = (first + behind) >> 1;
    if ((areas[middle] as AreaFields).first > field) behind = middle;
    else first = middle;
  }
  return first;
}

function largestFields(areas: readonly AreaFields[]): Int32Array {
  let last = GROUND;
  for (const { area } of areas) last = Math.max(last, area);
  const largest = new Int32Array(last + 1 - GROUND);
  for (const { area, first } of areas) largest[area - GROUND] = first;
  return largest;
}

/**
 * Which of the smaller pieces of an area there were before, by their places before and now, and all that are others.
 */
function smallerKept(
  pieces: readonly RingPiece[],
  before: readonly RingPiece[],
): { readonly kept: ReadonlyMap<number, number>; readonly others: readonly RingPiece[] } {
  const places = new Map(before.map(({ rings }, place) => [rings[0], place]));
  places.delete(before[0]?.rings[0]);
  const kept = new Map<number, number>();
  const others: RingPiece[] = [];
  let last = 0;
  for (const [now, piece] of pieces.entries()) {
    if (now === 0) continue;
    const place = places.get(piece.rings[0]) ?? -1;
    // Of pieces over each other the later one is seen.
    if (place > last && sameInputs((before[place] as RingPiece).rings, piece.rings)) {
      last = place;
      kept.set(place, now);
      places.delete(piece.rings[0]);
    } else others.push(piece);
  }
  for (const place of places.values()) others.push(before[place] as RingPiece);
  return { kept, others };
}

/** Round all cells whose labels are others. */
function changedLabels(labels: LabelMap['labels'], earlier: LabelMap['labels']): Extent {
  let within = NOWHERE;
  for (const [y, row] of labels.entries()) {
    const before = earlier[y];
    if (!before || row === before) continue;
    let [left, right] = [0, row.length - 1];
    while (left <= right && row[left] === before[left]) left++;
    while (right > left && row[right] === before[right]) right--;
    if (left <= right) within = extentRound(within, { left, top: y, right, bottom: y });
  }
  return within;
}
