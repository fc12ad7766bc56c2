import type { SittingRecord } from '../../measure/photograph/record.js';
import type { Point } from '../../plan/geometry/point.js';
import type { BoardPlace } from '../board.js';
import { laidInRows, rowHeights } from '../rows.js';
import type { Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { cellsOf } from './cells.js';

/** Smaller than this, a picture is a stamp. */
const LEAST_CELL_EMS = 12;
/** The pictures stand in as few columns as leave them no higher than this together. */
const MOST_HEIGHT_EMS = 62;
/** Between the pictures, and from a picture to the words below it, in heights of the letters. */
const rows = { gap: 1.4, below: 0.45 };

/** Plan, photograph and what is between them, side by side at one size. */
export interface Panels {
  readonly height: number;
  readonly shapes: readonly Mark[];
  readonly construction: readonly Mark[];
  readonly written: readonly Mark[];
  /** Where a place of the canvas lies in the photograph. */
  readonly inPhotograph: (at: Point) => Point;
}

export function panelsOf(reading: Reading, record: SittingRecord, place: BoardPlace): Panels {
  const { canvas } = reading.plan;
  const { em, inner } = place;
  const cells = cellsOf(reading, record);
  const gap = rows.gap * em;
  const { columns, cell } = arrangement(cells.length, inner.width, gap, em, (across, width) => {
    const words = cells.map((each) => each.words(width));
    const scale = width / canvas.width;
    const heights = rowHeights(words, { columns: across, scale }, canvas, rows.below * em);
    return heights.reduce((sum, height) => sum + height, gap * (heights.length - 1));
  });
  const scale = cell / canvas.width;
  let photograph: Point = inner;
  const { bottom, ...marks } = laidInRows(
    cells.map(({ words, shapes, construction }, index) => ({
      words: words(cell),
      draw: (at) => {
        if (index === 1) photograph = at;
        const box = { ...at, width: cell, height: canvas.height * scale };
        return { shapes: shapes(box), edge: construction(box) };
      },
    })),
    { columns, cell, scale },
    canvas,
    place,
    rows,
    inner.y,
  );
  return {
    height: bottom - inner.y,
    ...marks,
    inPhotograph: ({ x, y }) => ({ x: photograph.x + x * scale, y: photograph.y + y * scale }),
  };
}

/** As large as they can be within the height, else in as many columns as leave them more than stamps. */
function arrangement(
  count: number,
  width: number,
  gap: number,
  em: number,
  heightOf: (columns: number, cell: number) => number,
): { readonly columns: number; readonly cell: number } {
  const candidates = Array.from({ length: count }, (_, index) => ({
    columns: index + 1,
    cell: (width - index * gap) / (index + 1),
  })).filter(({ columns, cell }) => columns === 1 || cell >= LEAST_CELL_EMS * em);
  // Below each other only where there is no room for two.
  const beside = candidates.length > 1 ? candidates.slice(1) : candidates;
  const fitting = beside.find(({ columns, cell }) => heightOf(columns, cell) <= MOST_HEIGHT_EMS * em);
  return fitting ?? beside.at(-1) ?? { columns: 1, cell: width };
}
