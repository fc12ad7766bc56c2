import Flatbush from 'flatbush';
import type { Piece } from '../plan/geometry/piece.js';
import { type Way, isWithin } from '../plan/geometry/subtract.js';

/** From so many covers on, those that lie within others are looked for. */
const MANY = 32;

/**
 * The shapes in front of the one that is looked at, while a scene is gone through from its front to its back. Only
 * those of which something is seen are added: what the others would cover is covered already by those in front of
 * them. For the same reason a shape within a larger one is passed over from then on, so that shapes within shapes
 * do not all have to be cut out of each shape behind them.
 */
export class InFront {
  private readonly boxes: Flatbush | undefined;
  private readonly needed = new Set<number>();

  /** `pieces` from back to front. */
  constructor(
    private readonly pieces: readonly Piece[],
    private readonly way: Way,
  ) {
    if (pieces.length === 0) return;
    this.boxes = new Flatbush(pieces.length);
    for (const { box } of pieces) this.boxes.add(box.left, box.top, box.right, box.bottom);
    this.boxes.finish();
  }

  /** The piece of this index is in front of all that are asked for from now on. */
  add(index: number): void {
    this.needed.add(index);
  }

  /** All that is needed of what was added to know what it covers of `piece`, from back to front. */
  covers({ area, box }: Piece): readonly Piece[] {
    if (area === 0 || this.needed.size === 0) return [];
    const found = this.boxes?.search(box.left, box.top, box.right, box.bottom, (index) =>
      this.needed.has(index),
    );
    const covers = (found ?? []).sort((a, b) => a - b);
    return this.withoutInner(covers).flatMap((index) => this.pieces[index] ?? []);
  }

  private withoutInner(covers: readonly number[]): readonly number[] {
    if (covers.length <= MANY) return covers;
    const [largest] = covers.flatMap((index) => this.pieces[index] ?? []).sort((a, b) => b.area - a.area);
    if (!largest) return covers;
    for (const index of covers) {
      const piece = this.pieces[index];
      if (piece && piece !== largest && isWithin(piece, largest, this.way)) this.needed.delete(index);
    }
    return covers.filter((index) => this.needed.has(index));
  }
}
