import { gridInWords } from '../../drawing/transfer/words.js';
import { percent } from '../../findings/words/words.js';
import { transferGridOf } from '../../measure/transfer/grid.js';
import { ruled, rulerFor } from '../../measure/transfer/rulers.js';
import { isOnLine } from '../../plan/based-on/here.js';
import type { Snapshot } from '../snapshot.js';
import type { Style } from '../style.js';
import type { Paragraphs } from './paragraphs.js';

/** How many squares a grid has, of what size, and where the first lines are drawn. */
export function gridFigures({ plan }: Snapshot, line: number, style: Style): Paragraphs {
  const { canvas, transferGrid } = plan;
  if (transferGrid === undefined || !isOnLine(transferGrid.location, line)) return [];
  const grid = transferGridOf(plan);
  const ruler = rulerFor(canvas);
  const told = (length: number | undefined) => ruled((length ?? 0) * canvas.millimetresPerUnit, ruler);
  const isSquare = Math.abs(grid.square.width / grid.square.height - 1) < 1e-9;
  return [
    style.text(`${gridInWords(grid, canvas, ruler)}, lettered from the left, numbered from the top.`),
    ...(isSquare
      ? []
      : [
          style.text(
            'They are not square: so are those on the sketch, where it has the canvas’s proportion.',
          ),
        ]),
    style.text(
      `The first lines lie ${told(grid.uprights[1])} from the left and ${told(grid.levels[1])} from the top.`,
    ),
  ];
}

/** How a sketch lies to the canvas. */
export function sketchFigures({ measures: { sketch } }: Snapshot, style: Style): Paragraphs {
  switch (sketch?.is) {
    case 'measured': {
      const { width, height, stretch, isTooWide } = sketch;
      const off =
        stretch < 0.0005
          ? 'in the proportion of the canvas'
          : `${percent(stretch)} too ${isTooWide ? 'wide' : 'high'} for the canvas`;
      return [style.text(`${width} × ${height} pixels, ${off}.`)];
    }
    case 'squared up':
      return [style.text('Its corners say which part of it is the picture.')];
    default:
      return [];
  }
}
