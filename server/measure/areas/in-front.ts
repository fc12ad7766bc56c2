import Flatbush from 'flatbush';
import { NOTHING, type Piece, cornersOf } from '../../plan/geometry/piece.js';
import { type Box, boxesOverlap } from '../../plan/geometry/point.js';
import { type Way, isWithin, joined } from '../../plan/geometry/subtract.js';

/** With more covers than this, those that lie within the largest of them are looked for. */
const MANY = 16;
/** With more covers than this, neighbours in the order of covering are joined. */
const CROWD = 32;
/** Joined are those of so many shapes that stand one after the other; a shape that moves changes one such block. */
const BLOCK = 16;
/** Fewer than this are not worth joining. */
const WORTH_JOINING = 4;

/** Whether two boxes have a point in common, on their borders too: as an index of boxes finds them. */
export function boxesMeet(one: Box, other: Box): boolean {
  return (
    one.left <= other.right && other.left <= one.right && one.top <= other.bottom && other.top <= one.bottom
  );
}

/**
 * The shapes in front of the one that is looked at, while a scene is gone through from its front to its back. Only
 * those of which something is seen are added: what the others would cover is covered already by those in front of
 * them. For the same reason a shape within a larger one is passed over from then on, and where many are left their
 * union takes the place of each of them, so that not all have to be cut out of each shape behind them.
 */
export class InFront {
  /** Where shapes are, for those who ask often; few questions are answered sooner by going through all. */
  private readonly boxes: Flatbush | undefined;
  /** 1 for each piece that is needed. */
  private readonly needed: Uint8Array;
  private readonly unions: Piece[] = [];
  /** Blocks that would not be simpler as one. */
  private readonly apart = new Set<number>();
  private plain = true;

  /** `pieces` from back to front. */
  constructor(
    private readonly pieces: readonly Piece[],
    private readonly way: Way,
    isAskedOften: boolean,
  ) {
    this.needed = new Uint8Array(pieces.length);
    if (pieces.length === 0 || !isAskedOften) return;
    this.boxes = new Flatbush(pieces.length);
    for (const { box } of pieces) this.boxes.add(box.left, box.top, box.right, box.bottom);
    this.boxes.finish();
  }

  /** Whether each shape added stands for itself: none is passed over or joined with others yet. */
  get isPlain(): boolean {
    return this.plain;
  }

  /** The piece of this index is in front of all that are asked for from now on. */
  add(index: number): void {
    this.needed[index] = 1;
  }

  /** All that is needed of what was added to know what it covers of `piece`: each shape or the union it is in. */
  covers({ area, box }: Piece): readonly Piece[] {
    if (area === 0) return [];
    let single = this.neededIn(box);
    if (single.length > MANY) {
      this.plain = false;
      this.passOverInner(single);
      single = this.neededIn(box);
    }
    if (single.length > CROWD) {
      this.join(single);
      single = this.neededIn(box);
    }
    const covers = this.piecesOf(single);
    for (const union of this.unions) if (boxesOverlap(union.box, box)) covers.push(union);
    return covers;
  }

  /** Indices from back to front. */
  private neededIn(box: Piece['box']): readonly number[] {
    const { boxes, needed, pieces } = this;
    if (boxes) {
      const found = boxes.search(box.left, box.top, box.right, box.bottom, (index) => needed[index] === 1);
      return found.sort((a, b) => a - b);
    }
    const found: number[] = [];
    for (let index = 0; index < pieces.length; index++) {
      if (needed[index] === 1 && boxesMeet((pieces[index] as Piece).box, box)) found.push(index);
    }
    return found;
  }

  private piecesOf(indices: readonly number[]): Piece[] {
    const pieces: Piece[] = [];
    for (const index of indices) {
      const piece = this.pieces[index];
      if (piece) pieces.push(piece);
    }
    return pieces;
  }

  private passOverInner(covers: readonly number[]): void {
    let largest = NOTHING;
    for (const piece of this.piecesOf(covers)) if (piece.area > largest.area) largest = piece;
    for (const index of covers) {
      const piece = this.pieces[index];
      if (piece && piece !== largest && isWithin(piece, largest, this.way)) this.needed[index] = 0;
    }
  }

  private join(covers: readonly number[]): void {
    const blocks = new Map<number, number[]>();
    for (const index of covers) {
      const block = Math.floor(index / BLOCK);
      const known = blocks.get(block);
      if (known) known.push(index);
      else blocks.set(block, [index]);
    }
    for (const [block, indices] of blocks) {
      if (indices.length < WORTH_JOINING || this.apart.has(block)) continue;
      const pieces = this.piecesOf(indices);
      const union = joined(pieces, this.way);
      const corners = pieces.reduce((sum, piece) => sum + cornersOf(piece), 0);
      // Borders that cross and cross again, as of crossed sticks, have more corners as one.
      if (cornersOf(union) > corners / 2) {
        this.apart.add(block);
        continue;
      }
      this.unions.push(union);
      for (const index of indices) this.needed[index] = 0;
    }
  }
}
