import type { Canvas } from '../plan/plan.js';
import type { BoardPlace } from './board.js';
import type { Block } from './captions/block.js';
import { andMore } from './captions/words.js';
import { textMark } from './marks.js';
import type { Mark } from './scene.js';

/** More small pictures than these are hard to compare. */
export const MOST_FRAMES = 24;

/** How small pictures of the canvas stand in rows, in heights of the letters. */
export interface RowsOf {
  readonly leastCell: number;
  readonly mostCell: number;
  readonly mostColumns: number;
  readonly mostHeight: number;
  readonly gap: number;
  /** From a picture to the words below it. */
  readonly below: number;
}

/** Small pictures in rows, as even as can be: five are three and two, not four and one. */
export interface Rows {
  readonly columns: number;
  /** How wide one may be, with its words. */
  readonly cell: number;
  /** Of the canvas. */
  readonly scale: number;
}

/** As many columns as fit, for so many pictures of a canvas as large as there is room for. */
export function rowsFor(
  count: number,
  { width, height }: Pick<Canvas, 'width' | 'height'>,
  { em, inner }: BoardPlace,
  { leastCell, mostCell, mostColumns, mostHeight, gap }: RowsOf,
): Rows {
  const between = gap * em;
  const fitting = Math.floor((inner.width + between) / (leastCell * em + between));
  const most = Math.max(1, Math.min(mostColumns, fitting, count));
  const columns = Math.ceil(count / Math.ceil(count / most));
  // One or two pictures are not blown up to the width of the board.
  const cell = Math.min((inner.width - (columns - 1) * between) / columns, mostCell * em);
  return { columns, cell, scale: Math.min(cell / width, (mostHeight * em) / height) };
}

/** What stands for one of them: its words, and what is drawn above. */
export interface InRow {
  readonly words: Block;
  readonly draw: (at: { readonly x: number; readonly y: number }) => {
    readonly shapes: readonly Mark[];
    readonly edge: readonly Mark[];
  };
}

/** How high each row is, from the top of its pictures to the last word below one; canvas units. */
export function rowHeights(
  words: readonly Block[],
  { columns, scale }: Pick<Rows, 'columns' | 'scale'>,
  { height }: Pick<Canvas, 'height'>,
  below: number,
): readonly number[] {
  return Array.from({ length: Math.ceil(words.length / columns) }, (_, row) => {
    const inRow = words.slice(row * columns, (row + 1) * columns);
    return height * scale + below + Math.max(0, ...inRow.map((each) => each.height));
  });
}

/**
 * Puts them below each other from `top` on, and tells how many sittings are left out; `bottom` is that of the last
 * word.
 */
export function laidInRows(
  items: readonly InRow[],
  rows: Rows,
  canvas: Pick<Canvas, 'height'>,
  { em, inner }: BoardPlace,
  { gap, below }: Pick<RowsOf, 'gap' | 'below'>,
  top: number,
  more?: { readonly key: string; readonly count: number },
): {
  readonly bottom: number;
  readonly shapes: readonly Mark[];
  readonly construction: readonly Mark[];
  readonly written: readonly Mark[];
} {
  const shapes: Mark[] = [];
  const construction: Mark[] = [];
  const written: Mark[] = [];
  const { columns, cell, scale } = rows;
  const heights = rowHeights(
    items.map(({ words }) => words),
    rows,
    canvas,
    below * em,
  );
  let y = top;
  heights.forEach((rowHeight, row) => {
    items.slice(row * columns, (row + 1) * columns).forEach(({ words, draw }, index) => {
      const x = inner.x + index * (cell + gap * em);
      const drawn = draw({ x, y });
      for (const shape of drawn.shapes) shapes.push(shape);
      construction.push(...drawn.edge);
      written.push(...words.marks(x, y + canvas.height * scale + below * em));
    });
    y += rowHeight + gap * em;
  });
  if (more !== undefined && more.count > 0) {
    const text = andMore(more.count, 'sitting', 'sittings');
    written.push(textMark(more.key, text, inner.x, y + 0.4 * em, { size: 0.86 * em, ink: 'quiet' }));
    y += 1.2 * em;
  }
  return { bottom: y - gap * em, shapes, construction, written };
}
