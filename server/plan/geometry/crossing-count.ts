import type { Outline } from './path.js';
import type { CanvasSize } from './sheet.js';

/** What is laid: an outline, or as much of one as is known. */
type Shape = Pick<Outline, 'rings' | 'box' | 'fillRule'>;

/** Cells on the long side of the canvas. */
const LONG_SIDE = 256;
/** Pairs of edges in one cell looked at, in all. */
const MOST_PAIRS = 50_000_000;
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
  readonly #edgeOf: number[] = [];
  readonly #before: number[] = [];
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
  constructor({ width, height }: CanvasSize, most: number, points: number) {
    this.#edges = new Float64Array(4 * points);
    this.#most = most;
    this.#cell = Math.max(width, height) / LONG_SIDE;
    this.#columns = Math.max(1, Math.ceil(width / this.#cell));
    this.#rows = Math.max(1, Math.ceil(height / this.#cell));
    this.#last = new Int32Array(this.#columns * this.#rows).fill(-1);
    this.#turns = new Int32Array(this.#rows * (this.#columns + 1));
    this.#passedBy = new Int32Array(this.#last.length);
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
    const [cells, edges]: [number[], number[]] = [[], []];
    let crossed = 0;
    const pairsBefore = this.pairs;
    for (let edge = first; edge < end; edge += 4) {
      const from = cells.length;
      this.#passed(edge, cells);
      for (let at = from; at < cells.length; at++) edges.push(edge);
      crossed += this.#crossed(edge, cells, from);
      const isBeyond = this.pairs > pairsBefore && this.pairs > MOST_PAIRS;
      const entries = this.#edgeOf.length + cells.length;
      if (this.crossings + crossed > this.#most || isBeyond || entries > MOST_ENTRIES) {
        this.pairs += IN_VAIN * (this.pairs - pairsBefore);
        return false;
      }
    }
    this.#edgeEnd = end;
    this.crossings += crossed;
    this.#cover(outline, first, cells);
    cells.forEach((cell, at) => {
      this.#before.push(this.#last[cell] as number);
      this.#last[cell] = this.#edgeOf.push(edges[at] as number) - 1;
    });
    return true;
  }

  /** Behind those of what is laid, a ring that is repeated in its place once. @returns where they end */
  #addEdges({ rings }: Shape): number {
    let end = this.#edgeEnd;
    for (const [at, ring] of rings.entries()) {
      const before = rings[at - 1];
      if (before?.length === ring.length && ring.every((number, i) => number === before[i])) continue;
      for (let i = 0; i + 1 < ring.length; i += 2, end += 4) {
        const next = (i + 2) % ring.length;
        this.#edges[end] = (ring[i] as number) / this.#cell;
        this.#edges[end + 1] = (ring[i + 1] as number) / this.#cell;
        this.#edges[end + 2] = (ring[next] as number) / this.#cell;
        this.#edges[end + 3] = (ring[next + 1] as number) / this.#cell;
      }
    }
    return end;
  }

  /** Gathers the cells that an edge passes, row by row. */
  #passed(edge: number, cells: number[]): void {
    const [ax, ay, bx, by] = this.#ends(edge);
    const first = Math.max(0, Math.floor(Math.min(ay, by)));
    const last = Math.min(this.#rows - 1, Math.floor(Math.max(ay, by)));
    for (let row = first; row <= last; row++) {
      let [one, other] = [ax, bx];
      if (first !== last || ay < row || ay > row + 1 || by < row || by > row + 1) {
        const part = (y: number): number => ax + ((y - ay) / (by - ay)) * (bx - ax);
        one = part(Math.max(row, Math.min(ay, by)));
        other = part(Math.min(row + 1, Math.max(ay, by)));
      }
      const from = Math.max(0, Math.floor(Math.min(one, other)));
      const to = Math.min(this.#columns - 1, Math.floor(Math.max(one, other)));
      for (let column = from; column <= to; column++) cells.push(row * this.#columns + column);
    }
  }

  /** How often an edge crosses those that were in its cells before, these from an index on. */
  #crossed(edge: number, cells: readonly number[], from: number): number {
    let crossed = 0;
    for (let at = from; at < cells.length; at++) {
      const cell = cells[at] as number;
      for (let entry = this.#last[cell] as number; entry >= 0; entry = this.#before[entry] as number) {
        this.pairs++;
        if (this.#meetIn(cell, edge, this.#edgeOf[entry] as number)) crossed++;
      }
    }
    return crossed;
  }

  /** Whether two edges cross in this cell and no other; an end that lies on the other edge belongs to one side of it. */
  #meetIn(cell: number, one: number, other: number): boolean {
    const fromOne = this.#side(other, one);
    const toOne = this.#side(other, one + 2);
    if (fromOne >= 0 === toOne >= 0) return false;
    if (this.#side(one, other) >= 0 === this.#side(one, other + 2) >= 0) return false;
    const [ax, ay, bx, by] = this.#ends(one);
    const [cx, cy, dx, dy] = this.#ends(other);
    const part = fromOne / (fromOne - toOne);
    // Rounding takes no place off an upright or level edge, which may lie between two cells.
    const x = between(cx, ax + part * (bx - ax), dx);
    const y = between(cy, ay + part * (by - ay), dy);
    const column = Math.min(this.#columns - 1, Math.floor(between(ax, x, bx)));
    const row = Math.min(this.#rows - 1, Math.floor(between(ay, y, by)));
    return row * this.#columns + column === cell;
  }

  /** On which side of the line through an edge the place at `point` lies: more than 0 or less. */
  #side(edge: number, point: number): number {
    const all = this.#edges;
    const [x, y] = [all[edge] as number, all[edge + 1] as number];
    const [dx, dy] = [(all[edge + 2] as number) - x, (all[edge + 3] as number) - y];
    return dx * ((all[point + 1] as number) - y) - dy * ((all[point] as number) - x);
  }

  #ends(edge: number): readonly [number, number, number, number] {
    const all = this.#edges;
    return [all[edge] as number, all[edge + 1] as number, all[edge + 2] as number, all[edge + 3] as number];
  }

  /** Forgets what lies in cells that an outline fills: those inside that its border does not pass. */
  #cover({ box, fillRule }: Shape, first: number, passed: readonly number[]): void {
    this.#mark++;
    for (const cell of passed) this.#passedBy[cell] = this.#mark;
    for (let edge = first; edge < this.#edgeEnd; edge += 4) this.#turn(edge);
    const top = within(Math.floor(box.top / this.#cell), this.#rows - 1);
    const bottom = within(Math.floor(box.bottom / this.#cell), this.#rows - 1);
    const left = within(Math.floor(box.left / this.#cell), this.#columns);
    const right = within(Math.ceil(box.right / this.#cell), this.#columns);
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

  /** Notes in each row the first cell whose middle has the edge on its left. */
  #turn(edge: number): void {
    const [ax, ay, bx, by] = this.#ends(edge);
    const first = Math.max(0, Math.ceil(Math.min(ay, by) - 0.5));
    const last = Math.min(this.#rows, Math.ceil(Math.max(ay, by) - 0.5));
    for (let row = first; row < last; row++) {
      const x = ax + ((row + 0.5 - ay) / (by - ay)) * (bx - ax);
      const place = row * (this.#columns + 1) + within(Math.ceil(x - 0.5), this.#columns);
      this.#turns[place] = (this.#turns[place] as number) + (by > ay ? 1 : -1);
    }
  }
}

/** The number, or that of two others that is nearer to it when it does not lie between them. */
function between(one: number, number: number, other: number): number {
  return Math.min(Math.max(one, other), Math.max(Math.min(one, other), number));
}

function within(index: number, most: number): number {
  return Math.min(most, Math.max(0, index));
}
