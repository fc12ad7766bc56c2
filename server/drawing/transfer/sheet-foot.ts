import { type GridLines, columnNames } from '../../measure/transfer/grid.js';
import type { Plan } from '../../plan/plan.js';
import { plainNumber } from '../../plan/problems.js';
import { fitted } from '../captions/text-width.js';
import { canvasSize } from '../captions/words.js';
import { textMark } from '../marks.js';
import type { Box, Mark } from '../scene.js';
import { type FullDrawing, SHEET_EM, inks } from './full-drawing.js';
import { smallMap } from './sheet-map.js';
import { FOOT, type Sheet, type SheetLayout, sheetName } from './sheets.js';

const WIDEST_MAP = 45;

/** Below the drawing of a sheet: which it is, of what, and where it belongs. */
export function sheetFoot(
  plan: Plan,
  drawing: FullDrawing,
  layout: SheetLayout,
  sheet: Sheet,
): readonly Mark[] {
  const { page, margin } = layout;
  const top = page.height - margin - FOOT + 2.5;
  const room: Box = { x: margin, y: top, width: WIDEST_MAP, height: FOOT - 2.5 };
  const map = smallMap(layout, drawing.size, room, sheet.number);
  const left = margin + map.width + 4;
  const width = page.width - margin - left;
  const lines = [
    {
      text: `${sheetName(sheet)} (of ${layout.sheets.length})`,
      size: 1.2 * SHEET_EM,
      face: 'strong' as const,
    },
    {
      text: `${drawing.title}, ${canvasSize(plan.canvas)}, at full size${drawing.isMirrored ? '; left and right changed over' : ''}`,
      size: 0.95 * SHEET_EM,
      face: 'text' as const,
    },
    { text: foundOn(drawing.grid, layout, sheet), size: 0.95 * SHEET_EM, face: 'text' as const },
  ];
  return [
    ...map.marks,
    ...lines.map(({ text, size, face }, index) =>
      textMark(`foot:${index}`, fitted(text, size, width), left, top + 3.4 + 4.6 * index, {
        size,
        ink: inks.line,
        face,
      }),
    ),
  ];
}

/** What of the grid is on a sheet, and how it meets its neighbours. */
function foundOn(grid: GridLines, { sheets, overlap }: SheetLayout, { window }: Sheet): string {
  const names = columnNames(grid);
  const columns = shown(grid.uprights, window.x, window.x + window.width).map(
    (column) => names[column] ?? '',
  );
  const rows = shown(grid.levels, window.y, window.y + window.height).map((row) => row + 1);
  const [first, last] = [
    `${columns[0] ?? ''}${rows[0] ?? ''}`,
    `${columns.at(-1) ?? ''}${rows.at(-1) ?? ''}`,
  ];
  const squares = first === last ? `Square ${first}` : `Squares ${first} to ${last}`;
  return sheets.length === 1
    ? `${squares}.`
    : `${squares}. Neighbours overlap by ${plainNumber(overlap, 1)} mm: lay mark on mark.`;
}

/** Columns or rows of which more than a hair lies between two places. */
function shown(lines: readonly number[], from: number, to: number): readonly number[] {
  return lines
    .slice(0, -1)
    .flatMap((line, index) => (line < to - 0.5 && (lines[index + 1] ?? line) > from + 0.5 ? [index] : []));
}
