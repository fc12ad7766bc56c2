import type { SittingRecord } from '../../measure/photograph/record.js';
import type { Point } from '../../plan/geometry/point.js';
import type { BoardPlace } from '../board.js';
import { EMPTY_BLOCK } from '../captions/block.js';
import type { Box, Mark } from '../scene.js';
import type { Reading } from '../views/reading.js';
import { cellsOf } from './cells.js';

const GAP_EMS = 1.4;
/** Smaller than this, a picture is a stamp. */
const LEAST_CELL_EMS = 12;
/** The pictures stand in as few columns as leave them no higher than this together. */
const MOST_HEIGHT_EMS = 62;
const BELOW_EMS = 0.45;

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
  const gap = GAP_EMS * em;
  const texts = (width: number) => cells.map(({ words }) => words(width));
  const arranged = arrangement(cells.length, inner.width, gap, em, (columns, cell) => {
    const scale = cell / canvas.width;
    const heights = texts(cell).map(({ height }) => height);
    const rows = Math.ceil(cells.length / columns);
    let height = 0;
    for (let row = 0; row < rows; row += 1)
      height +=
        canvas.height * scale +
        BELOW_EMS * em +
        Math.max(...heights.slice(row * columns, (row + 1) * columns)) +
        (row > 0 ? gap : 0);
    return height;
  });
  const { columns, cell } = arranged;
  const scale = cell / canvas.width;
  const blocks = texts(cell);
  const shapes: Mark[] = [];
  const construction: Mark[] = [];
  const written: Mark[] = [];
  let top = inner.y;
  let photograph: Box = { x: inner.x, y: inner.y, width: cell, height: canvas.height * scale };
  for (let first = 0; first < cells.length; first += columns) {
    let lowest = 0;
    cells.slice(first, first + columns).forEach((each, index) => {
      const box = {
        x: inner.x + index * (cell + gap),
        y: top,
        width: cell,
        height: canvas.height * scale,
      };
      if (first + index === 1) photograph = box;
      shapes.push(...each.shapes(box));
      construction.push(...each.construction(box));
      const block = blocks[first + index] ?? EMPTY_BLOCK;
      written.push(...block.marks(box.x, top + box.height + BELOW_EMS * em));
      lowest = Math.max(lowest, box.height + BELOW_EMS * em + block.height);
    });
    top += lowest + gap;
  }
  return {
    height: top - gap - inner.y,
    shapes,
    construction,
    written,
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
