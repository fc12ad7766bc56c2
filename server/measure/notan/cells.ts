import { largestOf } from '../../plan/extremes.js';
import type { Ring } from '../../plan/geometry/outline.js';
import { type Box, boxRound } from '../../plan/geometry/point.js';
import type { CanvasSize } from '../areas/areas.js';
import { cellRuns, type LabelMap } from '../areas/label-map.js';
import type { RingPiece } from '../areas/ring-pieces.js';
import { GROUND } from '../borders/borders.js';
import { sameInputs } from '../memory.js';

/** The fields of one area: `pieces[i]` is the field `first + i`. */
export interface AreaFields {
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
  readonly fieldNow: ReadonlyMap<number, number>;
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
 * The cells of a label map by their fields: the largest field of what is seen in each cell, then the smaller ones laid over.
 * Only the cells that are asked for are looked at, which are few: what is scattered is small.
 */
export class FieldCells {
  readonly columns: number;
  readonly rows: number;
  readonly #canvas: CanvasSize;
  /** From back to front. */
  readonly #areas: readonly number[];
  readonly #labels: LabelMap['labels'];
  /** By area, from the ground on: its largest field. */
  readonly #largest: Int32Array;
  readonly #smaller: readonly Smaller[];
  /** By field. */
  readonly #extents: readonly Extent[];

  constructor(canvas: CanvasSize, map: LabelMap, byArea: ReadonlyMap<number, AreaFields>) {
    this.columns = map.columns;
    this.rows = map.rows;
    this.#canvas = canvas;
    this.#areas = [...byArea.keys()];
    this.#labels = map.labels;
    this.#largest = new Int32Array(largestOf(byArea.keys()) + 1 - GROUND);
    const smaller: Smaller[] = [];
    const extents: Extent[] = [];
    const all = { left: 0, top: 0, right: map.columns - 1, bottom: map.rows - 1 };
    for (const [area, { first, pieces }] of byArea) {
      this.#largest[area - GROUND] = first;
      // What is left of an area by rounding is counted to its largest field.
      const box = pieces.map((piece) => piece.box).reduce(boxRound, undefined);
      extents[first] = box && map.isWhole ? this.#extentOf(box) : all;
      pieces.slice(1).forEach((piece, index) => {
        const field = first + 1 + index;
        const extent = this.#extentOf(piece.box);
        extents[field] = extent;
        smaller.push({ field, extent, rings: piece.rings });
      });
    }
    this.#smaller = smaller;
    this.#extents = extents;
  }

  /** All cells of so many fields lie within; a cell more on each side, for what rounding may do. */
  extentOf(fields: readonly number[]): Extent {
    let extent = NOWHERE;
    for (const field of fields) {
      const own = this.#extents[field];
      if (own) extent = extentRound(extent, own);
    }
    return extent;
  }

  /** The fields of the cells in a rectangle, row by row from its upper left. */
  fieldsIn({ left, top, right, bottom }: Extent): Int32Array {
    const wide = right - left + 1;
    const fields = new Int32Array(wide * (bottom - top + 1));
    for (let row = top, at = 0; row <= bottom; row++) {
      const labels = this.#labels[row] as Int32Array;
      for (let column = left; column <= right; column++, at++)
        fields[at] = this.#largest[(labels[column] as number) - GROUND] as number;
    }
    for (const { field, extent, rings } of this.#smaller) {
      if (extent.left > right || extent.right < left || extent.top > bottom || extent.bottom < top) continue;
      const runs = this.#runsOf(rings);
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
      ) && sameInputs(this.#areas, earlier.#areas);
    if (!isAlike) return undefined;
    const fieldNow = new Map(
      this.#areas.map((area) => [
        earlier.#largest[area - GROUND] as number,
        this.#largest[area - GROUND] as number,
      ]),
    );
    let within = changedLabels(this.#labels, earlier.#labels);
    const before = new Map(earlier.#smaller.map((each, index) => [each.rings[0], { ...each, index }]));
    let last = -1;
    for (const { field, rings, extent } of this.#smaller) {
      const same = before.get(rings[0]);
      if (same && same.index > last && sameInputs(same.rings, rings)) {
        last = same.index;
        fieldNow.set(same.field, field);
        before.delete(rings[0]);
      } else within = extentRound(within, extent);
    }
    for (const { extent } of before.values()) within = extentRound(within, extent);
    return { within, fieldNow };
  }

  #runsOf(rings: readonly Ring[]): Int32Array {
    const { width, height } = this.#canvas;
    const { columns, rows } = this;
    const last = keptRuns.get(rings);
    if (last?.width === width && last.height === height) return last.runs;
    const runs = cellRuns(rings, { width, height, columns, rows });
    keptRuns.set(rings, { width, height, runs });
    return runs;
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

/** The number of cells follows from the size of the canvas. */
const keptRuns = new WeakMap<readonly Ring[], CanvasSize & { readonly runs: Int32Array }>();

/** Round all cells whose labels are others. */
function changedLabels(labels: LabelMap['labels'], earlier: LabelMap['labels']): Extent {
  let within = NOWHERE;
  labels.forEach((row, y) => {
    const before = earlier[y];
    if (!before || row === before) return;
    let [left, right] = [0, row.length - 1];
    while (left <= right && row[left] === before[left]) left++;
    while (right > left && row[right] === before[right]) right--;
    if (left <= right) within = extentRound(within, { left, top: y, right, bottom: y });
  });
  return within;
}
