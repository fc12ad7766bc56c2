import type { Box } from '../scene.js';
import { type PaperSize, paperSizes } from '../paper.js';

/** How a drawing of full size is cut up into sheets of paper. Millimetres. */
export interface SheetOptions {
  readonly paper: PaperSize;
  /** Whichever takes fewer sheets unless said. */
  readonly lies?: 'upright' | 'landscape' | undefined;
  /** How far each sheet shows again what its neighbour shows. */
  readonly overlap?: number | undefined;
  /** Left white all round, which printers can't print on. */
  readonly margin?: number | undefined;
}

/** One sheet, and the part of the canvas that it shows. */
export interface Sheet {
  /** From 1, row by row. */
  readonly number: number;
  readonly column: number;
  readonly row: number;
  /** On the canvas, millimetres from its upper left corner; sheets at its edges reach a little beyond. */
  readonly window: Box;
}

export interface SheetLayout {
  readonly paper: PaperSize;
  readonly page: { readonly width: number; readonly height: number };
  readonly margin: number;
  readonly overlap: number;
  readonly columns: number;
  readonly rows: number;
  readonly sheets: readonly Sheet[];
  /** All windows together, on the canvas. */
  readonly whole: Box;
}

/** So many sheets are pasted together by nobody. */
export const MOST_SHEETS = 200;
export const OVERLAP = { usual: 10, least: 3, most: 50 } as const;
/** Usual printers leave 4 to 5 mm white, and a quarter of an inch on Letter. */
export const MARGIN = { usual: 8, least: 5, most: 40 } as const;
const LEAST_MARGIN_OF_LETTER = 6.35;
/** Below the drawing on every sheet: which it is. */
export const FOOT = 17;
/** Shown round the canvas, so that its edges are seen whole. */
const ROUND = 4;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** The sheets that a canvas takes, in millimetres; `undefined` where they are more than `MOST_SHEETS`. */
export function sheetsOf(canvas: Size, options: SheetOptions): SheetLayout | undefined {
  const [best] = counted(canvas, options);
  if (best === undefined || best.columns * best.rows > MOST_SHEETS) return undefined;
  const { page, columns, rows, window } = best;
  const { margin, overlap } = spaces(options);
  const at = (column: number, row: number): Box => ({
    x: column * (window.width - overlap) - ROUND,
    y: row * (window.height - overlap) - ROUND,
    ...window,
  });
  const last = at(columns - 1, rows - 1);
  return {
    paper: options.paper,
    page,
    margin,
    overlap,
    columns,
    rows,
    sheets: Array.from({ length: columns * rows }, (_, index): Sheet => {
      const column = index % columns;
      const row = Math.floor(index / columns);
      return { number: index + 1, column, row, window: at(column, row) };
    }),
    whole: {
      x: -ROUND,
      y: -ROUND,
      width: last.x + last.width + ROUND,
      height: last.y + last.height + ROUND,
    },
  };
}

/** How many sheets a canvas would take, however many these are. */
export function countSheets(canvas: Size, options: SheetOptions): number {
  const [best] = counted(canvas, options);
  return best === undefined ? Infinity : best.columns * best.rows;
}

interface Counted {
  readonly page: Size;
  readonly window: Size;
  readonly columns: number;
  readonly rows: number;
}

/** Upright and across as they are wanted, that of fewer sheets first; none that has no room for a drawing. */
function counted(canvas: Size, options: SheetOptions): readonly Counted[] {
  const { margin, overlap } = spaces(options);
  const upright = paperSizes[options.paper];
  const across = { width: upright.height, height: upright.width };
  const pages =
    options.lies === undefined ? [upright, across] : options.lies === 'upright' ? [upright] : [across];
  return pages
    .map((page): Counted => {
      const window = { width: page.width - 2 * margin, height: page.height - 2 * margin - FOOT };
      return {
        page,
        window,
        columns: countAlong(canvas.width, window.width, overlap),
        rows: countAlong(canvas.height, window.height, overlap),
      };
    })
    .filter(({ columns, rows }) => Number.isFinite(columns * rows))
    .sort((a, b) => a.columns * a.rows - b.columns * b.rows);
}

function countAlong(length: number, window: number, overlap: number): number {
  const step = window - overlap;
  if (step < overlap) return Infinity;
  // What misses by less than a hundredth of a millimetre takes no sheet more.
  return Math.max(1, Math.ceil((length + 2 * ROUND - overlap - 0.01) / step));
}

function spaces({ margin, overlap, paper }: SheetOptions): {
  readonly margin: number;
  readonly overlap: number;
} {
  const least = paper === 'Letter' ? LEAST_MARGIN_OF_LETTER : MARGIN.least;
  return {
    margin: Math.min(MARGIN.most, Math.max(least, margin ?? MARGIN.usual)),
    overlap: Math.min(OVERLAP.most, Math.max(OVERLAP.least, overlap ?? OVERLAP.usual)),
  };
}

const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');

/** `Sheet 5: second row, first from the left`. Squares have letters, so sheets have none. */
export function sheetName({ number, column, row }: Sheet): string {
  return `Sheet ${number}: ${ordinal(row)} row, ${ordinal(column)} from the left`;
}

function ordinal(index: number): string {
  const word = ORDINALS[index];
  if (word !== undefined) return word;
  const count = index + 1;
  const ending = Math.floor(count / 10) % 10 === 1 ? undefined : ['st', 'nd', 'rd'][(count % 10) - 1];
  return `${count}${ending ?? 'th'}`;
}
