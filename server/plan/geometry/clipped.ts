import type { Outline } from './path.js';
import { type Piece, pieceOf } from './piece.js';
import { polygonsOf } from './polygons.js';
import { Keeper, type Sheet } from './sheet.js';
import type { WorkCounter } from './subtract.js';

const pieces = new Keeper<Piece>();

/** A shape as a piece of the canvas, kept as long as its outline. */
export function clipped(outline: Outline, sheet: Sheet, counter?: WorkCounter): Piece {
  return pieces.recall(sheet, outline, [], () => {
    if (counter) counter.clips++;
    return pieceOf(polygonsOf(outline, sheet.grid));
  });
}
