import type { Outline, Ring } from './path.js';
import { EdgeCells, enlarged } from './edge-cells.js';
import type { CanvasSize } from './sheet.js';

/** What is laid: an outline, or as much of one as is known. */
type Shape = Pick<Outline, 'rings' | 'box' | 'fillRule'>;

/** Pairs of edges in one cell looked at, in all. */
const MOST_PAIRS = 5_000_000;
/** Pairs of an outline that is not laid count so many times more, so that a thousand of them are soon told. */
const IN_VAIN = 10;
/** Edges kept in cells, in all. */
const MOST_ENTRIES = 4_000_000;

/**
 * How often outlines that are laid over each other, from back to front, cross what is still seen under them: the
 * corners that a picture of them has beside their own, and a few more. Counted on square cells over the canvas: what
 * lies off it or in a cell that something in front fills is not seen.
 */
export class CrossingCount {
  /** Whatever is compiled for them is thrown away when memory is collected while there is none. */
  static readonly staying = new CrossingCount({ width: 256, height: 1 }, 0, 0);
  /** Of all that was laid. */
  crossings = 0;
  /** Pairs of edges looked at; see `IN_VAIN`. */
  pairs = 0;
  readonly #most: number;
  readonly #cell: number;
  readonly #columns: number;
  readonly #rows: number;
  /** For each cell the last of its entries, and for each entry its edge and the one before it; -1 for none. */
  readonly #last: Int32Array;
  #edgeOf: Int32Array;
  #before: Int32Array;
  #entries = 0;
  /** The cells that the edges of the outline pass which is laid, and for each the edge. */
  readonly #passed: EdgeCells;
  #edgeIn: Int32Array = new Int32Array(256);
  /** For each cell the last outline whose border passes it, by the count of those before. */
  readonly #passedBy: Int32Array;
  #mark = 0;
  /** For each row and cell how the winding of the outline that is laid changes there; zeros in between. */
  readonly #turns: Int32Array;
  /** Four numbers an edge, from x, y to x, y, in cells. */
  readonly #edges: Float64Array;
  #edgeEnd = 0;

  /**
   * @param most crossings; with more, nothing more is laid
   * @param points of all outlines together, at most
   */
  constructor(canvas: CanvasSize, most: number, points: number) {
    this.#edges = new Float64Array(4 * points);
    this.#most = most;
    this.#passed = new EdgeCells(canvas);
    this.#cell = this.#passed.side;
    this.#columns = this.#passed.columns;
    this.#rows = this.#passed.rows;
    this.#last = new Int32Array(this.#columns * this.#rows).fill(-1);
    this.#turns = new Int32Array(this.#rows * (this.#columns + 1));
    this.#passedBy = new Int32Array(this.#last.length);
    this.#edgeOf = new Int32Array(2 * points);
    this.#before = new Int32Array(2 * points);
  }

  /**
   * Lays an outline over the others, unless that makes more crossings than may be, or so many edges beside each other
   * that these can't be counted either.
   *
   * @returns whether it was laid
   */
  lay(outline: Shape): boolean {
    const first = this.#edgeEnd;
    const end = this.#addEdges(outline);
    this.#passed.clear();
    let crossed = 0;
    const pairsBefore = this.pairs;
    for (let edge = first; edge < end; edge += 4) {
      const from = this.#passed.count;
      this.#pass(edge);
      crossed += this.#crossed(edge, from);
      const isBeyond = this.pairs > pairsBefore && this.pairs > MOST_PAIRS;
      const entries = this.#entries + this.#passed.count;
      if (this.crossings + crossed > this.#most || isBeyond || entries > MOST_ENTRIES) {
        this.pairs += IN_VAIN * (this.pairs - pairsBefore);
        return false;
      }
    }
    this.#edgeEnd = end;
    this.crossings += crossed;
    this.#turnRings(outline.rings, first);
    this.#cover(outline);
    this.#enter();
    return true;
  }

