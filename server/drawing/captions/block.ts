import type { Mark } from '../scene.js';

/** A part of the captions, set to a given width. */
export interface Block {
  readonly height: number;
  /** Its marks with its upper left corner at a place. */
  marks(x: number, y: number): readonly Mark[];
}

export const EMPTY_BLOCK: Block = { height: 0, marks: () => [] };

/** Blocks below each other, `gap` apart; those without height take no gap. */
export function stacked(blocks: readonly Block[], gap: number): Block {
  const shown = blocks.filter(({ height }) => height > 0);
  const height = shown.reduce((sum, block) => sum + block.height, 0) + gap * Math.max(0, shown.length - 1);
  return {
    height,
    marks: (x, y) => {
      let top = y;
      return shown.flatMap((block) => {
        const marks = block.marks(x, top);
        top += block.height + gap;
        return marks;
      });
    },
  };
}

/** Blocks side by side in columns of one width, as high as the highest. */
export function inColumns(columns: readonly Block[], width: number, gap: number): Block {
  return {
    height: Math.max(0, ...columns.map(({ height }) => height)),
    marks: (x, y) => columns.flatMap((block, index) => block.marks(x + index * (width + gap), y)),
  };
}
