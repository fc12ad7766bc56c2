import type { CanvasSize } from './sheet.js';

/** Cells on the long side of the canvas. */
const LONG_SIDE = 256;

/** Which of the square cells over a canvas edges pass. */
export class EdgeCells {
  /** The side of one, canvas units. */
  readonly side: number;
  readonly columns: number;
  readonly rows: number;
  /** Those passed since `clear`, an edge's own from the row that is highest on. */
  cells: Int32Array = new Int32Array(256);
  count = 0;

  constructor({ width, height }: CanvasSize) {
    this.side = Math.max(width, height) / LONG_SIDE;
    this.columns = Math.max(1, Math.ceil(width / this.side));
    this.rows = Math.max(1, Math.ceil(height / this.side));
  }

  clear(): void {
    this.count = 0;
  }

  /** Gathers the cells that an edge passes; from and to in sides of a cell. */
  pass(ax: number, ay: number, bx: number, by: number): void {
    const top = Math.min(ay, by);
    const bottom = Math.max(ay, by);
    const { columns } = this;
    const first = Math.max(0, Math.floor(top));
    const last = Math.min(this.rows - 1, Math.floor(bottom));
    let { count } = this;
    for (let row = first; row <= last; row++) {
      let one = ax;
      let other = bx;
      if (first !== last || ay < row || ay > row + 1 || by < row || by > row + 1) {
        one = ax + ((Math.max(row, top) - ay) / (by - ay)) * (bx - ax);
        other = ax + ((Math.min(row + 1, bottom) - ay) / (by - ay)) * (bx - ax);
      }
      const from = Math.max(0, Math.floor(Math.min(one, other)));
      const to = Math.min(columns - 1, Math.floor(Math.max(one, other)));
      const least = count + to - from + 1;
      if (least > this.cells.length) this.cells = enlarged(this.cells, least);
      const { cells } = this;
      const start = row * columns;
      for (let column = from; column <= to; column++) cells[count++] = start + column;
    }
    this.count = count;
  }
}

/** The same numbers with room for more. */
export function enlarged(numbers: Int32Array, least: number): Int32Array {
  const larger = new Int32Array(Math.max(least, 2 * numbers.length));
  larger.set(numbers);
  return larger;
}