  /** Keeps the edges of what is laid in the cells that they pass. */
  #enter(): void {
    const needed = this.#entries + this.#passed.count;
    if (needed > this.#edgeOf.length) {
      this.#edgeOf = enlarged(this.#edgeOf, needed);
      this.#before = enlarged(this.#before, needed);
    }
    for (let at = 0; at < this.#passed.count; at++) {
      const cell = this.#passed.cells[at] as number;
      const entry = this.#entries++;
      this.#edgeOf[entry] = this.#edgeIn[at] as number;
      this.#before[entry] = this.#last[cell] as number;
      this.#last[cell] = entry;
    }
  }

  /** Behind those of what is laid, a ring that is repeated in its place once. @returns where they end */
  #addEdges({ rings }: Shape): number {
    const edges = this.#edges;
    const cell = this.#cell;
    let end = this.#edgeEnd;
    for (let at = 0; at < rings.length; at += timesFrom(rings, at)) {
      const ring = rings[at] as Ring;
      const { length } = ring;
      for (let i = 0; i + 1 < length; i += 2, end += 4) {
        const next = (i + 2) % length;
        edges[end] = (ring[i] as number) / cell;
        edges[end + 1] = (ring[i + 1] as number) / cell;
        edges[end + 2] = (ring[next] as number) / cell;
        edges[end + 3] = (ring[next + 1] as number) / cell;
      }
    }
    return end;
  }

  /** Gathers the cells that an edge passes, row by row. */
  #pass(edge: number): void {
    const edges = this.#edges;
    const passed = this.#passed;
    const from = passed.count;
    passed.pass(
      edges[edge] as number,
      edges[edge + 1] as number,
      edges[edge + 2] as number,
      edges[edge + 3] as number,
    );
    if (passed.count > this.#edgeIn.length) this.#edgeIn = enlarged(this.#edgeIn, passed.count);
    this.#edgeIn.fill(edge, from, passed.count);
  }

  /** How often an edge crosses those that were in its cells before, these from an index on. */
  #crossed(edge: number, from: number): number {
    let crossed = 0;
    for (let at = from; at < this.#passed.count; at++) {
      const cell = this.#passed.cells[at] as number;
      for (let entry = this.#last[cell] as number; entry >= 0; entry = this.#before[entry] as number) {
        this.pairs++;
        if (this.#meetIn(cell, edge, this.#edgeOf[entry] as number)) crossed++;
      }
    }
    return crossed;
  }

  /**
   * Whether two edges cross in this cell and no other; an end that lies on the other edge belongs to one side of it.
   */
  #meetIn(cell: number, one: number, other: number): boolean {
    const all = this.#edges;
    const ax = all[one] as number;
    const ay = all[one + 1] as number;
    const bx = all[one + 2] as number;
    const by = all[one + 3] as number;
    const cx = all[other] as number;
    const cy = all[other + 1] as number;
    const dx = all[other + 2] as number;
    const dy = all[other + 3] as number;
    const fromOne = side(cx, cy, dx, dy, ax, ay);
    const toOne = side(cx, cy, dx, dy, bx, by);
    if (fromOne >= 0 === toOne >= 0) return false;
    if (side(ax, ay, bx, by, cx, cy) >= 0 === side(ax, ay, bx, by, dx, dy) >= 0) return false;
    const part = fromOne / (fromOne - toOne);
    // Rounding takes no place off an upright or level edge, which may lie between two cells.
    const x = clampedBetween(cx, ax + part * (bx - ax), dx);
    const y = clampedBetween(cy, ay + part * (by - ay), dy);
    const column = Math.min(this.#columns - 1, Math.floor(clampedBetween(ax, x, bx)));
    const row = Math.min(this.#rows - 1, Math.floor(clampedBetween(ay, y, by)));
    return row * this.#columns + column === cell;
  }

  /** Forgets what lies in cells that an outline fills: those inside that its border does not pass. */
  #cover({ box, fillRule }: Shape): void {
    this.#mark++;
    for (let at = 0; at < this.#passed.count; at++)
      this.#passedBy[this.#passed.cells[at] as number] = this.#mark;
    const top = clampedIndex(Math.floor(box.top / this.#cell), this.#rows - 1);
    const bottom = clampedIndex(Math.floor(box.bottom / this.#cell), this.#rows - 1);
    const left = clampedIndex(Math.floor(box.left / this.#cell), this.#columns);
    const right = clampedIndex(Math.ceil(box.right / this.#cell), this.#columns);
    for (let row = top; row <= bottom; row++) {
      let winding = 0;
      for (let column = left; column <= right; column++) {
        const place = row * (this.#columns + 1) + column;
        winding += this.#turns[place] as number;
        this.#turns[place] = 0;
        const cell = row * this.#columns + column;
        const inside = fillRule === 'evenodd' ? winding % 2 !== 0 : winding !== 0;
        if (inside && column < this.#columns && this.#passedBy[cell] !== this.#mark) this.#last[cell] = -1;
      }
    }
  }

  /** Notes how rings wind, whose edges begin with one: a ring that is repeated, as often as it lies there. */
  #turnRings(rings: readonly Ring[], first: number): void {
    let edge = first;
    for (let at = 0, times = 0; at < rings.length; at += times) {
      times = timesFrom(rings, at);
      const end = edge + 4 * Math.floor((rings[at] as Ring).length / 2);
      for (; edge < end; edge += 4) this.#turn(edge, times);
    }
  }

  /** Notes in each row the first cell whose middle has the edge on its left. */
  #turn(edge: number, times: number): void {
    const edges = this.#edges;
    const ax = edges[edge] as number;
    const ay = edges[edge + 1] as number;
    const bx = edges[edge + 2] as number;
    const by = edges[edge + 3] as number;
    const first = Math.max(0, Math.ceil(Math.min(ay, by) - 0.5));
    const last = Math.min(this.#rows, Math.ceil(Math.max(ay, by) - 0.5));
    for (let row = first; row < last; row++) {
      const x = ax + ((row + 0.5 - ay) / (by - ay)) * (bx - ax);
      const place = row * (this.#columns + 1) + clampedIndex(Math.ceil(x - 0.5), this.#columns);
      this.#turns[place] = (this.#turns[place] as number) + (by > ay ? times : -times);
    }
  }
}

/** On which side of the line from one place to another a third lies: more than 0 or less. */
function side(fromX: number, fromY: number, toX: number, toY: number, x: number, y: number): number {
  return (toX - fromX) * (y - fromY) - (toY - fromY) * (x - fromX);
}

/** How many rings in a row, from one on, are the same. */
function timesFrom(rings: readonly Ring[], at: number): number {
  const ring = rings[at] as Ring;
  let next = at + 1;
  for (; next < rings.length; next++) if (!isSameRing(ring, rings[next] as Ring)) break;
  return next - at;
}

function isSameRing(one: Ring, other: Ring): boolean {
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i++) if (one[i] !== other[i]) return false;
  return true;
}

/** The number, or that of two others that is nearer to it when it does not lie between them. */
function clampedBetween(one: number, number: number, other: number): number {
  return Math.min(Math.max(one, other), Math.max(Math.min(one, other), number));
}

function clampedIndex(index: number, most: number): number {
  return Math.min(most, Math.max(0, index));
}
