import type { Outline } from './path.js';
import { type Grid, gridOver } from './polygons.js';
import { type Piece, pieceOf, rectanglePath, samePieces } from './piece.js';

export interface CanvasSize {
  readonly width: number;
  readonly height: number;
}

/** The canvas on the grid of whole numbers, with what has been cut out of it so far. */
export interface Sheet {
  readonly size: CanvasSize;
  readonly grid: Grid;
  readonly piece: Piece;
  /** True for the sheet on which every cut is made with a second opinion. */
  readonly careful: boolean;
}

/** The sheet asked for last, plain and careful: while it is the same, what was cut out of it can be used again. */
let last: { readonly plain: Sheet; readonly careful: Sheet } | undefined;

/** None for a canvas without area, or so narrow that its short side is lost on the grid. */
export function sheetsOver({ width, height }: CanvasSize): typeof last {
  if (last?.plain.size.width === width && last.plain.size.height === height) return last;
  const grid = gridOver({ left: 0, top: 0, right: width, bottom: height });
  if (!grid) return undefined;
  const right = Math.round(width * grid.scale);
  const bottom = Math.round(height * grid.scale);
  if (right === 0 || bottom === 0) return undefined;
  const sheet = (careful: boolean): Sheet => ({
    size: { width, height },
    grid,
    piece: pieceOf([rectanglePath({ left: 0, top: 0, right, bottom })]),
    careful,
  });
  last = { plain: sheet(false), careful: sheet(true) };
  return last;
}

/** A result and all that it depends on: the sheet, the shape itself, and what lies in front of it, in order. */
interface Kept<Result> {
  readonly inFront: readonly Piece[];
  readonly result: Result;
}

/** Results kept as long as the sheet and the outline that they belong to, the latest for each. */
export class Keeper<Result> {
  private readonly sheets = new WeakMap<Sheet, WeakMap<Outline, Kept<Result>>>();

  /** The result of `work`, which may depend on nothing else than what is given here. */
  recall(sheet: Sheet, outline: Outline, inFront: readonly Piece[], work: () => Result): Result {
    const shapes = this.sheets.get(sheet) ?? new WeakMap<Outline, Kept<Result>>();
    this.sheets.set(sheet, shapes);
    const known = shapes.get(outline);
    if (known && samePieces(known.inFront, inFront)) return known.result;
    const result = work();
    shapes.set(outline, { inFront, result });
    return result;
  }
}
