import { type GridLines, type TransferGrid, columnNames } from '../../measure/transfer/grid.js';
import { textWidth } from '../captions/text-width.js';
import { pathMark, textMark } from '../marks.js';
import { linePath } from '../path-data.js';
import type { Ink, Mark } from '../scene.js';
import { GRID_KEY } from './grid-key.js';

const LABEL_EMS = 0.8;
/** Names of columns and rows are left out evenly where there is no room for all. */
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200];

/** The lines between the squares; the edges of the canvas are drawn already. */
export function gridLines(
  { uprights, levels }: GridLines,
  size: { readonly width: number; readonly height: number },
  style: { readonly ink: Ink; readonly subject?: string | undefined; readonly tip?: string | undefined },
): readonly Mark[] {
  const lines = [
    ...uprights.slice(1, -1).map((x) =>
      linePath([
        { x, y: 0 },
        { x, y: size.height },
      ]),
    ),
    ...levels.slice(1, -1).map((y) =>
      linePath([
        { x: 0, y },
        { x: size.width, y },
      ]),
    ),
  ];
  if (lines.length === 0) return [];
  const { ink, subject, tip } = style;
  return [pathMark(GRID_KEY, lines.join(''), { stroke: { ink, weight: 'hair' }, subject, tip })];
}

/** Letters over the columns and numbers beside the rows, outside of the picture. */
export function gridNames(
  grid: TransferGrid,
  em: number,
  style: { readonly ink: Ink; readonly subject?: string | undefined },
): readonly Mark[] {
  const { uprights, levels } = grid;
  const size = LABEL_EMS * em;
  const columns = columnNames(grid);
  const rows = levels.slice(1).map((_, row) => String(row + 1));
  const widest = Math.max(0, ...columns.map((name) => textWidth(name, size)));
  const across = stepFor(grid.square.width, 1.3 * widest);
  const down = stepFor(grid.square.height, 1.2 * size);
  const text = (key: string, name: string, x: number, y: number, anchor: 'middle' | 'end') =>
    textMark(`${GRID_KEY}:${key}`, name, x, y, {
      size,
      ink: style.ink,
      anchor,
      face: 'strong',
      subject: style.subject,
    });
  return [
    ...columns.flatMap((name, column) =>
      // Counted from column A, which is at the right in a mirrored grid.
      (grid.isMirrored ? columns.length - 1 - column : column) % across === 0
        ? [text(`column:${name}`, name, middle(uprights, column), -0.5 * em, 'middle')]
        : [],
    ),
    ...rows.flatMap((name, row) =>
      row % down === 0
        ? [text(`row:${name}`, name, -0.5 * em, middle(levels, row) + 0.36 * size, 'end')]
        : [],
    ),
  ];
}

function middle(lines: readonly number[], index: number): number {
  return ((lines[index] ?? 0) + (lines[index + 1] ?? 0)) / 2;
}

/** Of so many squares in a row one is named, beginning with the first; it alone where there is no room for two. */
function stepFor(side: number, room: number): number {
  return STEPS.find((step) => step * side >= room) ?? Infinity;
}
